import { useState } from 'react';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { Confirm } from '../../../parts/form.tsx';
import { type ActTarget, targetWords } from './act-target.ts';
import { LineList } from './act-window.tsx';

type Input = Omit<Parameters<typeof api.parts.drop>[0], 'key'>;
const send = (key: string, input: Input) => api.parts.drop({ key, ...input });

/** Takes lines off the list; their entries stay in the journal. */
export function DropWindow({ target, onClose }: { readonly target: ActTarget; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const act = useAct(send);
  const confirm = async () => {
    const done = await act.run({ on: on ?? today, parts: target.rows.map(({ id }) => id), reason });
    if (done !== null) onClose();
  };
  const words = `Drop ${targetWords(target)}`;
  return (
    <Confirm
      opened
      title={words}
      doIt={words}
      onConfirm={confirm}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <p>
        The need is taken off the list. What was ordered, paid and fitted stays in the journal, and Undo brings the list
        back as it was.
      </p>
      <TextField name="reason" label="Why" value={reason} onChange={setReason} longest={400} />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
      <LineList target={target} />
    </Confirm>
  );
}
