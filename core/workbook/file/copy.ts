import { rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { countDifferences, integrityFindings, type RowCounts, rowCounts } from './checks.ts';
import { removeDatabase, syncFile } from './durable.ts';
import { damaged, refusing } from './file-refusals.ts';
import { readHeader } from './header.ts';

/**
 * Opens a finished database file that nobody writes, looks, and closes it, leaving no companion files behind. The file
 * must not be in the write-ahead mode with a log still beside it.
 */
function inspect<T>(path: string, look: (db: Database.Database) => T): T {
  const db = new Database(path, { readonly: true, fileMustExist: true });
  try {
    return look(db);
  } finally {
    db.close();
    // A reader of a write-ahead file makes these two and may not remove them.
    for (const ending of ['-wal', '-shm']) rmSync(path + ending, { force: true });
  }
}

/**
 * Checks a copy by opening it again: its header, the full integrity check and, when given, the row counts.
 * @throws Refusal `not-a-workbook` or `damaged`.
 */
export function verifyCopy(path: string, counts?: RowCounts): void {
  readHeader(path);
  refusing(path, () => {
    inspect(path, (db) => {
      const findings = integrityFindings(db);
      if (findings.length === 0 && counts !== undefined) findings.push(...countDifferences(rowCounts(db), counts));
      if (findings.length > 0) throw damaged(path, findings);
    });
  });
}

/**
 * Writes the whole of an open workbook to `part`, forces it to the disk and proves it: what `VACUUM INTO` returns is
 * not yet safe and may be cut short by an interruption. The workbook's content doesn't change meanwhile, because this
 * process is its only writer. A copy that fails is removed.
 * @throws Refusal `disk-full`, `read-only`, `damaged` or `open-elsewhere`.
 */
export function writeVerifiedCopy(db: Database.Database, part: string): void {
  try {
    refusing(part, () => {
      db.prepare('VACUUM INTO ?').run(part);
      syncFile(part);
    });
    verifyCopy(part, rowCounts(db));
  } catch (error) {
    removeDatabase(part);
    throw error;
  }
}
