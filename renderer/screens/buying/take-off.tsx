import { Button } from '@mantine/core';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

export interface TakeOffProps {
  readonly kind: 'income' | 'offer';
  readonly row: RecordRow;
  readonly name: string;
}

/** Takes a record off its list; the message that follows offers to undo it. */
export function TakeOff({ kind, row, name }: TakeOffProps) {
  const { today } = useWorkspace();
  const act = useAct((key, reason: string) => api.records.retire({ key, on: today, kind, id: row.id, reason }));
  return (
    <>
      <Button size="compact" variant="subtle" loading={act.busy} onClick={() => void act.run('')}>
        Take off <span className="only-heard">{name}</span>
      </Button>
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
    </>
  );
}
