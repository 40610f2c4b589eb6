import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

/** Keeps what is planned now, under a name. */
export function BaselineForm({ build, onClose }: { readonly build: number; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [name, setName] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const { busy, refusal, run } = useAct((key, input: { name: string; on: string }) =>
    api.money.setBaseline({ key, build, ...input }),
  );
  const send = async () => {
    if (on !== null && (await run({ name: name.trim(), on })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Keep a baseline"
      submitLabel="Keep the baseline"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <p>
        Every part line’s estimate, every job’s guess and their planned days are kept as they stand. Jobs follow each
        other over the planned days of their phase; a part is planned for the day it is needed by, or promised for.
        Earlier baselines stay as they are.
      </p>
      <TextField name="name" label="Name" value={name} onChange={setName} longest={80} required autoFocus />
      <DateField name="on" label="Kept on" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
