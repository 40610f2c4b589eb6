import type { Input } from '../../../core/calculators/calculator.ts';
import type { CheckSource } from '../../../core/contract/records.ts';
import { unitLabel, unitsOf } from '../../../core/units/measure.ts';
import { Choice, TextField } from '../../parts/fields.tsx';

type Typed = Extract<CheckSource, { from: 'typed' }>;

export interface TypedSourceProps {
  readonly name: string;
  readonly input: Input;
  readonly source: Typed;
  readonly onChange: (source: Typed) => void;
}

/** A value typed for the check alone, with its unit and where it was read. */
export function TypedSource({ name, input, source, onChange }: TypedSourceProps) {
  const { value, unit } = source.given;
  const text = Array.isArray(value) ? value.join('; ') : String(value);
  const give = (given: Typed['given']) => onChange({ ...source, given });
  const choices =
    input.kind === 'choice' ? input.choices : input.kind === 'yes-no' ? { true: 'Yes', false: 'No' } : undefined;
  return (
    <>
      {choices !== undefined ? (
        <Choice
          name={`${name}.value`}
          label={`${input.label}: value`}
          required
          value={text === '' ? null : text}
          options={Object.entries(choices).map(([id, label]) => ({ value: id, label }))}
          onChange={(chosen) => give({ value: chosen ?? '' })}
        />
      ) : (
        <TextField
          name={`${name}.value`}
          label={`${input.label}: value`}
          required
          longest={200}
          value={text}
          onChange={(next) =>
            give({
              ...source.given,
              value: input.kind === 'list' ? next.split(/[;\n]/).map((one) => one.trim()) : next,
            })
          }
          {...(input.kind === 'list' ? { description: 'Numbers with a semicolon between them.' } : {})}
        />
      )}
      {'unit' in input && unitsOf(input.dimension).length > 1 && (
        <Choice
          name={`${name}.unit`}
          label={`${input.label}: unit`}
          required
          value={unit ?? input.unit}
          options={unitsOf(input.dimension).map((one) => ({
            value: one,
            label: unitLabel(one, input.dimension) || 'as a ratio',
          }))}
          onChange={(next) => give({ ...source.given, unit: next ?? input.unit })}
        />
      )}
      <TextField
        name={`${name}.source`}
        label={`${input.label}: read where`}
        value={source.source}
        longest={200}
        onChange={(read) => onChange({ ...source, source: read })}
      />
    </>
  );
}
