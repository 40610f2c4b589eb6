import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { Toolbar } from '../../parts/furniture.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import type { ShownRow } from './shown-rows.ts';

const atATime = 50;

const choices = [
  { value: '', label: 'Still to be decided' },
  { value: 'skip', label: 'Skip the row' },
  { value: 'import', label: 'Bring it in as it is' },
];

export interface UnclearRowsProps {
  readonly rows: readonly ShownRow[];
  readonly onOverrule: (rows: readonly number[], fate: 'skip' | 'import' | null) => void;
}

/** The rows that can't be written as they are, and those that were decided by hand: one choice a row. */
export function UnclearRows({ rows, onOverrule }: UnclearRowsProps) {
  const [most, setMost] = useState(atATime);
  const unclear = rows.filter(({ fate, overruled }) => fate === 'attention' || overruled !== null);
  const open = unclear.filter(({ fate }) => fate === 'attention').map(({ row }) => row);
  if (unclear.length === 0) return null;
  const columns: readonly Column<ShownRow>[] = [
    { id: 'row', title: 'Row', figures: true, cell: ({ row }) => row },
    { id: 'text', title: 'What it says', rowHeader: true, cell: ({ text }) => text },
    { id: 'why', title: 'What is unclear', cell: ({ findings }) => findings },
    {
      id: 'choice',
      title: 'What to do',
      cell: ({ row, overruled }) => (
        <NativeSelect
          aria-label={`What to do with row ${row}`}
          value={overruled ?? ''}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            onOverrule([row], chosen === 'skip' || chosen === 'import' ? chosen : null);
          }}
          data={choices}
        />
      ),
    },
  ];
  return (
    <>
      <SimpleTable
        caption="Rows that need you"
        columns={columns}
        rows={unclear.slice(0, most)}
        rowKey={({ row }) => String(row)}
      />
      <Toolbar label="Rows that need you">
        {unclear.length > most && (
          <Button onClick={() => setMost(most + atATime)}>Show {Math.min(atATime, unclear.length - most)} more</Button>
        )}
        {open.length > 1 && (
          <Button onClick={() => onOverrule(open, 'skip')}>Skip all {open.length} that are open</Button>
        )}
      </Toolbar>
    </>
  );
}
