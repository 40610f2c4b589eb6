import { act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useEffect, useState } from 'react';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { Sheet } from '../../../renderer/parts/sheet/sheet.tsx';
import type { RowId, SheetColumn, SheetPaste, SheetView } from '../../../renderer/parts/sheet/sheet-types.ts';
import { plainView } from '../../../renderer/parts/sheet/sheet-view.ts';
import { manyParts, type PartRow, part, partColumns } from './sample-rows.ts';

// Keys and roles follow the data grid pattern of the WAI-ARIA Authoring Practices and checklist row X4 of this project.

const sizes = { offsetHeight: 600, offsetWidth: 1000, clientHeight: 600, clientWidth: 1000 };
const before = new Map<string, PropertyDescriptor | undefined>();
beforeAll(() => {
  for (const [name, value] of Object.entries(sizes)) {
    const owner = name.startsWith('client') ? Element.prototype : HTMLElement.prototype;
    before.set(name, Object.getOwnPropertyDescriptor(owner, name));
    Object.defineProperty(owner, name, { configurable: true, get: () => value });
  }
});
afterAll(() => {
  for (const [name, descriptor] of before) {
    const owner = name.startsWith('client') ? Element.prototype : HTMLElement.prototype;
    if (descriptor !== undefined) Object.defineProperty(owner, name, descriptor);
  }
});

const idOf = (row: PartRow) => row.id;

interface SetUp {
  rows?: PartRow[];
  view?: Partial<SheetView>;
  commit?: (row: PartRow, text: string) => Promise<void>;
}

interface Seen {
  view: SheetView;
  selection: ReadonlySet<RowId>;
}

interface HostProps {
  rows: PartRow[];
  columns: readonly SheetColumn<PartRow>[];
  seen: Seen;
  onOpenRow: (row: PartRow) => void;
  onPaste: (paste: SheetPaste<PartRow>) => void;
}

function Host({ rows, columns, seen, onOpenRow, onPaste }: HostProps) {
  const [view, setView] = useState(seen.view);
  const [selection, setSelection] = useState(seen.selection);
  useEffect(() => {
    Object.assign(seen, { view, selection });
  });
  return (
    <>
      <Sheet
        columns={columns}
        rows={rows}
        rowId={idOf}
        view={view}
        onViewChange={setView}
        selection={selection}
        onSelectionChange={setSelection}
        label="Parts"
        noun={['part', 'parts']}
        onOpenRow={onOpenRow}
        onPaste={onPaste}
        footer
        emptyText={<p>List what the build needs.</p>}
        bulk={(chosen) => <button type="button">Order {chosen.size}</button>}
      />
      <button type="button">After</button>
    </>
  );
}

function show({ rows = manyParts(1000), view = {}, commit = () => Promise.resolve() }: SetUp = {}) {
  const seen: Seen = { view: { ...plainView, ...view }, selection: new Set() };
  const onOpenRow = vi.fn<(row: PartRow) => void>();
  const onPaste = vi.fn<(paste: SheetPaste<PartRow>) => void>();
  const columns = partColumns.map(
    (column): SheetColumn<PartRow> =>
      column.key === 'price' ? { ...column, edit: { kind: 'money', commit } } : column,
  );
  const user = userEvent.setup();
  render(<Host {...{ rows, columns, seen, onOpenRow, onPaste }} />);
  const grid = () => screen.getByRole(seen.view.group === null ? 'grid' : 'treegrid');
  const active = () => document.getElementById(grid().getAttribute('aria-activedescendant') ?? '');
  const where = () => [
    Number(active()?.closest('[role=row]')?.getAttribute('aria-rowindex')),
    Number(active()?.getAttribute('aria-colindex')),
  ];
  return { user, seen, grid, active, where, onOpenRow, onPaste, rows };
}

