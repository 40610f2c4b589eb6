import { useState } from 'react';
import type { PlanJob } from '../../core/contract/plan.ts';
import { api } from '../app/client.ts';
import { useAct, useRead } from '../app/data.tsx';
import { useWorkspace } from '../app/workspace.tsx';
import { DateField } from './date-field.tsx';
import { TextField } from './fields.tsx';
import { FormWindow } from './form.tsx';
import { MinutesField } from './minutes-field.tsx';
import { waitingWords } from './waiting-words.ts';

interface Finish {
  readonly on: string;
  readonly by: string;
  readonly minutesSpent: number | null;
  readonly note: string;
}

interface FinishFormProps {
  readonly job: PlanJob;
  /** Minutes that are known already, by the clock for instance. */
  readonly spent?: number | null;
  readonly onClose: () => void;
}

/** Finishes a job: who did it, how long it took, what is worth writing down. Everything but the day may stay empty. */
export function FinishForm({ job, spent = null, onClose }: FinishFormProps) {
  const { today } = useWorkspace();
  const settings = useRead(['workbook.settings'], () => api.workbook.settings());
  const author = settings.state === 'ready' ? settings.value.author : '';
  const [typedBy, setBy] = useState<string | null>(null);
  const by = typedBy ?? author;
  const [minutes, setMinutes] = useState<number | null>(spent);
  const [note, setNote] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, input: Finish) => api.plan.finishJob({ key, jobs: [job.id], ...input }));
  const submit = async () => {
    if (on !== null && (await act.run({ on, by, minutesSpent: minutes, note })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={`Finish: ${job.title}`}
      submitLabel={job.needsSignOff ? 'Sign off and finish' : 'Finish the job'}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      {job.waitsFor.length > 0 && <p>The workbook still has it waiting for {waitingWords(job.waitsFor)}.</p>}
      <MinutesField
        name="minutesSpent"
        label="Time spent"
        description="Hours, such as 1.5 or 1:30. Leave it empty when it was not kept."
        value={minutes}
        onChange={setMinutes}
        steps={[15, 30, 60]}
        autoFocus
      />
      <TextField
        name="by"
        label={job.needsSignOff ? 'Signed off by' : 'Done by'}
        value={by}
        onChange={setBy}
        longest={80}
        required={job.needsSignOff}
      />
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={2000} long />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
