import { foldText, naturalKey } from './fold-text.ts';
import type { Comparable, SheetColumn } from './sheet-types.ts';

/** Sort places of one column: equal values share a place, empty ones have -1. */
interface ColumnRanks {
  readonly places: Int32Array;
  readonly distinct: number;
}

/** Distinct shown texts of one column, in sort order; `codes` points from the row into `texts`, -1 where empty. */
interface ColumnTexts {
  readonly codes: Int32Array;
  readonly texts: readonly string[];
}

/** The columns of a sheet as arrays, each made when first asked for and kept as long as rows and columns stay. */
export interface ColumnVectors<Row> {
  readonly rows: readonly Row[];
  readonly column: (key: string) => SheetColumn<Row> | undefined;
  readonly ranks: (key: string) => ColumnRanks;
  readonly texts: (key: string) => ColumnTexts;
  /** Folded text of the searched columns, a line a row. */
  readonly haystack: () => readonly string[];
  /** Folds up to `count` more rows ahead of the first search; false when nothing is left to do. */
  readonly warm: (count: number) => boolean;
}

export function isSearched<Row>(column: SheetColumn<Row>): boolean {
  return column.searched ?? (column.kind === 'text' || column.kind === 'state' || column.kind === 'choice');
}

/**
 * Prepares the vectors. `previous` lends its folded text for rows at the head and tail that are the same objects, so an
 * edit, an insertion or a deletion in 100,000 rows folds only what is new.
 */
export function columnVectors<Row>(
  rows: readonly Row[],
  columns: readonly SheetColumn<Row>[],
  previous?: FoldedRows<Row>,
): ColumnVectors<Row> & FoldedRows<Row> {
  const byKey = new Map(columns.map((column) => [column.key, column]));
  const searched = columns.filter(isSearched);
  const ranks = new Map<string, ColumnRanks>();
  const texts = new Map<string, ColumnTexts>();
  const folded = previous && previous.columns === columns ? lend(previous, rows) : ([] as (string | undefined)[]);
  let warmed = 0;

  const known = (key: string): SheetColumn<Row> => {
    const column = byKey.get(key);
    if (column === undefined) throw new Error(`The sheet has no column “${key}”.`);
    return column;
  };
  const foldTo = (end: number) => {
    for (; warmed < end; warmed += 1) {
      if (folded[warmed] !== undefined) continue;
      const row = rows[warmed] as Row;
      let line = '';
      for (const column of searched) line += `${column.text(row)}\n`;
      folded[warmed] = foldText(line);
    }
  };
  return {
    rows,
    columns,
    folded,
    column: (key) => byKey.get(key),
    ranks: (key) => cached(ranks, key, () => rankColumn(rows, known(key))),
    texts: (key) => cached(texts, key, () => codeTexts(rows, known(key))),
    haystack: () => {
      foldTo(rows.length);
      return folded as readonly string[];
    },
    warm: (count) => {
      foldTo(Math.min(rows.length, warmed + count));
      return warmed < rows.length;
    },
  };
}

/** What one set of vectors can lend to the next. */
export interface FoldedRows<Row> {
  readonly rows: readonly Row[];
  readonly columns: readonly SheetColumn<Row>[];
  readonly folded: readonly (string | undefined)[];
}

function cached<Value>(store: Map<string, Value>, key: string, make: () => Value): Value {
  const had = store.get(key);
  if (had !== undefined) return had;
  const made = make();
  store.set(key, made);
  return made;
}

function lend<Row>(previous: FoldedRows<Row>, rows: readonly Row[]): (string | undefined)[] {
  const folded = new Array<string | undefined>(rows.length);
  const shorter = Math.min(rows.length, previous.rows.length);
  let head = 0;
  while (head < shorter && rows[head] === previous.rows[head]) {
    folded[head] = previous.folded[head];
    head += 1;
  }
  const shift = previous.rows.length - rows.length;
  for (let at = rows.length - 1; at >= head && at + shift >= 0; at -= 1) {
    if (rows[at] === previous.rows[at + shift]) folded[at] = previous.folded[at + shift];
    else if (shift !== 0) break; // with equal lengths single changed rows don't end the match
  }
  return folded;
}

function isEmpty(value: Comparable): value is null | undefined | '' {
  return value === null || value === undefined || value === '' || Number.isNaN(value);
}