describe('the grid', () => {
  it('says how large it is and draws only what is in sight', () => {
    const { grid } = show();
    expect(grid().getAttribute('aria-rowcount')).toBe('1002');
    expect(grid().getAttribute('aria-colcount')).toBe('7');
    const lines = grid().querySelectorAll('[data-line]');
    expect(lines.length).toBeGreaterThan(15);
    expect(lines.length).toBeLessThan(60);
  });
  it('is one tab stop, and Tab leaves it', async () => {
    const { user, grid } = show();
    act(() => grid().focus());
    await user.tab();
    expect(document.activeElement?.textContent).toBe('After');
    await user.tab({ shift: true });
    expect(document.activeElement).toBe(grid());
  });
  it('keeps focus and a drawn active cell through the whole length', async () => {
    const { user, grid, where } = show();
    act(() => grid().focus());
    expect(where()).toEqual([2, 2]);
    await user.keyboard('{ArrowDown}{ArrowRight}');
    expect(where()).toEqual([3, 3]);
    await user.keyboard('{Control>}{End}{/Control}');
    expect(where()).toEqual([1001, 7]);
    await user.keyboard('{Home}');
    expect(where()).toEqual([1001, 2]);
    await user.keyboard('{Control>}{Home}{/Control}{PageDown}');
    expect(where()[0]).toBeGreaterThan(15);
    expect(document.activeElement).toBe(grid());
  });
  it('offers the first step when there is nothing', () => {
    show({ rows: [] });
    expect(screen.getByText('List what the build needs.')).toBeTruthy();
  });
});

describe('sorting, filtering, grouping', () => {
  it('sorts from the column heads by keyboard, Shift adding a key', async () => {
    const { user, grid, seen, active } = show();
    act(() => grid().focus());
    await user.keyboard('{ArrowUp}{Enter}');
    expect(active()?.getAttribute('aria-sort')).toBe('ascending');
    await user.keyboard('{ArrowRight}{Shift>}{Enter}{/Shift}');
    expect(seen.view.sort.map(({ key }) => key)).toEqual(['name', 'system']);
    await user.keyboard('{Home}{Enter}');
    expect(seen.view.sort).toEqual([{ key: 'name', dir: 'descending' }]);
  });
  it('goes to the search line with / and back with Enter, and says how many were found', async () => {
    const rows = [part(1, { name: 'Kühler' }), part(2, { name: 'Hose' })];
    const { user, grid, where } = show({ rows });
    act(() => grid().focus());
    await user.keyboard('/kuhler{Enter}');
    expect(document.activeElement).toBe(grid());
    expect(where()).toEqual([2, 2]);
    expect(within(grid()).queryByText('Hose')).toBeNull();
    await waitFor(() => expect(screen.getByRole('status').textContent).toContain('1 of 2 parts'));
  });
  it('shows everything again from an empty result', async () => {
    const { user, seen } = show({ view: { search: 'nothing like this' } });
    await user.click(screen.getByRole('button', { name: 'Show all 1,000' }));
    expect(seen.view.search).toBe('');
  });
  it('filters by ticks with counts and takes the filter off as a word', async () => {
    const rows = [part(1, { system: 'Fuel' }), part(2, { system: 'Oil' }), part(3, { system: 'Oil' })];
    const { user, seen, grid } = show({ rows });
    act(() => grid().focus());
    await user.keyboard('{ArrowRight}{Alt>}{ArrowDown}{/Alt}');
    const panel = screen.getByRole('dialog', { name: 'Column System' });
    await user.click(within(panel).getByRole('checkbox', { name: 'Oil 2' }));
    expect(seen.view.filters).toEqual([{ key: 'system', op: 'any-of', value: ['Oil'] }]);
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(document.activeElement).toBe(grid());
    await user.click(screen.getByRole('button', { name: 'Remove filter System: Oil' }));
    expect(seen.view.filters).toEqual([]);
  });
  it('refuses a range that cannot be read and keeps what was typed', async () => {
    const { user, seen } = show();
    await user.click(screen.getByRole('button', { name: 'Price: column menu' }));
    const panel = screen.getByRole('dialog');
    await user.type(within(panel).getByLabelText('From'), 'cheap{Enter}');
    expect(within(panel).getByText(/From “cheap” can’t be read for Price.*Nothing was changed/)).toBeTruthy();
    expect((within(panel).getByLabelText('From') as HTMLInputElement).value).toBe('cheap');
    expect(seen.view.filters).toEqual([]);
  });
  it('folds and unfolds groups by keyboard, with subtotals in their column', async () => {
    const rows = [part(1, { system: 'Fuel' }), part(2, { system: 'Oil' }), part(3, { system: 'Oil' })];
    const { user, grid, active, seen } = show({ rows, view: { group: 'system' } });
    act(() => grid().focus());
    await user.keyboard('{ArrowDown}{ArrowDown}');
    const head = active()?.closest('[role=row]') as HTMLElement;
    expect(head.textContent).toContain('Oil2');
    expect(head.textContent).toContain('20.00');
    await user.keyboard('{ArrowLeft}');
    expect(seen.view.collapsed).toEqual(['Oil']);
    expect(active()?.closest('[role=row]')?.getAttribute('aria-expanded')).toBe('false');
    await user.keyboard('{ArrowRight}');
    expect(seen.view.collapsed).toEqual([]);
  });
});

