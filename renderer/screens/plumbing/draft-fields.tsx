import { Checkbox } from '@mantine/core';
import { createContext, type ReactNode, useContext, useState } from 'react';
import { Choice, TextField } from '../../parts/fields.tsx';
import type { LineDraft } from './draft.ts';
import { SuggestField } from './suggest-field.tsx';

interface DraftForm {
  readonly draft: LineDraft;
  readonly change: (part: Partial<LineDraft>) => void;
  readonly set: (name: string, text: string) => void;
  /** What is wrong with what was typed into the field, while it is typed. */
  readonly problem: (name: string) => string | null;
}

export const DraftContext = createContext<DraftForm | null>(null);

/** The line being written, for its fields. */
export function useDraft(): DraftForm {
  const form = useContext(DraftContext);
  if (form === null) throw new Error('A field of a line stands outside its form.');
  return form;
}

interface DraftFieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
}

function useDraftField({ name, label, hint }: DraftFieldProps) {
  const { draft, set, problem } = useDraft();
  const error = problem(name);
  return {
    value: draft.texts[name] ?? '',
    set: (text: string) => set(name, text),
    field: {
      name,
      label,
      ...(hint === undefined ? {} : { description: hint }),
      ...(error === null ? {} : { error }),
    },
  };
}

/** A figure or words, kept as typed until the take-off reads them. */
export function DraftText(props: DraftFieldProps) {
  const { field, value, set } = useDraftField(props);
  return <TextField {...field} value={value} onChange={set} longest={200} />;
}

/** Words with the usual ones offered. */
export function DraftSuggest({ options, ...props }: DraftFieldProps & { readonly options: readonly string[] }) {
  const { field, value, set } = useDraftField(props);
  return <SuggestField {...field} value={value} options={options} onChange={set} />;
}

interface DraftChoiceProps extends DraftFieldProps {
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly required?: boolean;
}

/** One of a few; "Not said" where it may stay open. */
export function DraftChoice({ options, required = false, ...props }: DraftChoiceProps) {
  const { field, value, set } = useDraftField(props);
  return (
    <Choice
      {...field}
      required={required}
      none="Not said"
      value={value === '' ? null : value}
      options={options}
      onChange={(chosen) => set(chosen ?? '')}
    />
  );
}

/** A thing that is so or isn't. */
export function DraftFlag(props: DraftFieldProps) {
  const { field, value, set } = useDraftField(props);
  return (
    <Checkbox
      name={field.name}
      label={field.label}
      checked={value === 'yes'}
      onChange={(event) => set(event.currentTarget.checked ? 'yes' : '')}
    />
  );
}

interface SectionProps {
  readonly title: string;
  /** Fields inside; the section opens by itself where one of them has a problem or was filled in. */
  readonly names: readonly string[];
  readonly children: ReactNode;
}

/** Fields that matter for some lines only: closed until they are asked for, filled in or wrong. */
export function MoreFields({ title, names, children }: SectionProps) {
  const { draft, problem } = useDraft();
  const [opened, setOpened] = useState(() => names.some((name) => (draft.texts[name] ?? '') !== ''));
  const wrong = names.some((name) => problem(name) !== null);
  return (
    <details className="plumbing-more" open={opened || wrong} onToggle={(event) => setOpened(event.currentTarget.open)}>
      <summary>{title}</summary>
      <div className="plumbing-fields">{children}</div>
    </details>
  );
}
