import type { FieldProps } from '../../parts/field-frame.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { readNumber } from './lines-text.ts';

export interface NumberFieldProps extends FieldProps {
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly suffix?: string;
  /** Below nothing is accepted too. */
  readonly negative?: boolean;
}

/** A number with decimals, or nothing. */
export function NumberField({ value, onChange, suffix = '', negative = false, ...field }: NumberFieldProps) {
  return (
    <ReadField
      {...field}
      value={value}
      onChange={onChange}
      read={(text) => readNumber(text, field.name, negative)}
      write={String}
      suffix={suffix}
      numeric
    />
  );
}