describe('selecting', () => {
  it('ticks with Space, reaches with Shift, takes all that the filter shows', async () => {
    const { user, grid, seen } = show({
      rows: [0, 1, 2, 3, 4].map((id) => part(id, { system: id < 3 ? 'Oil' : 'Fuel' })),
    });
    act(() => grid().focus());
    await user.keyboard(' {Shift>}{ArrowDown}{ArrowDown}{/Shift}');
    expect([...seen.selection]).toEqual([0, 1, 2]);
    expect(screen.getByRole('button', { name: 'Order 3' })).toBeTruthy();
    await user.keyboard('{Shift>}{ArrowUp}{/Shift}');
    expect([...seen.selection]).toEqual([0, 1]);
    await user.keyboard('{Escape}');
    expect(seen.selection.size).toBe(0);
    await user.keyboard('/fuel{Enter}{Control>}a{/Control}');
    expect([...seen.selection]).toEqual([3, 4]);
  });
  it('selects a range between two ticks with Shift and warns of selected rows out of sight', async () => {
    const { user, seen } = show({ rows: [0, 1, 2, 3].map((id) => part(id)) });
    await user.click(screen.getByRole('checkbox', { name: 'Select Part 0' }));
    await user.keyboard('{Shift>}');
    await user.click(screen.getByRole('checkbox', { name: 'Select Part 2' }));
    await user.keyboard('{/Shift}');
    expect([...seen.selection]).toEqual([0, 1, 2]);
    await user.type(screen.getByRole('searchbox', { name: 'Find in Parts' }), '2');
    expect(screen.getByText(/3 selected/).textContent).toBe('3 selected (2 not shown)');
  });
});

