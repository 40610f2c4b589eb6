import { Checkbox } from '@mantine/core';
import { Refusal } from '../../../core/refusal.ts';
import type { FieldProps } from '../../parts/field-frame.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { dayHoursText, readDayHours, readWeekHours, weekHoursText } from '../../parts/week-hours.ts';

export interface WholeFieldProps extends FieldProps {
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly least: number;
  readonly most: number;
  readonly unit?: string;
}

/** A whole number between two bounds. */
export function WholeField({ value, onChange, least, most, unit = '', ...field }: WholeFieldProps) {
  const read = (text: string): number => {
    const number = /^\d{1,9}$/.test(text.trim()) ? Number(text.trim()) : Number.NaN;
    if (number >= least && number <= most) return number;
    throw new Refusal(
      'bad-input',
      `“${text.trim()}” can't be taken as ${field.label.toLowerCase()}. Nothing was changed.`,
      {
        field: field.name,
        accepted: `a whole number from ${least} to ${most}`,
      },
    );
  };
  return <ReadField {...field} value={value} onChange={onChange} read={read} write={String} suffix={unit} numeric />;
}

export interface HoursFieldProps extends FieldProps {
  /** Hours of a week, each with its day, or of one day. */
  readonly of: 'week' | 'hours';
  readonly value: unknown;
  readonly onChange: (value: readonly object[]) => void;
}

/** Hours typed in one line; nothing typed is no hours. */
export function HoursField({ of, value, onChange, ...field }: HoursFieldProps) {
  const write = (hours: unknown): string =>
    of === 'week'
      ? weekHoursText(hours as Parameters<typeof weekHoursText>[0])
      : dayHoursText(hours as Parameters<typeof dayHoursText>[0]);
  const read = (text: string): readonly object[] =>
    of === 'week' ? readWeekHours(text, field.name) : readDayHours(text, field.name);
  const now = Array.isArray(value) && value.length > 0 ? write(value) : null;
  return (
    <ReadField
      {...field}
      value={now}
      onChange={(text) => onChange(text === null ? [] : read(text))}
      // What is read goes on as text in one form, so that the same hours are the same value.
      read={(text) => write(read(text))}
      write={(text) => text}
    />
  );
}

export interface RateFieldProps extends FieldProps {
  readonly value: string | null;
  readonly onChange: (value: string | null) => void;
  /** The workbook's own currency. */
  readonly base: string;
}

/** Units of the workbook's own currency for one unit of a foreign one, kept as decimal text. */
export function RateField({ value, onChange, base, ...field }: RateFieldProps) {
  const read = (text: string): string => {
    const plain = text.trim().replace(',', '.');
    if (/^\d{1,9}(\.\d{1,10})?$/.test(plain) && /[1-9]/.test(plain)) return plain;
    throw new Refusal('bad-input', `The rate “${text.trim()}” can't be taken. Nothing was changed.`, {
      field: field.name,
      accepted: 'a number above 0 with at most 10 decimals, such as 1.0842, without a mark between thousands',
    });
  };
  return <ReadField {...field} value={value} onChange={onChange} read={read} write={String} suffix={base} numeric />;
}

export interface FlagFieldProps {
  readonly name: string;
  readonly label: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
}

/** Yes or no. */
export function FlagField({ name, label, value, onChange }: FlagFieldProps) {
  return (
    <Checkbox name={name} label={label} checked={value} onChange={(event) => onChange(event.currentTarget.checked)} />
  );
}
