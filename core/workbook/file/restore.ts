import { copyFileSync, existsSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { migrations as ownMigrations } from '../../../migrations/index.ts';
import { integrityFindings } from './checks.ts';
import { verifyCopy } from './copy.ts';
import {
  companionEndings,
  partPath,
  placeNew,
  placeOver,
  removeDatabase,
  removeParts,
  somethingAt,
  stamp,
  syncFile,
  syncFolder,
} from './durable.ts';
import { newerVersion, refusing } from './file-refusals.ts';
import { notClosedCleanly, readHeader } from './header.ts';
import { FILE_ENDING, schemaVersionOf } from './identity.ts';
import { keepWritersAway, lockWorkbook, truePath } from './lock.ts';
import type { Migration } from './migration.ts';
import { privateCopyOf } from './private-copy.ts';

export interface Restored {
  /** Where the workbook that was replaced is kept; undefined when there was none. */
  readonly kept?: string;
}

/** A free name beside `path`: `name.<mark>-<moment>.hoistday`. */
export function keptName(path: string, mark: string, now: Date): string {
  const stem = join(dirname(path), `${basename(path, FILE_ENDING)}.${mark}-${stamp(now)}`);
  for (let count = 1; ; count += 1) {
    const name = `${stem}${count === 1 ? '' : `-${count}`}${FILE_ENDING}`;
    if (!somethingAt(name) && !somethingAt(`${name}-wal`) && !somethingAt(`${name}-journal`)) return name;
  }
}

/** Puts what lies in the journal into the file, when a copy shows that this works; a damaged file is left as it is. */
function settle(path: string): void {
  if (!notClosedCleanly(path)) return;
  const copy = privateCopyOf(path);
  try {
    const trial = new Database(copy.path, { fileMustExist: true });
    try {
      if (integrityFindings(trial, 'quick').length > 0) return;
    } finally {
      trial.close();
    }
    const db = new Database(path, { fileMustExist: true, timeout: 500 });
    try {
      db.pragma('wal_checkpoint(TRUNCATE)');
    } finally {
      db.close();
    }
  } catch {
    // It doesn't open: it is kept with its journal beside it.
  } finally {
    copy.remove();
  }
}

/** Keeps the workbook as it is under another name, journal included, and forces that to the disk. */
function keepCurrent(path: string, now: Date): string | undefined {
  if (!somethingAt(path)) return undefined;
  settle(path);
  const kept = keptName(path, 'before-restore', now);
  // The journal goes first: once the kept file has its name, everything that belongs to it is there.
  for (const ending of ['-wal', '-journal']) {
    if (!existsSync(path + ending)) continue;
    copyFileSync(path + ending, kept + ending);
    syncFile(kept + ending);
  }
  const part = partPath(kept);
  copyFileSync(path, part);
  syncFile(part);
  placeNew(part, kept);
  return kept;
}

function copyBackup(source: string, part: string, known: number): void {
  const letIn = keepWritersAway(source);
  try {
    const { userVersion } = readHeader(source);
    if (userVersion > known) throw newerVersion(source, userVersion, known);
    for (const ending of ['', '-wal', '-journal']) {
      if (existsSync(source + ending)) copyFileSync(source + ending, part + ending);
    }
  } finally {
    letIn();
  }
}

/**
 * Puts a backup in the place of a workbook that nobody has open. The backup is proved, copied beside the workbook and
 * proved again before anything else happens; the present workbook is kept as `name.before-restore-….hoistday`, which
 * can be restored the same way. The exchange is one rename.
 * @throws Refusal `not-found`, `not-a-workbook`, `damaged` or `newer-version` about the backup; `open-elsewhere`,
 *   `disk-full` or `read-only` about the workbook. The workbook is then as it was.
 */
export function restoreBackup(
  backupPath: string,
  workbookPath: string,
  now: Date,
  migrations: readonly Migration[] = ownMigrations,
): Restored {
  const source = truePath(backupPath);
  const lock = lockWorkbook(workbookPath);
  const path = lock.path;
  removeParts(path);
  const part = partPath(path);
  try {
    return refusing(path, () => {
      copyBackup(source, part, schemaVersionOf(migrations));
      settle(part);
      verifyCopy(part);
      syncFile(part);
      const kept = keepCurrent(path, now);
      // A journal left beside the restored file would be played into it.
      for (const ending of companionEndings) rmSync(path + ending, { force: true });
      syncFolder(dirname(path));
      placeOver(part, path);
      return kept === undefined ? {} : { kept };
    });
  } finally {
    removeDatabase(part);
    lock.release();
  }
}
