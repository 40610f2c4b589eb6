import { describe, expect, it } from 'vitest';
import { moveActive } from '../../../renderer/parts/sheet/move-active.ts';
import { readBounds } from '../../../renderer/parts/sheet/range-bounds.ts';
import { idsBetween, toggleRows } from '../../../renderer/parts/sheet/select-rows.ts';
import type { SheetColumn } from '../../../renderer/parts/sheet/sheet-types.ts';
import {
  describeFilter,
  hideColumn,
  moveColumn,
  plainView,
  resizeColumn,
  setFilter,
  shownColumns,
  turnSort,
} from '../../../renderer/parts/sheet/sheet-view.ts';
import { type PartRow, part, partColumns } from './sample-rows.ts';

const keys = (view = plainView) => shownColumns(view, partColumns).map(({ key }) => key);
const column = (key: string) => partColumns.find((each) => each.key === key) as SheetColumn<PartRow>;

describe('arranging columns', () => {
  it('moves past the visible neighbour, over hidden ones', () => {
    const hidden = hideColumn(plainView, partColumns, 'system', true);
    expect(keys(moveColumn(hidden, partColumns, 'state', -1)).slice(0, 2)).toEqual(['state', 'name']);
  });
  it('stays at the edges', () => expect(moveColumn(plainView, partColumns, 'name', -1)).toBe(plainView));
  it('brings a hidden column back to its place', () => {
    const hidden = hideColumn(plainView, partColumns, 'system', true);
    expect(keys(hidden)).not.toContain('system');
    expect(keys(hideColumn(hidden, partColumns, 'system', false))).toEqual(keys());
  });
  it('never hides the last column', () => {
    const one = partColumns.slice(1).reduce((view, { key }) => hideColumn(view, partColumns, key, true), plainView);
    expect(keys(hideColumn(one, partColumns, 'name', true))).toEqual(['name']);
  });
  it('shows columns that a stored view does not know, after those it does', () => {
    const stored = { ...plainView, columns: { ...plainView.columns, order: ['due', 'gone', 'name'] } };
    expect(keys(stored)).toEqual(['due', 'name', 'system', 'state', 'quantity', 'price']);
  });
  it('keeps widths within what can be read and grasped', () => {
    expect(resizeColumn(plainView, 'name', 3).columns.width['name']).toBe(48);
    expect(resizeColumn(plainView, 'name', 99_999).columns.width['name']).toBe(960);
  });
});

describe('sorting by turns', () => {
  it('goes up, down and off', () => {
    const up = turnSort(plainView, 'name', false);
    const down = turnSort(up, 'name', false);
    expect([up.sort, down.sort, turnSort(down, 'name', false).sort]).toEqual([
      [{ key: 'name', dir: 'ascending' }],
      [{ key: 'name', dir: 'descending' }],
      [],
    ]);
  });
  it('adds a weaker key, and replaces all without adding', () => {
    const two = turnSort(turnSort(plainView, 'system', false), 'price', true);
    expect(two.sort.map(({ key }) => key)).toEqual(['system', 'price']);
    expect(turnSort(two, 'system', true).sort[0]).toEqual({ key: 'system', dir: 'descending' });
    expect(turnSort(two, 'due', false).sort).toEqual([{ key: 'due', dir: 'ascending' }]);
  });
});

describe('filters', () => {
  it('keeps one filter a column', () => {
    const once = setFilter(plainView, 'name', { key: 'name', op: 'words', value: 'a' });
    const twice = setFilter(once, 'name', { key: 'name', op: 'words', value: 'b' });
    expect(twice.filters).toEqual([{ key: 'name', op: 'words', value: 'b' }]);
    expect(setFilter(twice, 'name', null).filters).toEqual([]);
  });
  it('says in words what it does', () => {
    expect(describeFilter({ key: 'x', op: 'any-of', value: ['Fuel', ''] })).toBe('Fuel, none');
    expect(describeFilter({ key: 'x', op: 'any-of', value: ['a', 'b', 'c', 'd'] })).toBe('a, b and 2 more');
    const value = { from: 1, to: null, fromText: '0.01', toText: '' };
    expect(describeFilter({ key: 'x', op: 'between', value })).toBe('from 0.01');
  });
});

describe('range bounds', () => {
  const read = (key: string, from: string, to: string) => readBounds(column(key), from, to);
  it('reads amounts in minor units and quantities in thousandths, point or comma', () => {
    expect(read('price', '12.5', '')).toMatchObject({ bounds: { from: 1250, to: null } });
    expect(read('price', '', '1 234,56')).toMatchObject({ bounds: { from: null, to: 123_456 } });
    expect(read('quantity', '0.5', '8')).toMatchObject({ bounds: { from: 500, to: 8000 } });
  });
  it('takes both empty as no filter', () => expect(read('price', ' ', '')).toEqual({ bounds: null }));
  it.each([
    ['price', 'x', '', 'from'],
    ['price', '', '1.234', 'to'],
    ['due', '2026-02-30', '', 'from'],
    ['due', '', '31.3.2026', 'to'],
    ['price', '5', '4', 'to'],
  ])('refuses %s from “%s” to “%s” and names the side', (key, from, to, field) => {
    const outcome = read(key, from, to);
    expect(outcome).toMatchObject({ field });
    expect(outcome).toHaveProperty('message', expect.stringContaining('Nothing was changed.'));
  });
});

// The keys and where they lead: WAI-ARIA Authoring Practices, data grid pattern, keyboard interaction.
describe('moving by keys', () => {
  const extent = { lines: 100, columns: 6, page: 20 };
  it.each([
    ['ArrowDown', false, 5, 2, 6, 2],
    ['ArrowUp', false, 5, 2, 4, 2],
    ['ArrowLeft', false, 5, 0, 5, 0],
    ['ArrowRight', false, 5, 5, 5, 5],
    ['Home', false, 5, 3, 5, 0],
    ['End', false, 5, 3, 5, 5],
    ['Home', true, 5, 3, 0, 0],
    ['End', true, 5, 3, 99, 5],
    ['PageDown', false, 5, 3, 25, 3],
    ['PageDown', false, 95, 3, 99, 3],
    ['PageUp', false, 5, 3, 0, 3],
    ['ArrowUp', false, 0, 3, -1, 3],
    ['ArrowUp', false, -1, 3, -1, 3],
    ['ArrowDown', true, 5, 3, 99, 3],
  ])('%s (far: %s) from %i,%i leads to %i,%i', (key, far, line, column, toLine, toColumn) => {
    expect(moveActive({ line, column }, key, far, extent)).toEqual({ line: toLine, column: toColumn });
  });
  it('knows no other keys', () => expect(moveActive({ line: 0, column: 0 }, 'Tab', false, extent)).toBeNull());
  it('stays on the heads when there are no lines', () => {
    expect(moveActive({ line: -1, column: 0 }, 'End', true, { ...extent, lines: 0 })).toEqual({ line: -1, column: 5 });
  });
});

describe('selecting', () => {
  const rows = [0, 1, 2, 3].map((id) => part(id));
  it('passes over group heads, either way round', () => {
    const lines = Int32Array.from([-1, 2, 0, -2, 1, 3]);
    expect(idsBetween(lines, rows, ({ id }) => id, 4, 1)).toEqual([2, 0, 1]);
  });
  it('takes all in, and all out when all were in', () => {
    const all = toggleRows(new Set([1]), [1, 2]);
    expect([...all]).toEqual([1, 2]);
    expect([...toggleRows(all, [1, 2])]).toEqual([]);
  });
});
