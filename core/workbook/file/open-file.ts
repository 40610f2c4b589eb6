import { accessSync, constants, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { migrations as ownMigrations } from '../../../migrations/index.ts';
import { Refusal } from '../../refusal.ts';
import { integrityFindings, schemaDifferences } from './checks.ts';
import { removeParts } from './durable.ts';
import { damaged, newerVersion, refusing } from './file-refusals.ts';
import { notClosedCleanly, readHeader } from './header.ts';
import { schemaVersionOf } from './identity.ts';
import { placeNotices, placeOf } from './location.ts';
import { lockWorkbook, truePath, type WorkbookLock } from './lock.ts';
import { type FileMark, idsGiven, markOf, sameFile } from './mark.ts';
import { migrate, schemaVersion } from './migrate.ts';
import type { Migration } from './migration.ts';
import { checkPrivately } from './private-copy.ts';
import { applyProfile } from './profile.ts';
import { openForReading } from './read-only.ts';

export interface OpenOptions {
  /** The moment, for the names of copies. */
  readonly now: Date;
  /** Look, don't write. Also opens what can't be written: see `openWorkbookFile`. */
  readonly readOnly?: boolean;
  /** What `close` returned last time. A file that still looks like that isn't checked again. */
  readonly lastSeen?: FileMark;
  /** The schema to expect; the program's own unless a test brings one. */
  readonly migrations?: readonly Migration[];
}

export interface OpenWorkbook {
  readonly db: Database.Database;
  readonly readOnly: boolean;
  /** Sentences for the person: a banner's worth, nothing that needs an answer. */
  readonly notices: readonly string[];
  /** Puts everything into the one file and lets go of it. Undefined when nothing was written. Safe to call twice. */
  close(): FileMark | undefined;
}

const canWrite = (path: string): boolean => {
  try {
    accessSync(path, constants.W_OK);
    accessSync(dirname(path), constants.W_OK);
    return true;
  } catch {
    return false;
  }
};

/** Opens the file for writing and goes through every check that comes before the first write. */
function openChecked(path: string, options: OpenOptions, notices: string[]): Database.Database {
  const list = options.migrations ?? ownMigrations;
  const unclean = notClosedCleanly(path);
  const known = !unclean && options.lastSeen !== undefined && sameFile(path, options.lastSeen);
  // Opening a file with a journal beside it writes to it, so a doubtful one is first opened as a copy.
  if (unclean) checkPrivately(path, list);
  const db = new Database(path, { fileMustExist: true, timeout: 500 });
  try {
    const version = schemaVersion(db);
    if (version > schemaVersionOf(list)) throw newerVersion(path, version, schemaVersionOf(list));
    if (!known) {
      const findings = integrityFindings(db, 'quick');
      if (findings.length === 0) findings.push(...schemaDifferences(db, list, version));
      if (findings.length > 0) throw damaged(path, findings);
    }
    if (unclean)
      notices.push('The workbook was not closed properly last time. Everything that had been saved is here.');
    if (options.lastSeen !== undefined && idsGiven(db) < options.lastSeen.idsGiven) {
      notices.push(
        'This workbook holds less than when it was last open here. It may have been copied while it was open, or ' +
          'replaced by an older copy. Compare it with your backups before going on.',
      );
    }
    const place = placeOf(path);
    notices.push(...applyProfile(db, place === 'this-machine' ? 'wal' : 'rollback'), ...placeNotices(path, place));
    const migrated = migrate(path, db, { now: options.now, migrations: list });
    if (migrated.copy !== undefined) {
      notices.push(`The workbook was brought up to date. As it was before, it is kept in ${migrated.copy}.`);
    }
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

function openForWriting(lock: WorkbookLock, options: OpenOptions): OpenWorkbook {
  const notices: string[] = [];
  readHeader(lock.path);
  removeParts(lock.path);
  const db = refusing(lock.path, () => openChecked(lock.path, options, notices));
  let mark: FileMark | undefined;
  return {
    db,
    readOnly: false,
    notices,
    close() {
      if (!db.open) return mark;
      const ids = idsGiven(db);
      try {
        db.pragma('wal_checkpoint(TRUNCATE)');
      } finally {
        db.close();
        lock.release();
      }
      mark = markOf(lock.path, ids);
      return mark;
    },
  };
}

/**
 * Opens a workbook. Unless `readOnly` is asked for, this process becomes its one writer, the file is checked when it
 * wasn't closed properly or isn't as this machine last saw it, and an older schema is brought up to date.
 *
 * A file or folder that can't be written is opened read-only, with a notice. With `readOnly`, a workbook that is open
 * elsewhere is read beside its writer; a damaged or newer one is opened as a private copy as far as it can be read.
 * @throws Refusal, and the file stays as it was, byte for byte: `not-found`; `not-a-workbook`; `damaged`;
 *   `newer-version`; `open-elsewhere`; `disk-full`.
 */
export function openWorkbookFile(path: string, options: OpenOptions): OpenWorkbook {
  const target = truePath(path);
  if (options.readOnly === true) return openForReading(target, options, []);
  if (statSync(target, { throwIfNoEntry: false })?.isFile() !== true) readHeader(target); // refuses
  if (!canWrite(target)) {
    return openForReading(target, options, ['This file or its folder is read-only, so nothing can be changed here.']);
  }
  const lock = lockWorkbook(target);
  try {
    return openForWriting(lock, options);
  } catch (error) {
    lock.release();
    if (error instanceof Refusal && error.code === 'read-only') {
      return openForReading(target, options, ['This place takes no writing, so nothing can be changed here.']);
    }
    throw error;
  }
}
