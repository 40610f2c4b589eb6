import { statSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import Database from 'better-sqlite3';
import { migrations as ownMigrations } from '../../../migrations/index.ts';
import { Refusal } from '../../refusal.ts';
import { partPath, placeNew, removeDatabase, removeParts, somethingAt, syncFile } from './durable.ts';
import { noSuchFile, refusing } from './file-refusals.ts';
import { APPLICATION_ID, FILE_ENDING } from './identity.ts';
import { lockWorkbook } from './lock.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migration.ts';
import { applyProfile } from './profile.ts';

export interface CreateOptions {
  readonly now: Date;
  /** The schema to build; the program's own unless a test brings one. */
  readonly migrations?: readonly Migration[];
}

/** Refuses a name without the ending, one that is taken, and one in a folder that doesn't exist. */
export function checkName(path: string): void {
  if (!path.endsWith(FILE_ENDING) || basename(path) === FILE_ENDING) {
    throw new Refusal(
      'bad-input',
      `A workbook's file name ends in ${FILE_ENDING}, such as "drover${FILE_ENDING}"; "${basename(path)}" does not. ` +
        'Nothing was changed.',
      { field: 'path', accepted: `a file name ending in ${FILE_ENDING}` },
    );
  }
  if (somethingAt(path)) {
    throw new Refusal(
      'not-allowed-from-here',
      `There is already something called "${basename(path)}" in that folder. Choose another name, or open it. ` +
        'Nothing was changed.',
      { field: 'path', accepted: 'a name that is not in use', detail: { path } },
    );
  }
  if (statSync(dirname(path), { throwIfNoEntry: false })?.isDirectory() !== true) {
    throw noSuchFile(path, 'the folder it should go into does not exist');
  }
}

/** Builds an empty workbook in a file nobody knows yet. The file is closed, whole and on the disk when this returns. */
export function buildEmptyWorkbook(part: string, options: CreateOptions): void {
  const db = new Database(part);
  try {
    db.pragma(`application_id = ${APPLICATION_ID}`);
    applyProfile(db);
    migrate(part, db, { now: options.now, migrations: options.migrations ?? ownMigrations, copy: 'none' });
    db.pragma('wal_checkpoint(TRUNCATE)');
  } finally {
    db.close();
  }
  syncFile(part);
}

/**
 * Makes an empty workbook at `path`. It is built under another name and gets its own in one step, so nobody ever sees
 * half a workbook.
 * @throws Refusal `bad-input` for a name without the ending, `not-allowed-from-here` when something is already there,
 *   `not-found` for a missing folder, `read-only`, `disk-full`.
 */
export function createWorkbookFile(path: string, options: CreateOptions): void {
  checkName(path);
  const lock = lockWorkbook(path);
  try {
    removeParts(lock.path);
    const part = partPath(lock.path);
    try {
      refusing(path, () => {
        buildEmptyWorkbook(part, options);
        placeNew(part, lock.path);
      });
    } finally {
      removeDatabase(part);
    }
  } finally {
    lock.release();
  }
}
