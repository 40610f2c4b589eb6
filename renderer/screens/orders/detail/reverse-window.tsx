import { useState } from 'react';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { ActDay } from '../acts/act-day.tsx';

/** One entry, or all that was done at once. */
export interface Reversible {
  readonly entry?: number;
  readonly wholeAct?: number;
  readonly text: string;
}

export interface ReverseWindowProps {
  readonly what: Reversible;
  readonly onClose: () => void;
}

/** Takes an entry or an act back by equal and opposite entries. */
export function ReverseWindow({ what, onClose }: ReverseWindowProps) {
  const { text, ...target } = what;
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [reason, setReason] = useState('');
  const { busy, refusal, run } = useAct((key, day: string) =>
    api.journal.reverse({ key, on: day, ...target, reason: reason.trim() }),
  );
  const send = async () => {
    if ((await run(on ?? today)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Take back"
      submitLabel="Take it back"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
      blocks
    >
      <p>{text}</p>
      <p className="quiet">An equal and opposite entry is made; the first one stays in the journal.</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} required autoFocus />
      <ActDay value={on} onChange={setOn} label="Taken back on" />
    </FormWindow>
  );
}
