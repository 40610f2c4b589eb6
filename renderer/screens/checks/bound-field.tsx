import { Button } from '@mantine/core';
import type { CheckSource } from '../../../core/contract/records.ts';
import { Refusal } from '../../../core/refusal.ts';
import { ReadField } from '../../parts/read-field.tsx';
import { sourceText } from './check-words.ts';

export interface BoundFieldProps {
  readonly name: string;
  readonly label: string;
  readonly value: number | null;
  /** Where the bound stands, when it isn't typed here. */
  readonly from: CheckSource | undefined;
  readonly unit: string;
  readonly onChange: (value: number | null) => void;
  /** The bound is to be typed here from now on. */
  readonly onTyped: () => void;
}

function readNumber(text: string, label: string, name: string): number {
  const value = Number(text.trim().replace(',', '.'));
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw new Refusal('bad-input', `${label} “${text.trim()}” is no number. Nothing was changed.`, {
    field: name,
    accepted: 'a number such as 85 or 0.75',
  });
}

/** The least or the most that a check accepts. */
export function BoundField({ name, label, value, from, unit, onChange, onTyped }: BoundFieldProps) {
  if (from !== undefined) {
    return (
      <p>
        {label}: from the {sourceText(from)}.{' '}
        <Button variant="subtle" onClick={onTyped}>
          Type it here instead
        </Button>
      </p>
    );
  }
  return (
    <ReadField
      name={name}
      label={label}
      value={value}
      onChange={onChange}
      write={String}
      read={(text) => readNumber(text, label, name)}
      suffix={unit === '-' ? '' : unit}
      numeric
    />
  );
}
