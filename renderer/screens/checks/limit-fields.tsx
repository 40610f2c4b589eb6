import type { Calculator } from '../../../core/calculators/calculator.ts';
import type { CheckLimit } from '../../../core/contract/records.ts';
import { unitLabel, unitsOf } from '../../../core/units/measure.ts';
import { Choice, TextField } from '../../parts/fields.tsx';
import { BoundField } from './bound-field.tsx';
import type { Draft } from './draft.ts';

export interface LimitFieldsProps {
  readonly calculator: Calculator;
  readonly draft: Draft;
  readonly onChange: (change: Partial<Draft>) => void;
}

/** Which result is held against which limit, and where the limit was read. */
export function LimitFields({ calculator, draft, onChange }: LimitFieldsProps) {
  const { limit } = draft;
  const outputs = Object.entries(calculator.outputs).filter(([, { kind }]) => kind !== 'text');
  const output = calculator.outputs[draft.output];
  const dimension = output !== undefined && 'unit' in output ? output.dimension : undefined;
  const set = (change: Partial<CheckLimit>) => onChange({ limit: { ...limit, ...change } });
  const typedHere = (bound: 'leastFrom' | 'mostFrom') => {
    const { [bound]: _from, ...rest } = limit;
    onChange({ limit: rest });
  };
  return (
    <fieldset className="checks-source">
      <legend>The limit</legend>
      <Choice
        name="output"
        label="Result that is held against it"
        required
        value={draft.output}
        options={outputs.map(([name, { label }]) => ({ value: name, label }))}
        onChange={(name) => {
          const next = calculator.outputs[name ?? ''];
          const unit = next !== undefined && 'unit' in next ? next.unit : '';
          onChange({ output: name ?? '', limit: { ...limit, unit } });
        }}
      />
      <BoundField
        name="limit.least"
        label="At least"
        value={limit.least}
        from={limit.leastFrom}
        unit={limit.unit}
        onChange={(least) => set({ least })}
        onTyped={() => typedHere('leastFrom')}
      />
      <BoundField
        name="limit.most"
        label="At most"
        value={limit.most}
        from={limit.mostFrom}
        unit={limit.unit}
        onChange={(most) => set({ most })}
        onTyped={() => typedHere('mostFrom')}
      />
      {dimension !== undefined && unitsOf(dimension).length > 1 && (
        <Choice
          name="limit.unit"
          label="Unit of the limit"
          required
          value={limit.unit}
          options={unitsOf(dimension).map((unit) => ({
            value: unit,
            label: unitLabel(unit, dimension) || 'as a ratio',
          }))}
          onChange={(unit) => set({ unit: unit ?? '' })}
        />
      )}
      <TextField
        name="limit.source"
        label="Where the limit was read"
        longest={200}
        value={limit.source}
        onChange={(source) => set({ source })}
      />
    </fieldset>
  );
}
