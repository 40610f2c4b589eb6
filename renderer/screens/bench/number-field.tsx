import type { FieldProps } from '../../parts/field-frame.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { readNumber, readWhole } from './lines-text.ts';

export interface NumberFieldProps extends FieldProps {
  /** NaN stands for a number that is needed and not typed yet. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly suffix?: string;
  /** Below nothing is accepted too. */
  readonly negative?: boolean;
  /** Only whole numbers from 1 to this. */
  readonly wholeTo?: number;
}

/** A number with decimals, or nothing. */
export function NumberField({ value, onChange, suffix = '', negative = false, wholeTo, ...field }: NumberFieldProps) {
  return (
    <ReadField
      {...field}
      value={Number.isNaN(value) ? null : value}
      onChange={onChange}
      read={(text) =>
        wholeTo === undefined ? readNumber(text, field.name, negative) : readWhole(text, field.name, wholeTo)
      }
      write={String}
      suffix={suffix}
      numeric
    />
  );
}
