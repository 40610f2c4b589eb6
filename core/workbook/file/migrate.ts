import { basename, dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { migrations as ownMigrations } from '../../../migrations/index.ts';
import { Refusal } from '../../refusal.ts';
import { type RowCounts, rowCounts, schemaOf } from './checks.ts';
import { writeVerifiedCopy } from './copy.ts';
import { partPath, placeNew, somethingAt, stamp } from './durable.ts';
import { newerVersion, refusalFor } from './file-refusals.ts';
import { FILE_ENDING, schemaVersionOf } from './identity.ts';
import type { Migration } from './migration.ts';

export interface MigrateOptions {
  /** The moment, for the name of the copy. */
  readonly now: Date;
  /** The steps to go; the program's own unless a test brings some. */
  readonly migrations?: readonly Migration[];
  /** `none` only for a file that is still being made or is itself a copy. */
  readonly copy?: 'verified' | 'none';
}

export interface Migrated {
  readonly from: number;
  readonly to: number;
  /** The verified copy of the workbook as it was; undefined when nothing had to be done or none was wanted. */
  readonly copy?: string;
}

/** The schema number of an open workbook; 0 for one that has no tables yet. */
export const schemaVersion = (db: Database): number => Number(db.pragma('user_version', { simple: true }));

const stepFailed = (path: string, step: string, findings: readonly string[]): Refusal =>
  new Refusal(
    'damaged',
    `"${basename(path)}" could not be brought up to date: step ${step} would not have kept everything ` +
      `(${findings.slice(0, 3).join('; ')}). Keep using the earlier program and report this. Nothing was changed.`,
    {
      field: 'path',
      accepted: 'a workbook every step keeps whole',
      detail: { path, step, findings: findings.slice(0, 20) },
    },
  );

/** Row counts that are not what the step said it would do. New tables start empty unless the step says otherwise. */
function undeclaredChanges(step: Migration, before: RowCounts, after: RowCounts): string[] {
  const findings: string[] = [];
  for (const table of new Set([...before.keys(), ...after.keys()])) {
    const change = step.rows?.[table] ?? 0;
    const had = before.get(table) ?? 0;
    const has = after.get(table);
    if (change === 'any') continue;
    if (has === undefined) {
      if (change !== 'dropped') findings.push(`table ${table} with ${had} rows is gone`);
    } else if (change === 'dropped') {
      findings.push(`table ${table} is still there`);
    } else if (has !== had + change) {
      findings.push(`${table} has ${has} rows instead of ${had + change}`);
    }
  }
  return findings;
}

/** Triggers a step lost without naming them: rebuilding a table silently drops what guards it. */
function lostTriggers(
  step: Migration,
  before: ReadonlyMap<string, string>,
  after: ReadonlyMap<string, string>,
): string[] {
  return [...before.keys()]
    .filter((what) => what.startsWith('trigger ') && !after.has(what))
    .filter(
      (what) =>
        !new RegExp(`DROP TRIGGER (IF EXISTS )?["'\`[]?${what.slice('trigger '.length)}\\b`, 'i').test(step.sql),
    )
    .map((what) => `${what} is gone`);
}

function runStep(path: string, db: Database, step: Migration): void {
  const counts = rowCounts(db);
  const schema = schemaOf(db);
  db.exec(step.sql);
  if (!db.inTransaction) throw stepFailed(path, step.name, ['it ended the transaction it runs in']);
  const findings = [...undeclaredChanges(step, counts, rowCounts(db)), ...lostTriggers(step, schema, schemaOf(db))];
  if (findings.length > 0) throw stepFailed(path, step.name, findings);
}

function runSteps(path: string, db: Database, list: readonly Migration[]): void {
  // Inside a transaction the switch does nothing, and a table rebuild would then delete child rows by cascade.
  db.pragma('foreign_keys = OFF');
  if (db.pragma('foreign_keys', { simple: true }) !== 0) throw new Error('Foreign keys must be off before migrating.');
  try {
    db.exec('BEGIN IMMEDIATE');
    const from = schemaVersion(db); // read again: another process may have been here meanwhile
    for (const step of list.slice(from)) runStep(path, db, step);
    const violations = db.pragma('foreign_key_check') as { table: string; rowid: number; parent: string }[];
    const named = violations.map(({ table, rowid, parent }) => `${table} row ${rowid} points to no row of ${parent}`);
    if (named.length > 0) throw stepFailed(path, list.at(-1)?.name ?? '', named);
    db.pragma(`user_version = ${Math.max(from, schemaVersionOf(list))}`);
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw refusalFor(error, path);
  } finally {
    db.pragma('foreign_keys = ON');
  }
}

/** Writes `name.v3-before.bak` beside the workbook; an earlier copy of that name is left alone. */
function copyBefore(path: string, db: Database, version: number, now: Date): string {
  const name = (mark: string) => join(dirname(path), `${basename(path, FILE_ENDING)}.v${version}-before${mark}.bak`);
  const copy = [name(''), name(`-${stamp(now)}`)].find((candidate) => !somethingAt(candidate));
  const target = copy ?? name(`-${now.getTime()}`);
  const part = partPath(target);
  writeVerifiedCopy(db, part);
  placeNew(part, target);
  return target;
}

/**
 * Brings an open workbook to this program's schema. All steps and the schema number are one transaction: a process
 * killed at any point leaves the old workbook or the new one. Before it, the workbook is copied and the copy proved.
 * Each step must keep every row it didn't declare to change, every trigger it didn't name, and every link.
 * Running it again does nothing.
 * @param path The workbook's path; copies go beside it.
 * @param db Its writing connection, not in a transaction.
 * @throws Refusal `newer-version`, `disk-full`, `read-only`, `open-elsewhere`, or `damaged` when a step would lose
 *   something. The workbook is then as it was.
 * Source: sqlite.org, "ALTER TABLE", section 7, for the order of steps.
 */
export function migrate(path: string, db: Database, options: MigrateOptions): Migrated {
  const list = options.migrations ?? ownMigrations;
  const to = schemaVersionOf(list);
  const from = schemaVersion(db);
  if (from > to) throw newerVersion(path, from, to);
  if (from === to) return { from, to };
  const copy = options.copy === 'none' ? undefined : copyBefore(path, db, from, options.now);
  runSteps(path, db, list);
  return { from, to, ...(copy === undefined ? {} : { copy }) };
}
