import type { Input } from '../../../core/calculators/calculator.ts';
import type { ChecksView } from '../../../core/contract/checks.ts';
import type { CheckSource } from '../../../core/contract/records.ts';
import { Choice } from '../../parts/fields.tsx';
import { emptySource, withPresent } from './draft.ts';
import { FactSource } from './fact-source.tsx';
import { MeasurementSource } from './measurement-source.tsx';
import { TypedSource } from './typed-source.tsx';

const froms = [
  { value: 'fact', label: 'A fact of a part' },
  { value: 'target', label: 'The target sheet' },
  { value: 'measurement', label: 'A measuring sheet' },
  { value: 'typed', label: 'Typed here' },
] as const;

export interface SourceFieldProps {
  readonly name: string;
  readonly input: Input;
  readonly source: CheckSource | undefined;
  readonly targets: ChecksView['targets'];
  readonly onChange: (source: CheckSource | undefined) => void;
}

/** Where one input of a check comes from. */
export function SourceField({ name, input, source, targets, onChange }: SourceFieldProps) {
  const field = `inputs.${name}`;
  return (
    <fieldset className="checks-source">
      <legend>{input.label}</legend>
      <Choice
        name={field}
        label={`${input.label}: taken from`}
        value={source?.from ?? null}
        none="Nothing; the calculator's own value if it has one"
        options={froms}
        onChange={(from) => onChange(from === null ? undefined : emptySource(from, input))}
        {...(input.hint === undefined ? {} : { description: input.hint })}
      />
      {source?.from === 'fact' && <FactSource name={field} label={input.label} source={source} onChange={onChange} />}
      {source?.from === 'target' && (
        <Choice
          name={`${field}.target`}
          label={`${input.label}: line of the target sheet`}
          required
          value={source.target === '' ? null : source.target}
          options={withPresent(
            source.target,
            targets.map((target) => ({ value: target.name, label: target.label })),
          )}
          onChange={(target) => onChange({ from: 'target', target: target ?? '' })}
        />
      )}
      {source?.from === 'measurement' && (
        <MeasurementSource name={field} label={input.label} source={source} onChange={onChange} />
      )}
      {source?.from === 'typed' && <TypedSource name={field} input={input} source={source} onChange={onChange} />}
    </fieldset>
  );
}
