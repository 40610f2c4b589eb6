import { all, type Connection } from './connection.ts';

/** What a vendor has said about an order line, in the order in which it was said. */
export interface LineWord {
  readonly line: number;
  readonly part: number;
  readonly order: number;
  readonly orderedOn: string;
  /** Every promise with the day it was given, the first first; null = "no date". */
  readonly promises: readonly { readonly givenOn: string; readonly promisedOn: string | null }[];
  /** Day of the oldest back-order notice that hasn't been taken back. */
  readonly backOrderedOn: string | null;
}

interface WordRow {
  readonly line: number;
  readonly part: number;
  readonly order_id: number;
  readonly kind: string;
  readonly on_day: string;
  readonly payload: string | null;
}

const wordsSql = (
  where: string,
): string => `SELECT e.line, e.part, e.order_id, e.kind, e.on_day, e.payload FROM entries e
  WHERE e.kind IN ('ordered', 'acknowledged', 'back-ordered', 'promised', 'shipped') AND ${where}
  AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY e.on_day, e.seq`;

function gather(rows: readonly WordRow[]): Map<number, LineWord> {
  const words = new Map<number, LineWord>();
  for (const row of rows) {
    const payload = row.payload === null ? {} : (JSON.parse(row.payload) as { promisedOn?: string | null });
    const before = words.get(row.line);
    const promised = payload.promisedOn === undefined ? [] : [{ givenOn: row.on_day, promisedOn: payload.promisedOn }];
    words.set(row.line, {
      line: row.line,
      part: row.part,
      order: row.order_id,
      orderedOn: row.kind === 'ordered' ? row.on_day : (before?.orderedOn ?? row.on_day),
      promises: [...(before?.promises ?? []), ...promised],
      backOrderedOn: before?.backOrderedOn ?? (row.kind === 'back-ordered' ? row.on_day : null),
    });
  }
  return words;
}

/**
 * The words about every order line of a build up to a day. The plus keeps SQLite off the index by build, which would read
 * every entry of the build: those of the few kinds asked for are found by kind.
 */
export function lineWords(connection: Connection, build: number, asOf = '9999-12-31'): Map<number, LineWord> {
  return gather(
    all<WordRow>(connection, wordsSql('+e.build = ? AND e.on_day <= ? AND e.line IS NOT NULL'), build, asOf),
  );
}

/** The words about the lines of one order up to a day. */
export function orderWords(connection: Connection, order: number, asOf = '9999-12-31'): Map<number, LineWord> {
  return gather(
    all<WordRow>(connection, wordsSql('e.order_id = ? AND e.on_day <= ? AND e.line IS NOT NULL'), order, asOf),
  );
}

/** The words about the order lines of one part line. */
export function partWords(connection: Connection, part: number): Map<number, LineWord> {
  return gather(all<WordRow>(connection, wordsSql('e.part = ? AND e.line IS NOT NULL'), part));
}

/** The latest promise of a line; null when there is none or the latest says "no date". */
export function latestPromise(word: LineWord | undefined): string | null {
  return word?.promises.at(-1)?.promisedOn ?? null;
}
