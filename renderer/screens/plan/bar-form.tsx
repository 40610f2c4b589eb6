import { useState } from 'react';
import type { PlanBar } from '../../../core/contract/plan.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { MinutesField } from '../../parts/minutes-field.tsx';
import { barSentence } from './bars-words.ts';

export interface BarFormProps {
  readonly bar: PlanBar;
  readonly build: number;
  readonly onClose: () => void;
}

/** The first day and the hours of a job, typed: what dragging its bar does. */
export function BarForm({ bar, build, onClose }: BarFormProps) {
  const { today } = useWorkspace();
  const locale = useLocale();
  const [notBefore, setNotBefore] = useState(bar.notBefore);
  const [minutesGuess, setGuess] = useState(bar.minutesGuess);
  const [minutesLow, setLow] = useState(bar.minutesLow);
  const [minutesHigh, setHigh] = useState(bar.minutesHigh);
  const [on, setOn] = useState<string | null>(today);
  const act = useAct((key, day: string) =>
    api.records.save({
      key,
      on: day,
      kind: 'job',
      build,
      id: bar.id,
      revision: bar.revision,
      values: { notBefore, minutesGuess, minutesLow, minutesHigh },
    }),
  );
  const submit = async () => {
    if (on !== null && (await act.run(on)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={bar.title}
      submitLabel="Keep the changes"
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <p>{barSentence(bar, locale)}</p>
      <DateField
        name="notBefore"
        label="Not before"
        description="Left empty: as soon as hands, parts, tools and earlier jobs allow."
        value={notBefore}
        onChange={setNotBefore}
        today={today}
        autoFocus
      />
      <MinutesField name="minutesGuess" label="Guess of the hours" value={minutesGuess} onChange={setGuess} />
      <div className="form-row">
        <MinutesField name="minutesLow" label="At best" value={minutesLow} onChange={setLow} />
        <MinutesField name="minutesHigh" label="At worst" value={minutesHigh} onChange={setHigh} />
      </div>
      <DateField name="on" label="Day of this entry" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
