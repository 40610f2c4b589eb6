import { useState } from 'react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

/** Opens a finished job again, with the reason. */
export function ReopenForm({ job, onClose }: { readonly job: PlanJob; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, input: { readonly on: string; readonly reason: string }) =>
    api.plan.reopenJob({ key, job: job.id, ...input }),
  );
  const submit = async () => {
    if (on !== null && (await act.run({ on, reason })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={`Reopen: ${job.title}`}
      submitLabel="Reopen the job"
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <TextField
        name="reason"
        label="Why it is open again"
        value={reason}
        onChange={setReason}
        longest={400}
        required
        autoFocus
      />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
