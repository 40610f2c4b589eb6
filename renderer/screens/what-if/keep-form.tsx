import { useState } from 'react';
import type { VariantChange } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

export interface KeepFormProps {
  readonly build: number;
  readonly changes: readonly VariantChange[];
  readonly onClose: () => void;
}

/** Keeps what is being tried, by name. */
export function KeepForm({ build, changes, onClose }: KeepFormProps) {
  const { today } = useWorkspace();
  const [name, setName] = useState('');
  const { busy, refusal, run } = useAct((key, values: Record<string, unknown>) =>
    api.records.save({ key, on: today, kind: 'variant', build, values }),
  );
  const send = async () => {
    if ((await run({ name: name.trim(), changes })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Keep as a variant"
      submitLabel="Keep the variant"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <p>Only the list of changes is kept; each time it is worked out anew from the build as it then stands.</p>
      <TextField name="name" label="Name" value={name} onChange={setName} longest={80} required autoFocus />
    </FormWindow>
  );
}
