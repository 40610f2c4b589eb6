import { Select } from '@mantine/core';
import { useState } from 'react';
import type { SearchHit } from '../../../core/contract/journal.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useReading } from '../../app/workspace.tsx';

export interface FoundChoiceProps {
  readonly label: string;
  readonly kind: SearchHit['kind'] & ('part' | 'order');
  readonly value: number | null;
  /** What the one chosen is called, where it is known. */
  readonly name: string;
  readonly onChange: (id: number | null) => void;
}

/** One part or order out of thousands, found by typing some of its words. */
export function FoundChoice({ label, kind, value, name, onChange }: FoundChoiceProps) {
  const reading = useReading();
  const [typed, setTyped] = useState('');
  const words = typed.trim();
  const ask = words.length > 1 && words !== name;
  const found = useRead(
    ['search', reading?.build ?? null, words],
    ask ? () => api.search.find({ text: words, ...(reading === null ? {} : { build: reading.build }) }) : null,
  );
  const hits = ask && found.state === 'ready' ? found.value.filter((hit) => hit.kind === kind) : [];
  const options = hits.map(({ id, title, detail }) => ({
    value: String(id),
    label: detail === '' ? title : `${title}, ${detail}`,
  }));
  if (value !== null && !options.some((option) => option.value === String(value))) {
    options.unshift({ value: String(value), label: name === '' ? `${label} ${value}` : name });
  }
  return (
    <Select
      label={label}
      placeholder="Type some words"
      value={value === null ? null : String(value)}
      onChange={(chosen) => onChange(chosen === null ? null : Number(chosen))}
      data={options}
      searchable
      clearable
      clearButtonProps={{ 'aria-label': `Any ${label.toLowerCase()}` }}
      onSearchChange={setTyped}
      filter={({ options: all }) => all}
      nothingFoundMessage={words.length > 1 ? 'Nothing has these words' : 'Type two letters or more'}
      autoComplete="off"
    />
  );
}
