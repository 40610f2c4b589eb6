import { expect, test, vi } from 'vitest';
import { mergeRows } from '../../renderer/screens/parts/rows/merge-rows.ts';
import { firstPage, type PartsSource, partRowsStore } from '../../renderer/screens/parts/rows/part-rows.ts';
import { partRow } from './parts-sample.ts';

const columns = Object.keys(partRow({ id: 1 }));
const asArrays = (rows: readonly ReturnType<typeof partRow>[]) =>
  rows.map((row) => columns.map((column) => row[column as keyof typeof row]));

/** A list of so many lines, served page by page. */
function served(count: number) {
  const lines = Array.from({ length: count }, (_, at) => partRow({ id: at + 1, description: `Part ${at + 1}` }));
  const source = {
    rows: vi.fn<PartsSource['rows']>(async ({ from, count: most }) => ({
      total: lines.length,
      lastAct: 7,
      columns,
      rows: asArrays(lines.slice(from, from + most)),
    })),
    byIds: vi.fn<PartsSource['byIds']>(async ({ ids }) => lines.filter(({ id }) => ids.includes(id))),
  };
  return { lines, source };
}

const complete = (store: ReturnType<typeof partRowsStore>) =>
  vi.waitFor(() => expect(store.loaded().complete).toBe(true));

test('the first page is shown before the rest is asked for', async () => {
  const { source } = served(450);
  const seen: number[] = [];
  const store = partRowsStore(source, { build: 1 });
  store.subscribe(() => seen.push(store.loaded().rows.length));
  await complete(store);
  expect(seen).toEqual([firstPage, 450]);
  expect(store.loaded().rows[449]).toMatchObject({ id: 450, description: 'Part 450' });
});

test('an act in another window reads only its lines again; one that is gone leaves', async () => {
  const { source } = served(3);
  const store = partRowsStore(source, { build: 1 });
  await complete(store);
  source.byIds.mockResolvedValueOnce([
    partRow({ id: 1, dropped: true }),
    partRow({ id: 2, description: 'Renamed' }),
    partRow({ id: 9, description: 'New' }),
  ]);
  store.hear({ act: 8, label: '', parts: [1, 2, 9] });
  await vi.waitFor(() => expect(store.loaded().rows.map(({ id }) => id)).toEqual([2, 3, 9]));
  expect(store.loaded().rows[0]?.description).toBe('Renamed');
  expect(source.rows).toHaveBeenCalledTimes(1);
});

test('the message of an act whose lines were read already is passed over', async () => {
  const { source } = served(3);
  const store = partRowsStore(source, { build: 1 });
  await complete(store);
  await store.refresh([2], 8);
  store.hear({ act: 8, label: '', parts: [2] });
  expect(source.byIds).toHaveBeenCalledTimes(1);
});

test('a list that changed between two pages is read from the start', async () => {
  const { source, lines } = served(450);
  const page = source.rows.getMockImplementation() as PartsSource['rows'];
  let asked = 0;
  source.rows.mockImplementation(async (input) => {
    asked += 1;
    const answer = await page(input);
    if (asked === 1) lines.shift();
    return asked === 1 ? answer : { ...answer, lastAct: 8 };
  });
  const store = partRowsStore(source, { build: 1 });
  await complete(store);
  expect(store.loaded().rows).toHaveLength(449);
  expect(store.loaded().rows.some(({ id }) => id === 201)).toBe(true);
});

test('when the workbook does not answer, the lines that are here stay', async () => {
  const { source } = served(3);
  const store = partRowsStore(source, { build: 1 });
  await complete(store);
  source.byIds.mockRejectedValueOnce(new TypeError('offline'));
  await store.refresh([1]);
  expect(store.loaded().error).toBeInstanceOf(TypeError);
  expect(store.loaded().rows).toHaveLength(3);
});

test('a new line stands at the end of its system and phase', () => {
  const rows = [
    partRow({ id: 1, system: 1, phase: 1 }),
    partRow({ id: 2, system: 1, phase: 2 }),
    partRow({ id: 3, system: 2 }),
  ];
  const made = partRow({ id: 4, system: 1, phase: 1 });
  expect(mergeRows(rows, [4], [made]).map(({ id }) => id)).toEqual([1, 4, 2, 3]);
  expect(mergeRows([], [4], [made]).map(({ id }) => id)).toEqual([4]);
});
