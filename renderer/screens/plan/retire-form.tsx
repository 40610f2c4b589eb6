import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

export interface RetireFormProps {
  readonly kind: 'job' | 'phase';
  readonly id: number;
  readonly name: string;
  readonly onClose: () => void;
}

const consequences = {
  job: 'It leaves the plan and no longer counts as work. Its entries stay in the journal, and it can be brought back in Lists.',
  phase: 'Its jobs stay in the plan, under no phase. It can be brought back in Lists.',
} as const;

/** Takes a job or a phase out of the plan; it can be brought back. */
export function RetireForm({ kind, id, name, onClose }: RetireFormProps) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, input: { readonly on: string; readonly reason: string }) =>
    api.records.retire({ key, kind, id, ...input }),
  );
  const submit = async () => {
    if (on !== null && (await act.run({ on, reason })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={`Retire: ${name}`}
      submitLabel={`Retire the ${kind}`}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
      blocks
    >
      <p>{consequences[kind]}</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
