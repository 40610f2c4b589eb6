import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { useReading } from '../../../app/workspace.tsx';
import { Loading } from '../../../parts/notes.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { Window } from '../../../parts/window.tsx';
import type { OpenAct } from '../acts/open-act.tsx';
import type { Names } from '../names.ts';
import { PartInFull } from './part-in-full.tsx';

export interface PartDrawerProps {
  readonly part: number;
  readonly names: Names;
  /** Why nothing can be changed now; null while it can. */
  readonly closed: string | null;
  readonly onAct: (open: OpenAct) => void;
  readonly onClose: () => void;
}

/** One part in full, beside the sheet. */
export function PartDrawer({ part, names, closed, onAct, onClose }: PartDrawerProps) {
  const reading = useReading();
  const read = useRead(
    ['parts.detail', reading, part],
    reading === null ? null : () => api.parts.detail({ ...reading, part }),
  );
  return (
    <Window
      opened
      onClose={onClose}
      as="drawer"
      title={read.state === 'ready' ? read.value.row.description : 'Part line'}
    >
      {read.state === 'loading' && <Loading label="Reading the part" />}
      {read.state === 'refused' && <RefusalNote refusal={read.refusal} onRetry={read.retry} />}
      {read.state === 'ready' && <PartInFull detail={read.value} names={names} closed={closed} onAct={onAct} />}
    </Window>
  );
}
