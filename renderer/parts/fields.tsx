import { Select, Textarea, TextInput } from '@mantine/core';
import { useState } from 'react';
import { isUnit, parseQuantity, plainQuantity, type Unit } from '../../core/units/quantity.ts';
import { type FieldProps, inputAttributes, useFieldError } from './field-frame.tsx';
import { useLocale } from './locale.tsx';
import { parseMoneyText, plainMoney } from './money-text.ts';
import { ReadField } from './read-field.tsx';

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
  return (
    <ReadField
      {...field}
      value={value}
      onChange={onChange}
      write={(amountMinor) => plainMoney(amountMinor, code)}
      read={(text) => parseMoneyText(text, code, { field: field.label.toLowerCase(), negative })}
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
}

/** One of a list. Long lists can be searched by typing; a choice that isn't required can be cleared. */
export function Choice<Value extends string>({ value, onChange, options, placeholder, ...field }: ChoiceProps<Value>) {
  const [left, setLeft] = useState(false);
  const problem = field.required === true && value === null ? `${field.label} is still to be chosen.` : null;
  const error = useFieldError(field, problem, left);
  return (
    <Select
      {...inputAttributes(field, error)}
      value={value}
      onChange={(chosen) => onChange(options.find((option) => option.value === chosen)?.value ?? null)}
      data={options.map(({ value: id, label }) => ({ value: id, label }))}
      searchable={options.length > 8}
      clearable={field.required !== true && value !== null}
      clearButtonProps={{ 'aria-label': `Clear ${field.label.toLowerCase()}`, tabIndex: 0 }}
      allowDeselect={field.required !== true}
      nothingFoundMessage="Nothing has that name"
      onBlur={() => setLeft(true)}
      {...(placeholder === undefined ? {} : { placeholder })}
    />
  );
}
