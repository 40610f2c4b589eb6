import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnVectors } from '../../../renderer/parts/sheet/column-vectors.ts';
import { countChoices, groupRows, matchRows, sortRows } from '../../../renderer/parts/sheet/index-rows.ts';
import type { SheetFilter, SheetSort } from '../../../renderer/parts/sheet/sheet-types.ts';
import { manyParts, type PartRow, part, partColumns } from './sample-rows.ts';

// Expected orders and counts below are read off the few rows in each test.

const vectorsOf = (rows: readonly PartRow[]) => columnVectors(rows, partColumns);
const find = (rows: readonly PartRow[], search: string, filters: readonly SheetFilter[] = []) =>
  Array.from(matchRows(vectorsOf(rows), search, filters), (row) => rows[row]?.id);
const order = (rows: readonly PartRow[], ...sort: SheetSort[]) => {
  const vectors = vectorsOf(rows);
  return Array.from(sortRows(vectors, matchRows(vectors, '', []), sort), (row) => rows[row]?.id);
};

describe('finding', () => {
  const rows = [
    part(1, { name: 'Kühlerschlauch', system: 'Cooling' }),
    part(2, { name: 'Hose clamp', system: 'Cooling', state: 1 }),
    part(3, { name: 'HOSE, fuel', system: 'Fuel', priceMinor: 2500, due: '2026-03-31' }),
    part(4, { name: 'Crème filter', system: '', priceMinor: null }),
  ];
  it('finds without accents and case', () => {
    expect(find(rows, 'kuhler')).toEqual([1]);
    expect(find(rows, 'KÜHLER')).toEqual([1]);
    expect(find(rows, 'creme')).toEqual([4]);
  });
  it('wants every word, in whatever column', () => {
    expect(find(rows, 'hose')).toEqual([2, 3]);
    expect(find(rows, 'cooling hose')).toEqual([2]);
    expect(find(rows, 'hose order')).toEqual([2]);
    expect(find(rows, 'hose ignition')).toEqual([]);
  });
  it('does not find a word that only two neighbouring cells together would spell', () => {
    expect(find([part(1, { name: 'ab', system: 'cd' })], 'bc')).toEqual([]);
  });
  it('leaves prices out of the search line', () => expect(find(rows, '25.00')).toEqual([]));
  it('finds everything with nothing but blanks typed', () => expect(find(rows, '  ')).toEqual([1, 2, 3, 4]));
  it('filters by ticked texts, the empty one among them', () => {
    expect(find(rows, '', [{ key: 'system', op: 'any-of', value: ['Fuel'] }])).toEqual([3]);
    expect(find(rows, '', [{ key: 'system', op: 'any-of', value: ['Fuel', ''] }])).toEqual([3, 4]);
  });
  it('filters by range, bounds included, empty cells left out', () => {
    const between = (from: number | null, to: number | null): SheetFilter => ({
      key: 'price',
      op: 'between',
      value: { from, to, fromText: '', toText: '' },
    });
    expect(find(rows, '', [between(1000, 2499)])).toEqual([1, 2]);
    expect(find(rows, '', [between(2500, null)])).toEqual([3]);
    expect(find(rows, '', [between(null, 1000)])).toEqual([1, 2]);
  });
  it('filters dates as text of the calendar', () => {
    const value = { from: '2026-01-01', to: '2026-03-31', fromText: '', toText: '' };
    expect(find(rows, '', [{ key: 'due', op: 'between', value }])).toEqual([3]);
  });
  it('filters by what is missing and by words', () => {
    expect(find(rows, '', [{ key: 'price', op: 'blank', value: true }])).toEqual([4]);
    expect(find(rows, '', [{ key: 'name', op: 'words', value: 'clamp hose' }])).toEqual([2]);
  });
  it('passes over a filter whose column is gone', () => {
    expect(find(rows, '', [{ key: 'gone', op: 'blank', value: true }])).toHaveLength(4);
  });
  it('counts choices over the rows given', () => {
    const vectors = vectorsOf(rows);
    expect(countChoices(vectors, 'system', matchRows(vectors, '', []))).toEqual([
      { text: 'Cooling', count: 2 },
      { text: 'Fuel', count: 1 },
      { text: '', count: 1 },
    ]);
    expect(countChoices(vectors, 'system', matchRows(vectors, 'fuel', []))).toEqual([
      { text: 'Cooling', count: 0 },
      { text: 'Fuel', count: 1 },
    ]);
  });
});

