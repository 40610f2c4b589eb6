import type { Database } from 'better-sqlite3';
import { quoted } from './checks.ts';

/** Rows of one table that could not be carried over. */
interface LostRows {
  readonly table: string;
  /** The ids that failed, as far as they are known; the first 1000. */
  readonly ids: readonly number[];
  readonly count: number;
  readonly reason: string;
}

export interface SalvagedTable {
  readonly table: string;
  readonly rowsSaved: number;
  readonly lost: readonly LostRows[];
}

const IDS_LISTED = 1000;
/** Ids between the last row readable from the front and from the back are tried one by one, up to this many. */
const PROBES_MAX = 200_000;

type Row = Record<string, unknown> & { readonly [ROWID]: bigint };
const ROWID = 'salvage rowid';

const columnsOf = (db: Database, table: string): string[] =>
  db.prepare<[string], string>('SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0').pluck().all(table);

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Hands over rows in the order asked until one can't be read; returns why it stopped, if it did. */
function readUntilBroken(db: Database, query: string, take: (row: Row) => boolean): string | undefined {
  try {
    for (const row of db.prepare<[], Row>(query).safeIntegers().iterate()) if (!take(row)) return undefined;
    return undefined;
  } catch (error) {
    return messageOf(error);
  }
}

const hasRowid = (db: Database, table: string): boolean =>
  db
    .prepare<[string], number>("SELECT wr FROM pragma_table_list WHERE schema = 'main' AND name = ?")
    .pluck()
    .get(table) === 0;

/** A table without row ids can only be read from the front. */
function copyWithoutRowid(
  damaged: Database,
  fresh: Database,
  table: string,
  columns: readonly string[],
): SalvagedTable {
  const names = columns.map(quoted).join(', ');
  const insert = fresh.prepare(`INSERT INTO ${quoted(table)} (${names}) VALUES (?${', ?'.repeat(columns.length - 1)})`);
  let rowsSaved = 0;
  const reason = readUntilBroken(damaged, `SELECT ${names} FROM ${quoted(table)}`, (row) => {
    insert.run(...columns.map((column) => row[column]));
    rowsSaved += 1;
    return true;
  });
  return { table, rowsSaved, lost: reason === undefined ? [] : [{ table, ids: [], count: 0, reason }] };
}

/**
 * Carries over what can be read of one table: from the front until it breaks, from the back until it breaks, and what
 * lies between id by id.
 */
export function salvageTable(damaged: Database, fresh: Database, table: string): SalvagedTable {
  const known = new Set(columnsOf(damaged, table));
  const columns = columnsOf(fresh, table).filter((column) => known.has(column));
  if (columns.length === 0) {
    return {
      table,
      rowsSaved: 0,
      lost: [{ table, ids: [], count: 0, reason: 'the table is missing or has no readable columns' }],
    };
  }
  const names = columns.map(quoted).join(', ');
  if (!hasRowid(fresh, table)) return copyWithoutRowid(damaged, fresh, table, columns);
  const insert = fresh.prepare(
    `INSERT INTO ${quoted(table)} (rowid, ${names}) VALUES (?${', ?'.repeat(columns.length)})`,
  );
  const select = `SELECT rowid AS ${quoted(ROWID)}, ${names} FROM ${quoted(table)} NOT INDEXED`;
  const failed = new Map<string, { ids: number[]; count: number }>();
  const lose = (reason: string, id: bigint): void => {
    const entry = failed.get(reason) ?? { ids: [], count: 0 };
    failed.set(reason, entry);
    entry.count += 1;
    if (entry.ids.length < IDS_LISTED) entry.ids.push(Number(id));
  };
  const seen = new Set<bigint>();
  let rowsSaved = 0;
  const take = (row: Row): boolean => {
    if (seen.has(row[ROWID])) return false;
    seen.add(row[ROWID]);
    try {
      insert.run(row[ROWID], ...columns.map((column) => row[column]));
      rowsSaved += 1;
    } catch (error) {
      lose(messageOf(error), row[ROWID]);
    }
    return true;
  };
  let front = 0n;
  let back = 0n;
  const broken = readUntilBroken(damaged, `${select} ORDER BY rowid`, (row) => {
    front = row[ROWID];
    return take(row);
  });
  if (broken !== undefined) {
    readUntilBroken(damaged, `${select} ORDER BY rowid DESC`, (row) => {
      if (!take(row)) return false;
      back = row[ROWID];
      return true;
    });
    probeBetween(damaged, select, { front, back: back === 0n ? lastId(damaged, table) : back }, take, lose);
    if (failed.size === 0) failed.set(broken, { ids: [], count: 0 });
  }
  return { table, rowsSaved, lost: [...failed].map(([reason, { ids, count }]) => ({ table, ids, count, reason })) };
}

/** The highest id the table ever gave out, where the workbook still knows it. */
function lastId(db: Database, table: string): bigint {
  try {
    const query = db.prepare<[string], bigint>('SELECT seq FROM sqlite_sequence WHERE name = ?').pluck().safeIntegers();
    return (query.get(table) ?? 0n) + 1n;
  } catch {
    return 0n;
  }
}

function probeBetween(
  db: Database,
  select: string,
  gap: { readonly front: bigint; readonly back: bigint },
  take: (row: Row) => boolean,
  lose: (reason: string, id: bigint) => void,
): void {
  const one = db.prepare<[bigint], Row>(`${select} WHERE rowid = ?`).safeIntegers();
  for (let id = gap.front + 1n; id < gap.back && id - gap.front <= PROBES_MAX; id += 1n) {
    try {
      const row = one.get(id);
      if (row !== undefined) take(row);
    } catch (error) {
      lose(messageOf(error), id);
    }
  }
}
