import { TextInput } from '@mantine/core';
import { type ReactNode, useState } from 'react';
import { type FieldProps, inputAttributes, useFieldError } from './field-frame.tsx';
import { refusalWords } from './refusal-note.tsx';

export interface ReadFieldProps<Value> extends FieldProps {
  readonly value: Value | null;
  readonly onChange: (value: Value | null) => void;
  /** Turn typed text into a value; throws a refusal that says what is accepted. */
  readonly read: (text: string) => Value;
  readonly write: (value: Value) => string;
  readonly suffix?: string;
  readonly numeric?: boolean;
  readonly aside?: ReactNode;
}

type Reading<Value> = { readonly value: Value | null; readonly problem: string | null };

function readingOf<Value>(text: string, props: ReadFieldProps<Value>): Reading<Value> {
  if (text.trim() === '')
    return { value: null, problem: props.required === true ? `${props.label} is still empty.` : null };
  try {
    return { value: props.read(text), problem: null };
  } catch (error) {
    const { message, accepted } = refusalWords(error);
    const reason = message.replace(/ ?Nothing was changed\.$/, '');
    return { value: null, problem: accepted === undefined ? reason : `${reason} Accepted: ${accepted}.` };
  }
}

/**
 * A field whose text is read into a value. The text stays as it was typed, right or wrong; it is rewritten only when
 * the value is changed from outside, by another row being chosen for instance.
 */
export function ReadField<Value>(props: ReadFieldProps<Value>) {
  const { value, onChange, write, suffix = '', numeric = false, aside } = props;
  const [text, setText] = useState(value === null ? '' : write(value));
  const [given, setGiven] = useState(value);
  const [left, setLeft] = useState(false);
  if (given !== value) {
    setGiven(value);
    if (value !== null && readingOf(text, props).value !== value) setText(write(value));
  }
  const { problem } = readingOf(text, props);
  const error = useFieldError(props, problem, left);
  return (
    <TextInput
      {...inputAttributes(props, error)}
      className={numeric ? 'field-numeric' : undefined}
      inputMode={numeric ? 'decimal' : 'text'}
      value={text}
      onChange={(event) => {
        const typed = event.currentTarget.value;
        setText(typed);
        const next = readingOf(typed, props).value;
        setGiven(next);
        if (next !== value) onChange(next);
      }}
      onBlur={() => setLeft(true)}
      rightSection={aside ?? (suffix === '' ? undefined : <span className="field-suffix">{suffix}</span>)}
      rightSectionWidth={aside === undefined && suffix !== '' ? `${suffix.length + 2}ch` : undefined}
      rightSectionPointerEvents={aside === undefined ? 'none' : 'all'}
    />
  );
}
