import type { Database } from 'better-sqlite3';
import { Refusal } from '../../refusal.ts';

/** `wal` on a disk of this machine; `rollback` where files are shared or synced, so that one file holds everything. */
export type Journal = 'wal' | 'rollback';

const BUSY_TIMEOUT_MS = 5000;
const JOURNAL_SIZE_BYTES = 16 * 1024 * 1024;
const SYNCHRONOUS_FULL = 2;

function hold(db: Database, setting: string, wanted: number): void {
  db.pragma(`${setting} = ${wanted}`);
  assertHeld(db, setting, wanted);
}

function assertHeld(db: Database, setting: string, wanted: number | string): void {
  const held = db.pragma(setting, { simple: true });
  if (held === wanted) return;
  throw new Refusal(
    'not-allowed-from-here',
    `The database engine keeps ${setting} at ${String(held)} where this program needs ${wanted}, so the workbook was ` +
      'not opened. Nothing was changed.',
    { field: setting, accepted: String(wanted), detail: { held: String(held) } },
  );
}

/** Sets the journal and returns what is to be told about it. */
function chooseJournal(db: Database, journal: Journal): string[] {
  if (journal === 'wal' && db.pragma('journal_mode = WAL', { simple: true }) === 'wal') return [];
  db.pragma('journal_mode = DELETE');
  const mode = db.pragma('journal_mode', { simple: true });
  // A database in memory, which tests use, answers `memory` and has nothing to lose.
  if (mode === 'memory') return [];
  assertHeld(db, 'journal_mode', 'delete');
  if (journal === 'wal') return ['This disk does not support the usual journal. Saving is as safe, but slower.'];
  db.pragma('locking_mode = EXCLUSIVE');
  return [];
}

/**
 * Gives a writing connection the settings every workbook is used with, and reads each one back.
 *
 * A committed change survives a power cut (`synchronous` FULL; `fullfsync` on macOS, where a plain sync stops at the
 * drive's cache); links between tables are enforced; a workbook from elsewhere can't call functions through its schema;
 * broken cells are noticed when read; the file is never memory-mapped. All writing is done in IMMEDIATE transactions.
 * @returns Notices for the person, when the disk allowed less.
 * @throws Refusal `not-allowed-from-here` when a setting doesn't hold.
 * Source: sqlite.org, "PRAGMA Statements" and "Defense Against The Dark Arts".
 */
export function applyProfile(db: Database, journal: Journal = 'wal'): string[] {
  hold(db, 'trusted_schema', 0);
  hold(db, 'cell_size_check', 1);
  db.pragma('mmap_size = 0'); // answers nothing at all where mapping isn't built in
  db.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS}`);
  const notices = chooseJournal(db, journal);
  hold(db, 'foreign_keys', 1);
  if (process.platform === 'darwin') hold(db, 'fullfsync', 1);
  db.pragma(`journal_size_limit = ${JOURNAL_SIZE_BYTES}`);
  db.pragma(`synchronous = ${SYNCHRONOUS_FULL}`);
  // The first read of a write-ahead file may reset `synchronous` to the build's own default, so it is checked after one.
  db.prepare('SELECT count(*) FROM sqlite_schema').get();
  assertHeld(db, 'synchronous', SYNCHRONOUS_FULL);
  assertHeld(db, 'busy_timeout', BUSY_TIMEOUT_MS);
  assertHeld(db, 'journal_size_limit', JOURNAL_SIZE_BYTES);
  return notices;
}

/** Gives a connection that only looks the settings that matter for reading; every write through it fails. */
export function applyReadingProfile(db: Database): void {
  hold(db, 'trusted_schema', 0);
  hold(db, 'cell_size_check', 1);
  db.pragma('mmap_size = 0');
  db.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS}`);
  hold(db, 'query_only', 1);
}
