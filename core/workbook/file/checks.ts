import Database from 'better-sqlite3';
import type { Migration } from './migration.ts';

/** Rows per table. Two databases with equal counts have lost nothing to each other as far as counting can tell. */
export type RowCounts = ReadonlyMap<string, number>;

/** An identifier as it may stand in SQL. */
export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** Names of the workbook's own tables, those of the database engine left out. */
export function tableNames(db: Database.Database): string[] {
  return db
    .prepare<[], string>(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type IN ('table', 'virtual') " +
        "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name",
    )
    .pluck()
    .all();
}

/** Rows in each table, counted by going through the table itself. */
export function rowCounts(db: Database.Database): RowCounts {
  return new Map(
    tableNames(db).map((table) => [
      table,
      db
        .prepare<[], number>(`SELECT count(*) FROM ${quoted(table)}`)
        .pluck()
        .get() ?? 0,
    ]),
  );
}

/** Tables whose counts differ, as `parts: 12 instead of 14`. */
export function countDifferences(found: RowCounts, wanted: RowCounts): string[] {
  return [...new Set([...wanted.keys(), ...found.keys()])]
    .filter((table) => found.get(table) !== wanted.get(table))
    .map((table) => `${table}: ${found.get(table) ?? 'no table'} instead of ${wanted.get(table) ?? 'no table'}`);
}

/**
 * What the engine's own check finds wrong, nothing for a healthy file. `quick` leaves out comparing indexes with their
 * tables. A check that can't be finished is a finding too.
 */
export function integrityFindings(db: Database.Database, depth: 'quick' | 'full' = 'full'): string[] {
  try {
    const lines = db.prepare<[], string>(`PRAGMA ${depth === 'quick' ? 'quick_check(20)' : 'integrity_check(20)'}`);
    return lines
      .pluck()
      .all()
      .filter((line) => line !== 'ok');
  } catch (error) {
    if (error instanceof Database.SqliteError && !/BUSY|LOCKED|NOTADB/.test(error.code)) return [error.message];
    throw error;
  }
}

/** The definition of every table, index, trigger and view, by kind and name. */
export function schemaOf(db: Database.Database): ReadonlyMap<string, string> {
  const rows = db
    .prepare<[], { what: string; sql: string | null }>(
      "SELECT type || ' ' || name AS what, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY 1",
    )
    .all();
  return new Map(rows.map(({ what, sql }) => [what, sql ?? '']));
}

const builtSchemas = new WeakMap<readonly Migration[], Map<number, ReadonlyMap<string, string>>>();

/** The schema the first `version` migrations make, built in memory once per process. */
function schemaAt(migrations: readonly Migration[], version: number): ReadonlyMap<string, string> {
  const built = builtSchemas.get(migrations) ?? new Map<number, ReadonlyMap<string, string>>();
  builtSchemas.set(migrations, built);
  const known = built.get(version);
  if (known !== undefined) return known;
  const db = new Database(':memory:');
  try {
    db.pragma('foreign_keys = OFF');
    for (const { sql } of migrations.slice(0, version)) db.exec(sql);
    const schema = schemaOf(db);
    built.set(version, schema);
    return schema;
  } finally {
    db.close();
  }
}

/** Where a file's schema differs from the one its number stands for: `trigger entries_never_change is missing`. */
export function schemaDifferences(db: Database.Database, migrations: readonly Migration[], version: number): string[] {
  const found = schemaOf(db);
  const wanted = schemaAt(migrations, version);
  return [...new Set([...wanted.keys(), ...found.keys()])]
    .filter((what) => found.get(what) !== wanted.get(what))
    .map(
      (what) => `${what} ${!found.has(what) ? 'is missing' : wanted.has(what) ? 'is different' : 'does not belong'}`,
    );
}
