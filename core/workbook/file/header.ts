import { closeSync, openSync, readSync, statSync } from 'node:fs';
import { noSuchFile, notAWorkbook } from './file-refusals.ts';
import { APPLICATION_ID } from './identity.ts';

/** SQLite's file header, as far as it is needed before the database engine is let near a file. */
export interface FileHeader {
  readonly applicationId: number;
  readonly userVersion: number;
}

const HEADER_BYTES = 100;
const MAGIC = 'SQLite format 3\0';

/**
 * Reads the first bytes of a workbook without opening it as a database, so that a file which is something else is
 * never touched. Don't call it for a file this process has open: closing a file drops the engine's locks on it (POSIX).
 * @throws Refusal `not-found` or `not-a-workbook`.
 * Source: sqlite.org, "Database File Format", section 1.3.
 */
export function readHeader(path: string): FileHeader {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) throw noSuchFile(path, 'there is no such file');
  if (!stat.isFile()) throw notAWorkbook(path, 'it is a folder or a device');
  if (stat.size === 0) throw notAWorkbook(path, 'it is empty');
  const bytes = Buffer.alloc(HEADER_BYTES);
  const file = openSync(path, 'r');
  try {
    if (readSync(file, bytes, 0, HEADER_BYTES, 0) < HEADER_BYTES || bytes.toString('latin1', 0, 16) !== MAGIC) {
      throw notAWorkbook(path, 'its content is something else');
    }
  } finally {
    closeSync(file);
  }
  const header = { applicationId: bytes.readInt32BE(68), userVersion: bytes.readInt32BE(60) };
  if (header.applicationId !== APPLICATION_ID) throw notAWorkbook(path, 'another program made it');
  return header;
}

/** Did the last program to write this file leave before it had tidied up? */
export function notClosedCleanly(path: string): boolean {
  return ['-wal', '-journal'].some((ending) => (statSync(path + ending, { throwIfNoEntry: false })?.size ?? 0) > 0);
}
