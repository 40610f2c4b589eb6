import { NativeSelect } from '@mantine/core';
import {
  type ImportField,
  importFields,
  type MappedColumn,
  type Mapping,
} from '../../../core/exchange/import-types.ts';
import type { Table } from '../../../core/exchange/table-types.ts';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { fieldWords } from './words.ts';

/** Up to three different values of a column, as they stand in the file. */
export function samplesOf(table: Table, index: number): readonly string[] {
  const found = new Set<string>();
  for (const { row, cells } of table.rows) {
    const text = (cells[index] ?? '').trim();
    if (row > table.headerRow && text !== '') found.add(text.length > 40 ? `${text.slice(0, 40)}…` : text);
    if (found.size === 3) break;
  }
  return [...found];
}

/** The mapping with one column given another meaning; a field moves away from the column that had it. */
export function withField(mapping: Mapping, index: number, field: ImportField | null): Mapping {
  return {
    ...mapping,
    columns: mapping.columns.map((column) => {
      if (column.index === index) return { ...column, field, because: 'user' };
      return field !== null && column.field === field ? { ...column, field: null, because: 'user' } : column;
    }),
  };
}

const becauseWords: Readonly<Record<MappedColumn['because'], string>> = {
  heading: 'by its heading',
  content: 'by what is in it',
  user: 'as you chose',
  'nothing fits': '',
};

export interface ColumnsProps {
  readonly table: Table;
  readonly mapping: Mapping;
  readonly onChange: (mapping: Mapping) => void;
}

/** What each column of the file holds. */
export function Columns({ table, mapping, onChange }: ColumnsProps) {
  const options = [
    { value: '', label: 'Kept as text on the line' },
    ...importFields.map((field) => ({ value: field, label: fieldWords[field] })),
  ];
  const columns: readonly Column<MappedColumn>[] = [
    { id: 'title', title: 'Heading in the file', rowHeader: true, cell: ({ title }) => title },
    { id: 'samples', title: 'What is in it', cell: ({ index }) => samplesOf(table, index).join(' · ') || 'nothing' },
    {
      id: 'field',
      title: 'What it is',
      cell: ({ index, title, field }) => (
        <NativeSelect
          aria-label={`What “${title}” is`}
          value={field ?? ''}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            onChange(withField(mapping, index, importFields.find((one) => one === chosen) ?? null));
          }}
          data={options}
        />
      ),
    },
    { id: 'because', title: 'How it was found', cell: ({ because }) => becauseWords[because] },
  ];
  return (
    <SimpleTable
      caption="Columns of the file"
      captionHidden
      columns={columns}
      rows={mapping.columns}
      rowKey={({ index }) => String(index)}
    />
  );
}
