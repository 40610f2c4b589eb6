import type { ColumnVectors } from './column-vectors.ts';
import { foldText, searchWords } from './fold-text.ts';
import type { SheetFilter, SheetSort } from './sheet-types.ts';

/** A group's head: its text ('' for rows without one) and its rows as a stretch of `DisplayList.rows`. */
export interface GroupHead {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly collapsed: boolean;
}

/** What is shown, top to bottom. */
export interface DisplayList {
  /** Row numbers, or -(group number + 1) for a group's head; rows of folded groups are left out. */
  readonly lines: Int32Array;
  readonly groups: readonly GroupHead[];
  /** Every row that passed the filters, in shown order, folded groups included. */
  readonly rows: Int32Array;
}

type Test = (row: number) => boolean;

/** The numbers of the rows that hold every word of the search line and pass every filter, in their own order. */
export function matchRows<Row>(
  vectors: ColumnVectors<Row>,
  search: string,
  filters: readonly SheetFilter[],
): Int32Array {
  const count = vectors.rows.length;
  const tests = filters.flatMap((filter) => (vectors.column(filter.key) ? [filterTest(vectors, filter)] : []));
  const words = searchWords(search);
  const lines = words.length === 0 ? [] : vectors.haystack();
  const matched = new Int32Array(count);
  let found = 0;
  next: for (let row = 0; row < count; row += 1) {
    for (const test of tests) if (!test(row)) continue next;
    for (const word of words) if (!(lines[row] as string).includes(word)) continue next;
    matched[found++] = row;
  }
  return matched.subarray(0, found);
}

function filterTest<Row>(vectors: ColumnVectors<Row>, filter: SheetFilter): Test {
  if (filter.op === 'any-of') {
    const { codes, texts } = vectors.texts(filter.key);
    const wanted = new Set(filter.value);
    const passes = Uint8Array.from(texts, (text) => (wanted.has(text) ? 1 : 0));
    const passesEmpty = wanted.has('');
    return (row) => {
      const code = codes[row] as number;
      return code === -1 ? passesEmpty : passes[code] === 1;
    };
  }
  const column = vectors.column(filter.key);
  if (column === undefined) return () => true;
  const { rows } = vectors;
  if (filter.op === 'blank') return (row) => (column.text(rows[row] as Row) === '') === filter.value;
  if (filter.op === 'words') {
    const words = searchWords(filter.value);
    const { codes, texts } = vectors.texts(filter.key);
    const passes = Uint8Array.from(texts, (text) => {
      const folded = foldText(text);
      return words.every((word) => folded.includes(word)) ? 1 : 0;
    });
    return (row) => {
      const code = codes[row] as number;
      return code === -1 ? words.length === 0 : passes[code] === 1;
    };
  }
  const { from, to } = filter.value;
  return (row) => {
    const value = column.value(rows[row] as Row);
    if (value === null || value === undefined || value === '') return false;
    return (from === null || value >= from) && (to === null || value <= to);
  };
}

/** The rows in the order of the sort keys, first key strongest; equal rows keep their order, empty cells come last. */
export function sortRows<Row>(
  vectors: ColumnVectors<Row>,
  matched: Int32Array,
  sort: readonly SheetSort[],
): Int32Array {
  let order = matched;
  for (const { key, dir } of sort.toReversed()) {
    if (vectors.column(key) === undefined) continue;
    const { places, distinct } = vectors.ranks(key);
    order = bucketSort(order, distinct + 1, (row) => {
      const place = places[row] as number;
      if (place === -1) return distinct;
      return dir === 'ascending' ? place : distinct - 1 - place;
    }).order;
  }
  return order;
}

/** Counting sort: one pass to count, one to lay out. Stable, and linear where comparing would not be. */
function bucketSort(rows: Int32Array, buckets: number, bucketOf: (row: number) => number) {
  const starts = new Int32Array(buckets + 1);
  for (const row of rows) {
    const bucket = bucketOf(row) + 1;
    starts[bucket] = (starts[bucket] as number) + 1;
  }
  for (let bucket = 1; bucket <= buckets; bucket += 1) {
    starts[bucket] = (starts[bucket] as number) + (starts[bucket - 1] as number);
  }
  const places = starts.slice();
  const order = new Int32Array(rows.length);
  for (const row of rows) {
    const bucket = bucketOf(row);
    const place = places[bucket] as number;
    places[bucket] = place + 1;
    order[place] = row;
  }
  return { order, starts };
}

/**
 * Lays out the lines: group heads in the order of the column's values, each with its rows unless folded away. If the
 * first sort key is the grouping column and descending, so are the groups. Rows without a text make the last group.
 */
export function groupRows<Row>(
  vectors: ColumnVectors<Row>,
  sorted: Int32Array,
  group: string | null,
  collapsed: readonly string[],
  sort: readonly SheetSort[] = [],
): DisplayList {
  if (group === null || vectors.column(group) === undefined) return { lines: sorted, groups: [], rows: sorted };
  const { codes, texts } = vectors.texts(group);
  const descending = sort[0]?.key === group && sort[0].dir === 'descending';
  const { order, starts } = bucketSort(sorted, texts.length + 1, (row) => {
    const code = codes[row] as number;
    if (code === -1) return texts.length;
    return descending ? texts.length - 1 - code : code;
  });
  const folded = new Set(collapsed);
  const groups: GroupHead[] = [];
  const lines = new Int32Array(order.length + texts.length + 1);
  let length = 0;
  for (let bucket = 0; bucket <= texts.length; bucket += 1) {
    const start = starts[bucket] as number;
    const end = starts[bucket + 1] as number;
    if (start === end) continue;
    const code = descending && bucket < texts.length ? texts.length - 1 - bucket : bucket;
    const text = texts[code] ?? '';
    const isFolded = folded.has(text);
    groups.push({ text, start, end, collapsed: isFolded });
    lines[length++] = -groups.length;
    if (isFolded) continue;
    lines.set(order.subarray(start, end), length);
    length += end - start;
  }
  return { lines: lines.subarray(0, length), groups, rows: order };
}

/** Distinct texts of a column with the number of given rows that show each, in sort order; '' stands for empty. */
export function countChoices<Row>(
  vectors: ColumnVectors<Row>,
  key: string,
  rows: Int32Array,
): { text: string; count: number }[] {
  const { codes, texts } = vectors.texts(key);
  const counts = new Int32Array(texts.length + 1);
  for (const row of rows) {
    const code = codes[row] as number;
    const at = code === -1 ? texts.length : code;
    counts[at] = (counts[at] as number) + 1;
  }
  const choices = texts.map((text, code) => ({ text, count: counts[code] as number }));
  const empty = counts[texts.length] as number;
  return empty > 0 ? [...choices, { text: '', count: empty }] : choices;
}
