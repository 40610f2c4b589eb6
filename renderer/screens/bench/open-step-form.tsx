import { useState } from 'react';
import type { LineDetail } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useActDay } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

interface OpenStepFormProps {
  readonly line: LineDetail['row'];
  readonly copy: number;
  readonly step: LineDetail['making'][number];
  readonly by: string;
  readonly onClose: () => void;
}

/** Takes a tick back because the step has to be done again; why is kept. */
export function OpenStepForm({ line, copy, step, by, onClose }: OpenStepFormProps) {
  const [reason, setReason] = useState('');
  const day = useActDay();
  const act = useAct((key, on: string) =>
    api.plumbing.step({ key, on, line: line.id, copy, step: step.id, done: false, by, note: reason.trim() }),
  );
  return (
    <FormWindow
      opened
      title={`Open again: ${step.title}`}
      submitLabel="Open the step again"
      blocks
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>
        {line.name}
        {line.quantity > 1 && `, copy ${copy} of ${line.quantity}`}: the step counts as not done until it is ticked
        again.
      </p>
      <TextField name="note" label="Why" required value={reason} onChange={setReason} longest={400} autoFocus />
      {day.field}
    </FormWindow>
  );
}
