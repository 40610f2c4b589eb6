import { type Connection, first } from './connection.ts';

/** At most so many answers are kept for one workbook; the one asked for longest ago goes first. */
const mostKept = 24;

interface Kept {
  act: number;
  readonly answers: Map<string, unknown>;
}

const keptOf = new WeakMap<Connection, Kept>();

/** Number of the latest act: whatever is read from records and entries stays the same until there is a next one. */
export const lastAct = (connection: Connection): number =>
  first<{ id: number | null }>(connection, 'SELECT max(id) AS id FROM acts')?.id ?? 0;

/**
 * What `compute` reads from the workbook, kept until the next act: several screens ask for the same figures, and each
 * asks again after every change notice. Everything that `compute` depends on besides records and entries (build, day,
 * settings) belongs into `key`. Inside an act nothing is kept, for there the workbook is between two acts.
 * The answer is shared: callers leave it as it is.
 */
export function remembered<T>(connection: Connection, key: string, compute: () => T): T {
  if (connection.sqlite.inTransaction) return compute();
  const act = lastAct(connection);
  let kept = keptOf.get(connection);
  if (kept === undefined || kept.act !== act) {
    kept = { act, answers: new Map() };
    keptOf.set(connection, kept);
  }
  const { answers } = kept;
  const answer = answers.has(key) ? (answers.get(key) as T) : compute();
  answers.delete(key);
  answers.set(key, answer);
  if (answers.size > mostKept) answers.delete(answers.keys().next().value as string);
  return answer;
}
