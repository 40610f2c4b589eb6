import { useState } from 'react';
import type { LineRow } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useActDay } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

interface RetireLineProps {
  readonly line: Pick<LineRow, 'id' | 'name'>;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** Takes a line off the plan; what was made and ordered for it stays in the journal. */
export function RetireLine({ line, onClose, onDone }: RetireLineProps) {
  const [reason, setReason] = useState('');
  const day = useActDay();
  const act = useAct((key, on: string) => api.records.retire({ key, on, kind: 'hoseLine', id: line.id, reason }));
  return (
    <FormWindow
      opened
      title={`Retire: ${line.name}`}
      submitLabel="Retire the line"
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onDone()}
    >
      <p>
        It needs nothing any more, is cut from no hose and no longer stands in the hoist check. Parts that were put on
        the list for it stay there.
      </p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
      {day.field}
    </FormWindow>
  );
}
