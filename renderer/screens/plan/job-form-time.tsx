import type { Lag, RecordValues } from '../../../core/contract/records.ts';
import { Choice } from '../../parts/fields.tsx';
import { MinutesField } from '../../parts/minutes-field.tsx';
import { Tick } from './choices.tsx';

type JobTime = Pick<RecordValues['job'], 'minutesGuess' | 'minutesLow' | 'minutesHigh' | 'hands' | 'oneSitting'>;

export interface TimeFieldsProps {
  readonly values: JobTime;
  readonly set: (change: Partial<JobTime>) => void;
}

/** How long a job takes: the guess, at best and at worst, and whether it takes hands or one go. */
export function TimeFields({ values, set }: TimeFieldsProps) {
  return (
    <>
      <MinutesField
        name="minutesGuess"
        label={values.hands ? 'Guess of the work' : 'How long it stands'}
        description="Hours, such as 1.5 or 1:30. The dates of the hoist check are reckoned from these."
        value={values.minutesGuess}
        onChange={(minutesGuess) => set({ minutesGuess })}
      />
      <div className="form-row">
        <MinutesField
          name="minutesLow"
          label="At best"
          description="Left empty: three quarters of the guess."
          value={values.minutesLow}
          onChange={(minutesLow) => set({ minutesLow })}
        />
        <MinutesField
          name="minutesHigh"
          label="At worst"
          description="Left empty: twice the guess."
          value={values.minutesHigh}
          onChange={(minutesHigh) => set({ minutesHigh })}
        />
      </div>
      <Tick
        name="hands"
        label="Takes somebody’s hands"
        description="A cure or a stay at the machine shop runs on the clock without them."
        value={values.hands}
        onChange={(hands) => set({ hands })}
      />
      {values.hands && (
        <Tick
          name="oneSitting"
          label="Must be done in one go"
          value={values.oneSitting}
          onChange={(oneSitting) => set({ oneSitting })}
        />
      )}
    </>
  );
}

export interface LagFieldsProps {
  readonly earlier: readonly { readonly id: number; readonly label: string }[];
  readonly lags: readonly Lag[];
  readonly onChange: (lags: Lag[]) => void;
}

/** How long to wait after each earlier job: a cure, a cool-down. */
export function LagFields({ earlier, lags, onChange }: LagFieldsProps) {
  const change = (job: number, part: Partial<Lag>) => {
    const now: Lag = { minutes: 0, on: 'clock', ...lags.find((lag) => lag.job === job), job, ...part };
    const others = lags.filter((lag) => lag.job !== job);
    onChange(now.minutes === 0 ? others : [...others, now]);
  };
  return earlier.map(({ id, label }) => {
    const own = lags.find((lag) => lag.job === id);
    return (
      <div key={id} className="form-row">
        <MinutesField
          name={`lag-${id}`}
          label={`Wait after “${label}”`}
          value={own?.minutes ?? null}
          onChange={(minutes) => change(id, { minutes: minutes ?? 0 })}
        />
        {own !== undefined && (
          <Choice
            name={`lag-on-${id}`}
            label="Counted"
            value={own.on}
            onChange={(on) => on !== null && change(id, { on })}
            options={[
              { value: 'clock', label: 'on the clock, day and night' },
              { value: 'work', label: 'in hours of work' },
            ]}
            required
          />
        )}
      </div>
    );
  });
}
