import { Autocomplete } from '@mantine/core';
import { useState } from 'react';
import { hoseTypes } from '../../../core/plumbing/tables/hose-types.ts';
import { type FieldProps, inputAttributes, useFieldError } from '../../parts/field-frame.tsx';

/** Hose types with their sizes, as a line or a length at hand names them. */
export const hoseNames: readonly string[] = hoseTypes.flatMap(({ id, sizes }) =>
  sizes.length === 0 ? [id] : sizes.map(({ dash }) => `${id} -${dash}`),
);

interface SuggestFieldProps extends FieldProps {
  readonly value: string;
  readonly options: readonly string[];
  readonly onChange: (value: string) => void;
}

/** Free text with the usual answers offered while typing. */
export function SuggestField({ value, options, onChange, ...field }: SuggestFieldProps) {
  const [left, setLeft] = useState(false);
  const missing = field.required === true && value.trim() === '' ? `${field.label} is still empty.` : null;
  const error = useFieldError(field, missing, left);
  return (
    <Autocomplete
      {...inputAttributes(field, error)}
      value={value}
      data={[...options]}
      limit={40}
      onChange={onChange}
      onBlur={() => setLeft(true)}
    />
  );
}
