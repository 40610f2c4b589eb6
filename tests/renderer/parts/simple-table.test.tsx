import { screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it, vi } from 'vitest';
import { type Column, SimpleTable } from '../../../renderer/parts/simple-table.tsx';
import { shown } from '../shown.tsx';

interface Row {
  readonly name: string;
  readonly count: number;
}

const rows: readonly Row[] = [
  { name: 'Bolt 10', count: 8 },
  { name: 'Bolt 9', count: 12 },
  { name: 'anchor', count: 100 },
];
const columns: readonly Column<Row>[] = [
  { id: 'name', title: 'Part', rowHeader: true, cell: ({ name }) => name, sortBy: ({ name }) => name },
  { id: 'count', title: 'Count', figures: true, cell: ({ count }) => count, sortBy: ({ count }) => count, foot: 120 },
];
const names = () => screen.getAllByRole('rowheader').map((cell) => cell.textContent);

it('is a table with a caption, row headers and a foot', () => {
  shown(<SimpleTable caption="Bolts" columns={columns} rows={rows} rowKey={({ name }) => name} />);
  const table = screen.getByRole('table', { name: 'Bolts' });
  expect(within(table).getAllByRole('row')).toHaveLength(5);
  expect(names()).toEqual(['Bolt 10', 'Bolt 9', 'anchor']);
  expect(within(table).getByText('120')).toBeTruthy();
});

it('is sorted by a header, rising, falling and back, with numbers in names by their value', async () => {
  const user = userEvent.setup();
  shown(<SimpleTable caption="Bolts" columns={columns} rows={rows} rowKey={({ name }) => name} />);
  const part = screen.getByRole('button', { name: 'Part' });
  await user.click(part);
  expect(names()).toEqual(['anchor', 'Bolt 9', 'Bolt 10']);
  expect(screen.getByRole('columnheader', { name: 'Part' }).getAttribute('aria-sort')).toBe('ascending');
  await user.click(part);
  expect(names()).toEqual(['Bolt 10', 'Bolt 9', 'anchor']);
  expect(screen.getByRole('columnheader', { name: 'Part' }).getAttribute('aria-sort')).toBe('descending');
  await user.click(part);
  expect(screen.getByRole('columnheader', { name: 'Part' }).getAttribute('aria-sort')).toBe('none');
  await user.click(screen.getByRole('button', { name: 'Count' }));
  expect(names()).toEqual(['Bolt 10', 'Bolt 9', 'anchor']);
});

it('opens a row by its first cell', async () => {
  const open = vi.fn();
  const user = userEvent.setup();
  shown(<SimpleTable caption="Bolts" columns={columns} rows={rows} rowKey={({ name }) => name} onRowOpen={open} />);
  await user.click(screen.getByRole('button', { name: 'Bolt 9' }));
  expect(open).toHaveBeenCalledWith(rows[1]);
});
