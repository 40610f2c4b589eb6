import { renameSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { migrations as ownMigrations } from '../../../migrations/index.ts';
import { integrityFindings, tableNames } from './checks.ts';
import { buildEmptyWorkbook, checkName } from './create-file.ts';
import {
  companionEndings,
  partPath,
  placeNew,
  removeDatabase,
  removeParts,
  somethingAt,
  syncFile,
  syncFolder,
} from './durable.ts';
import { damaged as damagedRefusal, newerVersion, refusing } from './file-refusals.ts';
import { readHeader } from './header.ts';
import { schemaVersionOf } from './identity.ts';
import { lockWorkbook, truePath } from './lock.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migration.ts';
import { privateCopyOf } from './private-copy.ts';
import { applyProfile } from './profile.ts';
import { keptName } from './restore.ts';
import { type SalvagedTable, salvageTable } from './salvage-table.ts';

export interface Salvaged {
  readonly tables: readonly SalvagedTable[];
  /** Links in the new workbook that lead to rows which were lost: `lines row 7 points to no row of orders`. */
  readonly brokenLinks: readonly string[];
  /** Where the damaged file lies now. It is never removed. */
  readonly original: string;
}

export interface SalvageOptions {
  readonly now: Date;
  readonly migrations?: readonly Migration[];
}

function brokenLinksOf(db: Database.Database): string[] {
  const violations = db.pragma('foreign_key_check') as { table: string; rowid: number; parent: string }[];
  return violations.map(({ table, rowid, parent }) => `${table} row ${rowid} points to no row of ${parent}`);
}

/** Ids that were given out once aren't given out again, also when their rows are gone. */
function carryIdsGiven(damaged: Database.Database, fresh: Database.Database): void {
  try {
    const known = damaged.prepare<[], { name: string; seq: number }>('SELECT name, seq FROM sqlite_sequence').all();
    const raise = fresh.prepare('UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = ?');
    const add = fresh.prepare('INSERT INTO sqlite_sequence (name, seq) VALUES (?, ?)');
    const tables = new Set(tableNames(fresh));
    for (const { name, seq } of known) if (tables.has(name) && raise.run(seq, name).changes === 0) add.run(name, seq);
  } catch {
    // Not readable, or no such ids in this schema: the rows carried over have set theirs.
  }
}

/** Fills a fresh workbook of the same schema. Its triggers guard people's acts and would turn rows away; they rest. */
function fill(damaged: Database.Database, fresh: Database.Database): SalvagedTable[] {
  const triggers = fresh
    .prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all();
  fresh.exec('BEGIN IMMEDIATE');
  for (const { name } of triggers) fresh.exec(`DROP TRIGGER "${name.replaceAll('"', '""')}"`);
  const tables = tableNames(fresh).map((table) => {
    fresh.exec(`DELETE FROM "${table.replaceAll('"', '""')}"`); // what the steps planted comes over with the rest
    return salvageTable(damaged, fresh, table);
  });
  carryIdsGiven(damaged, fresh);
  for (const { sql } of triggers) fresh.exec(sql);
  fresh.exec('COMMIT');
  return tables;
}

function rescue(path: string, part: string, options: SalvageOptions): Omit<Salvaged, 'original'> {
  const list = options.migrations ?? ownMigrations;
  const version = readHeader(path).userVersion;
  if (version > schemaVersionOf(list)) throw newerVersion(path, version, schemaVersionOf(list));
  const copy = privateCopyOf(path);
  try {
    buildEmptyWorkbook(part, { now: options.now, migrations: list.slice(0, version) });
    const damaged = new Database(copy.path, { fileMustExist: true });
    const fresh = new Database(part, { fileMustExist: true });
    try {
      applyProfile(fresh);
      fresh.pragma('foreign_keys = OFF');
      const tables = fill(damaged, fresh);
      if (tables.every(({ rowsSaved }) => rowsSaved === 0)) throw damagedRefusal(path, ['not one row can be read']);
      const brokenLinks = brokenLinksOf(fresh);
      const findings = integrityFindings(fresh);
      if (findings.length > 0) throw damagedRefusal(path, findings);
      // A later step refuses broken links, so it is left to the next opening when there are any.
      if (brokenLinks.length === 0) migrate(part, fresh, { now: options.now, migrations: list, copy: 'none' });
      fresh.pragma('wal_checkpoint(TRUNCATE)');
      return { tables, brokenLinks };
    } finally {
      fresh.close();
      damaged.close();
    }
  } finally {
    copy.remove();
  }
}

/**
 * Saves what can be read of a damaged workbook into a new one, table by table, and lists what could not be read. The
 * damaged file stays where it is, or, when the new one is to take its name, is renamed to `name.damaged-….hoistday`.
 * @throws Refusal `open-elsewhere`; `not-a-workbook`; `newer-version`; `not-allowed-from-here` when the new name is
 *   taken; `damaged` when not one row can be read; `disk-full`, `read-only`.
 */
export function salvage(damagedPath: string, newPath: string, options: SalvageOptions): Salvaged {
  const source = lockWorkbook(damagedPath);
  const inPlace = source.path === truePath(newPath);
  let target: ReturnType<typeof lockWorkbook> | undefined;
  try {
    if (!inPlace) {
      checkName(newPath);
      target = lockWorkbook(newPath);
    }
    const path = target?.path ?? source.path;
    removeParts(path);
    const part = partPath(path);
    try {
      return refusing(damagedPath, () => {
        const rescued = rescue(source.path, part, options);
        syncFile(part);
        const original = inPlace ? setAside(source.path, options.now) : source.path;
        placeNew(part, path);
        return { ...rescued, original };
      });
    } finally {
      removeDatabase(part);
    }
  } finally {
    target?.release();
    source.release();
  }
}

/** Renames a damaged workbook with its companions, journal first, so that none is ever beside a file it isn't of. */
function setAside(path: string, now: Date): string {
  const aside = keptName(path, 'damaged', now);
  for (const ending of companionEndings) if (somethingAt(path + ending)) renameSync(path + ending, aside + ending);
  renameSync(path, aside);
  syncFolder(dirname(path));
  return aside;
}
