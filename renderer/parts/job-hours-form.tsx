import { useState } from 'react';
import type { PlanJob } from '../../core/contract/plan.ts';
import { api } from '../app/client.ts';
import { useAct } from '../app/data.tsx';
import { useWorkspace } from '../app/workspace.tsx';
import { DateField } from './date-field.tsx';
import { TextField } from './fields.tsx';
import { FormWindow } from './form.tsx';
import { MinutesField } from './minutes-field.tsx';

/** Adds time spent on a job without finishing it. */
export function HoursForm({ job, onClose }: { readonly job: PlanJob; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [minutes, setMinutes] = useState<number | null>(null);
  const [note, setNote] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, input: { readonly on: string; readonly minutes: number; readonly note: string }) =>
    api.plan.addHours({ key, job: job.id, ...input }),
  );
  const submit = async () => {
    if (on !== null && minutes !== null && (await act.run({ on, minutes, note })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={`Time spent: ${job.title}`}
      submitLabel="Add the time"
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <MinutesField
        name="minutes"
        label="Time spent"
        description="Hours, such as 1.5 or 1:30."
        value={minutes}
        onChange={setMinutes}
        zero={false}
        steps={[15, 30, 60]}
        required
        autoFocus
      />
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={400} />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
