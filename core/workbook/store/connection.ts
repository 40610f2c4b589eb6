import type { Database, Statement } from 'better-sqlite3';
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3';
import type { Settings } from '../../contract/workbook.ts';
import * as schema from '../schema/index.ts';

export type Drizzle = BetterSQLite3Database<typeof schema>;

/**
 * An open workbook as the queries see it: the raw connection for prepared hot paths, drizzle for the rest. Statements
 * are prepared once per text and kept (building a query at each call costs many times its run).
 */
export interface Connection {
  readonly sqlite: Database;
  readonly db: Drizzle;
  prepare(sql: string): Statement<unknown[], unknown>;
}

export function connect(sqlite: Database): Connection {
  const kept = new Map<string, Statement<unknown[], unknown>>();
  return {
    sqlite,
    db: drizzle(sqlite, { schema }),
    prepare(sql) {
      let statement = kept.get(sql);
      if (statement === undefined) {
        statement = sqlite.prepare<unknown[], unknown>(sql);
        kept.set(sql, statement);
      }
      return statement;
    },
  };
}

/**
 * All rows of a query, typed by the caller who wrote its columns.
 *
 * `+build = ?` in a query of ours: the plus keeps SQLite off the index by build. Nearly all of a workbook may be one
 * build, so that index would read everything, where the index by kind or subject reads the few rows asked for.
 */
export const all = <Row>(connection: Connection, sql: string, ...values: unknown[]): Row[] =>
  connection.prepare(sql).all(...values) as Row[];

/** First row of a query or undefined. */
export const first = <Row>(connection: Connection, sql: string, ...values: unknown[]): Row | undefined =>
  connection.prepare(sql).get(...values) as Row | undefined;

export const defaultSettings: Settings = {
  currency: 'USD',
  dateForm: 'd Mon yyyy',
  units: 'metric',
  weekStart: 'monday',
  taxRate: '0',
  taxBase: 'goods',
  taxIncluded: false,
  author: '',
  weekWindows: [
    { weekday: 2, from: '18:30', to: '21:00' },
    { weekday: 4, from: '18:30', to: '21:00' },
    { weekday: 6, from: '09:00', to: '15:00' },
  ],
};

/** The workbook's settings; what was never set has its default. */
export function readSettings(connection: Connection): Settings {
  const row = first<{ value: string }>(connection, "SELECT value FROM about WHERE key = 'settings'");
  return { ...defaultSettings, ...(row === undefined ? {} : (JSON.parse(row.value) as Partial<Settings>)) };
}

export function writeSettings(connection: Connection, settings: Settings): void {
  connection
    .prepare(
      "INSERT INTO about (key, value) VALUES ('settings', ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
    )
    .run(JSON.stringify(settings));
}
