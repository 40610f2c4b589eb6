import { useState } from 'react';
import type { StartView } from '../../../core/contract/plan.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

export interface ChaseWindowProps {
  readonly item: StartView['chase'][number];
  readonly onClose: () => void;
}

/** Notes that a vendor was asked, with what came of it. */
export function ChaseWindow({ item, onClose }: ChaseWindowProps) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [note, setNote] = useState('');
  const { busy, refusal, run } = useAct((key, input: { on: string; note: string }) =>
    api.orders.chase({ key, order: item.order, ...input }),
  );
  const send = async () => {
    if ((await run({ on: on ?? today, note: note.trim() })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Vendor asked"
      submitLabel="Note it"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <p>{item.text}</p>
      <TextField name="note" label="What they said" value={note} onChange={setNote} long longest={2000} autoFocus />
      <DateField name="on" label="Asked on" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