describe('editing', () => {
  const goToPrice = '{ArrowRight}{ArrowRight}{ArrowRight}{ArrowRight}';
  it('starts by typing, stores with Tab and moves on', async () => {
    const commit = vi.fn(() => Promise.resolve());
    const { user, grid, where, rows } = show({ commit });
    act(() => grid().focus());
    await user.keyboard(`${goToPrice}12.50{Tab}`);
    expect(commit).toHaveBeenCalledExactlyOnceWith(rows[0], '12.50');
    expect(document.activeElement).toBe(grid());
    expect(where()).toEqual([2, 7]);
  });
  it('keeps text and focus under an error, and changes nothing', async () => {
    const problem = {
      message: 'Price “12x” is not an amount. Nothing was changed.',
      accepted: 'an amount such as 12.50',
    };
    const commit = vi.fn(() => Promise.reject(problem));
    const { user, grid } = show({ commit });
    act(() => grid().focus());
    await user.keyboard(`${goToPrice}12x{Enter}`);
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Price' });
    expect((await screen.findByRole('alert')).textContent).toContain('Accepted: an amount such as 12.50.');
    expect(field.value).toBe('12x');
    expect(field.getAttribute('aria-invalid')).toBe('true');
    expect(document.activeElement).toBe(field);
    expect(commit).toHaveBeenCalledTimes(1);
  });
  it('gives the cell back with Escape and the typed text back on demand', async () => {
    const commit = vi.fn(() => Promise.resolve());
    const { user, grid } = show({ commit });
    act(() => grid().focus());
    await user.keyboard(`${goToPrice}99{Escape}`);
    expect(screen.queryByRole('textbox', { name: 'Price' })).toBeNull();
    expect(document.activeElement).toBe(grid());
    await user.keyboard('{ArrowDown}{Alt>}{Enter}{/Alt}');
    expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Price' }).value).toBe('99');
    await user.keyboard('{Escape}');
    await user.keyboard('{F2}{Alt>}{ArrowUp}{/Alt}');
    expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Price' }).value).toBe('99');
    expect(commit).not.toHaveBeenCalled();
  });
  it('stores nothing when the text is as it was', async () => {
    const commit = vi.fn(() => Promise.resolve());
    const { user, grid } = show({ commit });
    act(() => grid().focus());
    await user.keyboard(`${goToPrice}{F2}{Enter}`);
    expect(commit).not.toHaveBeenCalled();
    expect(document.activeElement).toBe(grid());
  });
  it('stores when the pointer goes elsewhere', async () => {
    const commit = vi.fn(() => Promise.resolve());
    const { user, grid } = show({ commit });
    act(() => grid().focus());
    await user.keyboard(`${goToPrice}7`);
    await user.click(screen.getByText('After'));
    await waitFor(() => expect(commit).toHaveBeenCalledTimes(1));
  });
  it('opens the row from a cell that is not edited in place', async () => {
    const { user, grid, onOpenRow, rows } = show();
    act(() => grid().focus());
    await user.keyboard('{Enter}');
    expect(onOpenRow).toHaveBeenCalledExactlyOnceWith(rows[0]);
    await user.keyboard(`${goToPrice}{Control>}{Enter}{/Control}`);
    expect(onOpenRow).toHaveBeenCalledTimes(2);
  });
});

/** What a copy at this element puts on the clipboard. */
function copied(element: HTMLElement): string {
  let text = '';
  fireEvent.copy(element, { clipboardData: { setData: (_: string, data: string) => (text = data) } });
  return text;
}

describe('the clipboard', () => {
  it('copies the cell, or the selected rows in shown order', async () => {
    const { user, grid } = show({ rows: [part(1), part(2, { name: 'Hose', due: '2026-03-31' })] });
    act(() => grid().focus());
    expect(copied(grid())).toBe('Part 1');
    await user.keyboard('{Control>}a{/Control}');
    expect(copied(grid())).toBe('Part 1\tOil\tto choose\t1\t10.00\t\nHose\tOil\tto choose\t1\t10.00\t2026-03-31\n');
  });
  it('hands over what is pasted with the cell where it would land', async () => {
    const { user, grid, onPaste } = show({ rows: [part(1), part(2)] });
    act(() => grid().focus());
    await user.keyboard('{ArrowRight}');
    await user.paste('Fuel\tfitted\nOil\t\n');
    expect(onPaste).toHaveBeenCalledTimes(1);
    expect(onPaste.mock.calls[0]?.[0]).toMatchObject({
      cells: [
        ['Fuel', 'fitted'],
        ['Oil', ''],
      ],
      rowId: 1,
      rowIds: [1, 2],
      columnKey: 'system',
      columnKeys: ['system', 'state', 'quantity', 'price', 'due'],
    });
  });
});

describe('columns', () => {
  it('are moved and widened by keyboard', async () => {
    const { user, grid, seen } = show();
    act(() => grid().focus());
    await user.keyboard('{Alt>}{ArrowRight}{/Alt}');
    expect(seen.view.columns.order.slice(0, 2)).toEqual(['system', 'name']);
    await user.keyboard('{Home}{ArrowUp}{Shift>}{ArrowRight}{/Shift}');
    expect(seen.view.columns.width).toEqual({ system: 196 });
  });
  it('are hidden and brought back from the list of columns', async () => {
    const { user, seen } = show();
    await user.click(screen.getByRole('button', { name: 'Columns' }));
    await user.click(screen.getByRole('checkbox', { name: 'Due' }));
    expect(seen.view.columns.hidden).toEqual(['due']);
    expect(screen.queryByRole('columnheader', { name: /Due/ })).toBeNull();
    await user.click(screen.getByRole('checkbox', { name: 'Due' }));
    expect(seen.view.columns.hidden).toEqual([]);
  });
});