describe('sorting', () => {
  it('puts M8 before M10 and pitch 1.25 before 1.5', () => {
    const rows = ['M10 x 1.5', 'M8 x 1.5', 'M8 x 1.25', 'm9'].map((name, id) => part(id, { name }));
    expect(order(rows, { key: 'name', dir: 'ascending' })).toEqual([2, 1, 3, 0]);
  });
  it('keeps empty cells last in both directions', () => {
    const rows = [null, 300, 100, null, 200].map((priceMinor, id) => part(id, { priceMinor }));
    expect(order(rows, { key: 'price', dir: 'ascending' })).toEqual([2, 4, 1, 0, 3]);
    expect(order(rows, { key: 'price', dir: 'descending' })).toEqual([1, 4, 2, 0, 3]);
  });
  it('sorts states by their course, not by their words', () => {
    const rows = [2, 0, 3, 1].map((state, id) => part(id, { state }));
    expect(order(rows, { key: 'state', dir: 'ascending' })).toEqual([1, 3, 0, 2]);
  });
  it('sorts by a second key within the first, and leaves equal rows as they were', () => {
    const rows = [part(1, { system: 'Oil' }), part(2, { system: 'Fuel', priceMinor: 9 }), part(3, { system: 'Oil' })];
    rows.push(part(4, { system: 'Fuel', priceMinor: 5 }));
    expect(order(rows, { key: 'system', dir: 'ascending' }, { key: 'price', dir: 'ascending' })).toEqual([4, 2, 1, 3]);
    expect(order(rows, { key: 'system', dir: 'descending' })).toEqual([1, 3, 2, 4]);
  });
  it('agrees with a comparing sort on any numbers', () => {
    const numbers = fc.array(fc.option(fc.integer(), { nil: null }), { maxLength: 60 });
    fc.assert(
      fc.property(numbers, fc.boolean(), (prices, down) => {
        const rows = prices.map((priceMinor, id) => part(id, { priceMinor }));
        const expected = rows.toSorted((a, b) => {
          if (a.priceMinor === null || b.priceMinor === null)
            return Number(a.priceMinor === null) - Number(b.priceMinor === null);
          return down ? b.priceMinor - a.priceMinor : a.priceMinor - b.priceMinor;
        });
        expect(order(rows, { key: 'price', dir: down ? 'descending' : 'ascending' })).toEqual(
          expected.map(({ id }) => id),
        );
      }),
    );
  });
});

describe('grouping', () => {
  const rows = [
    part(0, { system: 'Oil' }),
    part(1, { system: '' }),
    part(2, { system: 'Fuel' }),
    part(3, { system: 'Oil' }),
  ];
  const lay = (collapsed: string[] = [], sort: SheetSort[] = []) => {
    const vectors = vectorsOf(rows);
    return groupRows(vectors, sortRows(vectors, matchRows(vectors, '', []), sort), 'system', collapsed, sort);
  };
  it('gives each text a head and keeps rows without one for the end', () => {
    const list = lay();
    expect(list.groups.map(({ text, start, end }) => [text, end - start])).toEqual([
      ['Fuel', 1],
      ['Oil', 2],
      ['', 1],
    ]);
    expect([...list.lines]).toEqual([-1, 2, -2, 0, 3, -3, 1]);
  });
  it('folds a group away but still counts its rows as shown', () => {
    const list = lay(['Oil']);
    expect([...list.lines]).toEqual([-1, 2, -2, -3, 1]);
    expect([...list.rows]).toEqual([2, 0, 3, 1]);
  });
  it('turns the groups round when sorted by their column downwards', () => {
    expect(lay([], [{ key: 'system', dir: 'descending' }]).groups.map(({ text }) => text)).toEqual(['Oil', 'Fuel', '']);
  });
});

describe('after a change of rows', () => {
  it('finds changed, added and moved rows, whatever was folded before', () => {
    const change = fc.record({ at: fc.nat(30), kind: fc.constantFrom('edit', 'insert', 'remove') });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 8 }), (changes) => {
        const before = manyParts(30);
        const warmed = columnVectors(before, partColumns);
        warmed.haystack();
        let rows = before;
        changes.forEach(({ at, kind }, index) => {
          const fresh = part(1000 + index, { name: `Changed ${index}` });
          if (kind === 'edit') rows = rows.with(Math.min(at, rows.length - 1), fresh);
          else if (kind === 'insert') rows = rows.toSpliced(at, 0, fresh);
          else if (rows.length > 1) rows = rows.toSpliced(Math.min(at, rows.length - 1), 1);
        });
        expect(columnVectors(rows, partColumns, warmed).haystack()).toEqual(
          columnVectors(rows, partColumns).haystack(),
        );
      }),
    );
  });
});

describe('100,000 rows', () => {
  const rows = manyParts(100_000);
  it('are sorted by a text column', () => {
    const sorted = sortRows(vectorsOf(rows), matchRows(vectorsOf(rows), '', []), [{ key: 'name', dir: 'ascending' }]);
    expect(sorted.length).toBe(100_000);
  });
  it('are searched and filtered', () => {
    const vectors = vectorsOf(rows);
    const value = { from: 1000, to: 50_000, fromText: '', toText: '' };
    const found = matchRows(vectors, '', [{ key: 'price', op: 'between', value }]);
    expect(found.length).toBeGreaterThan(0);
    expect(found.length).toBeLessThan(100_000);
    expect(matchRows(vectors, 'no such thing anywhere', []).length).toBe(0);
  });
});