function rankColumn<Row>(rows: readonly Row[], column: SheetColumn<Row>): ColumnRanks {
  const values = new Array<Comparable>(rows.length);
  let numeric = true;
  for (let at = 0; at < rows.length; at += 1) {
    const value = column.value(rows[at] as Row);
    values[at] = value;
    if (typeof value === 'string' && value !== '') numeric = false;
  }
  return numeric ? rankNumbers(values) : rankTexts(values, column.kind === 'date' ? (text) => text : naturalKey);
}

function rankNumbers(values: readonly Comparable[]): ColumnRanks {
  const sorted = new Float64Array(values.length);
  let filled = 0;
  for (const value of values) if (!isEmpty(value)) sorted[filled++] = Number(value);
  const distinct = sorted.subarray(0, filled).sort();
  const placeOf = new Map<number, number>();
  for (const value of distinct) if (!placeOf.has(value)) placeOf.set(value, placeOf.size);
  const places = new Int32Array(values.length);
  for (let at = 0; at < values.length; at += 1) {
    const value = values[at];
    places[at] = isEmpty(value) ? -1 : (placeOf.get(Number(value)) ?? -1);
  }
  return { places, distinct: placeOf.size };
}

function rankTexts(values: readonly Comparable[], keyOf: (text: string) => string): ColumnRanks {
  const { codes, distinct } = code(values.map((value) => (isEmpty(value) ? '' : String(value))));
  const keys = distinct.map(keyOf);
  const order = orderByKey(keys, distinct);
  const placeOf = new Int32Array(distinct.length);
  let place = -1;
  let last: string | undefined;
  for (const code of order) {
    if (keys[code] !== last) place += 1;
    last = keys[code];
    placeOf[code] = place;
  }
  const places = new Int32Array(values.length);
  for (let at = 0; at < places.length; at += 1) {
    const code = codes[at] as number;
    places[at] = code === -1 ? -1 : (placeOf[code] as number);
  }
  return { places, distinct: place + 1 };
}

function codeTexts<Row>(rows: readonly Row[], column: SheetColumn<Row>): ColumnTexts {
  const { codes, distinct } = code(rows.map(column.text));
  // In the order of the column's values, not of its words: states follow their course, months the year.
  const firstValue = new Array<Comparable>(distinct.length);
  const seen = new Uint8Array(distinct.length);
  for (let at = 0; at < codes.length; at += 1) {
    const code = codes[at] as number;
    if (code === -1 || seen[code] === 1) continue;
    seen[code] = 1;
    firstValue[code] = column.value(rows[at] as Row);
  }
  const numeric = firstValue.every((value) => typeof value !== 'string');
  const keys = distinct.map(naturalKey);
  const order = numeric
    ? Array.from(distinct.keys()).sort((a, b) => Number(firstValue[a]) - Number(firstValue[b]) || (a < b ? -1 : 1))
    : orderByKey(keys, distinct);
  const placeOf = new Int32Array(distinct.length);
  order.forEach((code, place) => {
    placeOf[code] = place;
  });
  for (let at = 0; at < codes.length; at += 1) if (codes[at] !== -1) codes[at] = placeOf[codes[at] as number] as number;
  return { codes, texts: order.map((code) => distinct[code] as string) };
}

/** Numbers for distinct texts in order of appearance; -1 for the empty text. */
function code(texts: readonly string[]): { codes: Int32Array; distinct: string[] } {
  const codes = new Int32Array(texts.length);
  const codeOf = new Map<string, number>([['', -1]]);
  const distinct: string[] = [];
  for (let at = 0; at < texts.length; at += 1) {
    const text = texts[at] as string;
    let found = codeOf.get(text);
    if (found === undefined) {
      found = distinct.length;
      codeOf.set(text, found);
      distinct.push(text);
    }
    codes[at] = found;
  }
  return { codes, distinct };
}

/** Codes in the order of their keys; texts that fold alike follow each other in plain order, so the result is stable. */
function orderByKey(keys: readonly string[], texts: readonly string[]): number[] {
  return Array.from(keys.keys()).sort((a, b) => {
    const first = keys[a] as string;
    const second = keys[b] as string;
    if (first < second) return -1;
    if (first > second) return 1;
    return (texts[a] as string) < (texts[b] as string) ? -1 : 1;
  });
}
