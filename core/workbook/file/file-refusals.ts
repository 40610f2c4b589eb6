import { basename } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal, type RefusalDetail } from '../../refusal.ts';

/** What to do about a file that isn't a workbook. */
export const notAWorkbook = (path: string, why: string): Refusal =>
  new Refusal(
    'not-a-workbook',
    `"${basename(path)}" is not a workbook: ${why}. Choose a file ending in .hoistday that this program made. Nothing was changed.`,
    { field: 'path', accepted: 'a workbook file made by this program', detail: { path } },
  );

/** What to do about a workbook whose content doesn't hold together. `findings` are the checker's own lines. */
export const damaged = (path: string, findings: readonly string[]): Refusal =>
  new Refusal(
    'damaged',
    `"${basename(path)}" is damaged and was not opened for writing. Open it read-only to look inside, restore the newest ` +
      'backup, or save what can still be read into a new workbook. Nothing was changed.',
    { field: 'path', accepted: 'a workbook that passes its check', detail: { path, findings: findings.slice(0, 20) } },
  );

/** What to do about a workbook written by a later program. */
export const newerVersion = (path: string, found: number, known: number): Refusal =>
  new Refusal(
    'newer-version',
    `"${basename(path)}" has schema ${found}; this program knows schemas up to ${known}. Install the newer program, or ` +
      'open a read-only copy. Nothing was changed.',
    { field: 'path', accepted: `a workbook of schema ${known} or older`, detail: { path, found, known } },
  );

/** What to do about a workbook somebody has open. */
export const openElsewhere = (path: string): Refusal =>
  new Refusal(
    'open-elsewhere',
    `"${basename(path)}" is open in another window or program. Close it there and try again, or open it read-only. ` +
      'Nothing was changed.',
    { field: 'path', accepted: 'a workbook nobody else has open', detail: { path } },
  );

/** What to do about a place that takes no writing. */
const writesRefused = (path: string, why: string): Refusal =>
  new Refusal(
    'read-only',
    `"${basename(path)}" can't be written here: ${why}. Choose a folder you may write in. Nothing was changed.`,
    { field: 'path', accepted: 'a folder and file that may be written', detail: { path } },
  );

/** What to do when the disk has no room. */
const diskFull = (path: string): Refusal =>
  new Refusal(
    'disk-full',
    `There is no room left to write "${basename(path)}". Free some space on that disk and try again. Nothing was changed.`,
    { field: 'path', accepted: 'a disk with free space', detail: { path } },
  );

/** What to do when there is no file, or no folder, under a path. */
export const noSuchFile = (path: string, why: string, more: RefusalDetail = {}): Refusal =>
  new Refusal('not-found', `"${basename(path)}": ${why}. Nothing was changed.`, {
    field: 'path',
    accepted: 'the path of an existing workbook',
    detail: { path, ...more },
  });

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';

/**
 * The refusal that stands for an error of the database engine or the file system; an error it doesn't know is handed
 * back as it came, so that mistakes of ours stay visible.
 * Source of the codes: sqlite.org, "Result and Error Codes"; POSIX errno names.
 */
export function refusalFor(error: unknown, path: string): unknown {
  if (error instanceof Refusal) return error;
  const code = codeOf(error);
  if (code === 'SQLITE_NOTADB') return notAWorkbook(path, 'its content is something else');
  if (code === 'SQLITE_FULL' || code === 'SQLITE_IOERR_WRITE' || /^(ENOSPC|EDQUOT|EFBIG)$/.test(code))
    return diskFull(path);
  if (/^SQLITE_(CORRUPT|FORMAT|IOERR_SHORT_READ)/.test(code)) return damaged(path, [(error as Error).message]);
  if (/^SQLITE_(BUSY|LOCKED|PROTOCOL)/.test(code)) return openElsewhere(path);
  if (/^(SQLITE_(READONLY|CANTOPEN|PERM).*|EACCES|EPERM|EROFS)$/.test(code)) {
    return writesRefused(path, 'the file or its folder is read-only');
  }
  if (code === 'ENOENT' || code === 'ENOTDIR') return noSuchFile(path, 'no such file or folder');
  // A file so broken that its own schema text can't be read comes back as a plain SQLITE_ERROR.
  if (error instanceof Database.SqliteError && /malformed/.test(error.message)) return damaged(path, [error.message]);
  return error;
}

/** Runs `work`; what the engine or the file system throws leaves as a refusal that names `path`. */
export function refusing<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw refusalFor(error, path);
  }
}
