import { Select, Textarea, TextInput } from '@mantine/core';
import { useState } from 'react';
import { plainAmount } from '../../core/money/currency.ts';
import { unitPriceFromText } from '../../core/money/line-value.ts';
import { parseMoneyText, parseTypedMoney } from '../../core/money/money-text.ts';
import { Refusal } from '../../core/refusal.ts';
import { isUnit, parseQuantity, plainQuantity, type Unit } from '../../core/units/quantity.ts';
import { type FieldProps, inputAttributes, useFieldError } from './field-frame.tsx';
import { plainUnitPrice } from './formats.ts';
import { useLocale } from './locale.tsx';
import { ReadField } from './read-field.tsx';
import './fields.css';

export interface TextFieldProps extends FieldProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** More than one line; grows with what is typed. */
  readonly long?: boolean;
  readonly placeholder?: string;
  /** Most characters that the workbook keeps. */
  readonly longest?: number;
}

/** Free text. An empty one is a problem only when the field is required. */
export function TextField({ value, onChange, long = false, placeholder, longest = 10_000, ...field }: TextFieldProps) {
  const [left, setLeft] = useState(false);
  const missing = field.required === true && value.trim() === '' ? `${field.label} is still empty.` : null;
  const tooLong = value.length > longest ? `${field.label} holds ${longest} characters at most.` : null;
  const error = useFieldError(field, missing ?? tooLong, left);
  const attributes = {
    ...inputAttributes(field, error),
    value,
    onChange: (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value),
    onBlur: () => setLeft(true),
    ...(placeholder === undefined ? {} : { placeholder }),
  };
  return long ? <Textarea autosize minRows={2} maxRows={10} {...attributes} /> : <TextInput {...attributes} />;
}

export interface QuantityFieldProps extends FieldProps {
  /** Thousandths of the unit; null while nothing can be read. */
  readonly value: number | null;
  readonly onChange: (quantityMilli: number | null) => void;
  readonly unit: Unit | string;
  /** Whether 0 is accepted. */
  readonly zero?: boolean;
}

/** A quantity; what was typed stays as typed, and what it was read as goes to `onChange`. */
export function QuantityField({ value, onChange, unit, zero = false, ...field }: QuantityFieldProps) {
  const known: Unit = isUnit(unit) ? unit : 'each';
  return (
    <ReadField
      {...field}
      value={value}
      onChange={onChange}
      write={plainQuantity}
      read={(text) => parseQuantity(text, known, { field: field.label.toLowerCase(), zero })}
      suffix={unit === 'each' ? '' : unit}
      numeric
    />
  );
}

export interface MoneyFieldProps extends FieldProps {
  /** Whole minor units; null while nothing can be read. */
  readonly value: number | null;
  readonly onChange: (amountMinor: number | null) => void;
  /** ISO 4217 code; the workbook's own when left out. */
  readonly currency?: string;
  /** Whether an amount below nothing is accepted, as in a correction. */
  readonly negative?: boolean;
}

/** An amount of money in one currency, whose code stands at the right of the field. */
export function MoneyField({ value, onChange, currency, negative = false, ...field }: MoneyFieldProps) {
  const locale = useLocale();
  const code = currency ?? locale.currency;
  const read = (text: string): number => {
    const name = field.label.toLowerCase();
    const amount = parseTypedMoney(text, code, name) ?? 0;
    if (amount >= 0 || negative) return amount;
    throw new Refusal('bad-input', `The ${name} is below nothing. Nothing was changed.`, {
      field: field.name,
      accepted: 'an amount of 0 or more',
    });
  };
  return (
    <ReadField
      {...field}
      value={value}
      onChange={onChange}
      write={(amountMinor) => plainAmount(amountMinor, code)}
      read={read}
      suffix={code}
      numeric
    />
  );
}

export interface UnitPriceFieldProps extends FieldProps {
  /** Price each in 1/10 000 of a minor unit; null while nothing can be read. */
  readonly value: number | null;
  readonly onChange: (priceE4: number | null) => void;
  readonly currency?: string;
}

/** A price each, which may carry four decimals more than the currency has: small fasteners cost fractions of a cent. */
export function UnitPriceField({ value, onChange, currency, ...field }: UnitPriceFieldProps) {
  const locale = useLocale();
  const code = currency ?? locale.currency;
  const read = (text: string): number => {
    const name = field.label.toLowerCase();
    const reading = parseMoneyText(text, code, { purpose: 'unit-price' });
    if (reading.kind === 'amount' && !reading.plain.startsWith('-')) return unitPriceFromText(reading.plain, code);
    const reason = reading.kind === 'error' ? `can't be read: ${reading.message}` : `“${text.trim()}” can't be taken.`;
    throw new Refusal('bad-input', `The ${name} ${reason} Nothing was changed.`, {
      field: field.name,
      accepted: 'a price of 0 or more such as 12.50 or 0.0345, without a mark between thousands',
    });
  };
  return (
    <ReadField
      {...field}
      value={value}
      onChange={onChange}
      write={(priceE4) => plainUnitPrice(priceE4, code)}
      read={read}
      suffix={code}
      numeric
    />
  );
}

export interface ChoiceProps<Value extends string> extends FieldProps {
  readonly value: Value | null;
  readonly onChange: (value: Value | null) => void;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly placeholder?: string;
  /** The words for choosing none of them, where the choice isn't required. */
  readonly none?: string;
}

/** One of a list. Long lists can be searched by typing; where none may be chosen, "None" is one of the list. */
export function Choice<Value extends string>({
  value,
  onChange,
  options,
  placeholder,
  none = 'None',
  ...field
}: ChoiceProps<Value>) {
  const [left, setLeft] = useState(false);
  const problem = field.required === true && value === null ? `${field.label} is still to be chosen.` : null;
  const error = useFieldError(field, problem, left);
  return (
    <Select
      {...inputAttributes(field, error)}
      value={field.required === true ? value : (value ?? '')}
      onChange={(chosen) => onChange(options.find((option) => option.value === chosen)?.value ?? null)}
      data={[
        ...(field.required === true ? [] : [{ value: '', label: none }]),
        ...options.map(({ value: id, label }) => ({ value: id, label })),
      ]}
      searchable={options.length > 8}
      allowDeselect={false}
      nothingFoundMessage="Nothing has that name"
      onBlur={() => setLeft(true)}
      {...(placeholder === undefined ? {} : { placeholder })}
    />
  );
}
