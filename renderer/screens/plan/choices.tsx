import { Checkbox, MultiSelect } from '@mantine/core';
import { type FieldProps, inputAttributes, useFieldError } from '../../parts/field-frame.tsx';

export interface SeveralProps extends FieldProps {
  readonly value: readonly number[];
  readonly onChange: (ids: number[]) => void;
  readonly options: readonly { readonly id: number; readonly label: string }[];
  readonly placeholder?: string;
}

/** Any number out of a list, searched by typing. */
export function Several({ value, onChange, options, placeholder, ...field }: SeveralProps) {
  const error = useFieldError(field, null, false);
  return (
    <MultiSelect
      {...inputAttributes(field, error)}
      value={value.map(String)}
      onChange={(ids) => onChange(ids.map(Number))}
      data={options.map(({ id, label }) => ({ value: String(id), label }))}
      searchable
      nothingFoundMessage="Nothing has that name"
      {...(placeholder === undefined || value.length > 0 ? {} : { placeholder })}
    />
  );
}

export interface TickProps {
  readonly name: string;
  readonly label: string;
  readonly description?: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
}

/** Yes or no. */
export function Tick({ name, label, description, value, onChange }: TickProps) {
  return (
    <Checkbox
      className="plan-tick"
      name={name}
      label={label}
      {...(description === undefined ? {} : { description })}
      checked={value}
      onChange={(event) => onChange(event.currentTarget.checked)}
    />
  );
}
