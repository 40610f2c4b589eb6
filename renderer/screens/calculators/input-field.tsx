import { TextInput } from '@mantine/core';
import { useState } from 'react';
import type { Input } from '../../../core/calculators/calculator.ts';
import { formatMeasure, unitLabel } from '../../../core/units/measure.ts';
import { type FieldProps, inputAttributes, useFieldError } from '../../parts/field-frame.tsx';
import { Choice } from '../../parts/fields.tsx';
import { hasUnits, UnitChoice } from './unit-choice.tsx';

/** What an empty field is taken as, in words; undefined where there is no default. */
export function defaultWords(input: Input): string | undefined {
  if (input.kind === 'list' || input.default === undefined) return undefined;
  if (input.kind === 'choice') return input.choices[input.default] ?? input.default;
  if (input.kind === 'yes-no') return input.default ? 'yes' : 'no';
  return formatMeasure({ value: input.default, unit: input.unit }, input.dimension, 10);
}

function descriptionOf(input: Input): string {
  const standing = defaultWords(input);
  const source = 'defaultSource' in input && input.defaultSource !== undefined ? ` (${input.defaultSource})` : '';
  return [
    input.hint ?? '',
    input.kind === 'list' ? 'numbers with a space or a semicolon between them' : '',
    standing === undefined ? '' : `left empty: ${standing}${source}`,
  ]
    .filter((part) => part !== '')
    .join('; ');
}

export interface InputFieldProps {
  readonly name: string;
  readonly input: Input;
  /** Every way to ask needs it. */
  readonly needed: boolean;
  readonly text: string;
  readonly unit: string | undefined;
  /** What is wrong with what was typed. */
  readonly problem: string | null;
  readonly onText: (text: string) => void;
  readonly onUnit: (unit: string) => void;
}

/** One input of a calculator; text stays as typed, right or wrong. */
export function InputField({ name, input, needed, problem, ...given }: InputFieldProps) {
  const description = descriptionOf(input);
  const field: FieldProps = {
    name,
    label: input.optional === true ? `${input.label} (optional)` : input.label,
    required: needed,
    ...(description === '' ? {} : { description: description.charAt(0).toUpperCase() + description.slice(1) }),
  };
  if (input.kind === 'choice' || input.kind === 'yes-no') {
    const choices = input.kind === 'choice' ? input.choices : { true: 'Yes', false: 'No' };
    const standing = defaultWords(input);
    return (
      <Choice
        {...field}
        {...(problem === null ? {} : { error: problem })}
        value={given.text === '' ? null : given.text}
        onChange={(value) => given.onText(value ?? '')}
        options={Object.entries(choices).map(([value, label]) => ({ value, label }))}
        none={standing === undefined ? 'Not given' : `Left empty: ${standing}`}
      />
    );
  }
  return <MeasureField {...given} input={input} field={field} problem={problem} />;
}

type Measured = Exclude<Input, { kind: 'choice' } | { kind: 'yes-no' }>;
interface MeasureFieldProps extends Pick<InputFieldProps, 'text' | 'unit' | 'problem' | 'onText' | 'onUnit'> {
  readonly input: Measured;
  readonly field: FieldProps;
}

function MeasureField({ input, field, text, unit, problem, onText, onUnit }: MeasureFieldProps) {
  // Text that came with the address has been left long ago, so that what is wrong with it is said at once.
  const [left, setLeft] = useState(text !== '');
  const error = useFieldError(field, problem, left);
  const { dimension } = input;
  const shown = unit ?? input.unit;
  const choosable = hasUnits(dimension);
  const label = unitLabel(shown, dimension);
  return (
    <TextInput
      {...inputAttributes(field, error)}
      // Fractions of an inch need the slash, and lists their spaces, which a pad of digits may not have.
      inputMode={dimension === 'length' || input.kind === 'list' ? 'text' : 'decimal'}
      value={text}
      onChange={(event) => onText(event.currentTarget.value)}
      onBlur={() => setLeft(true)}
      inputContainer={(box) => (
        <div className="calculators-beside">
          {box}
          {choosable ? (
            <UnitChoice of={input.label} dimension={dimension} unit={shown} onChange={onUnit} />
          ) : (
            label !== '' && <span className="field-suffix">{label}</span>
          )}
        </div>
      )}
    />
  );
}
