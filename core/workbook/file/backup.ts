import { createHash } from 'node:crypto';
import { closeSync, mkdirSync, openSync, readdirSync, readSync, rmSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { type BackupName, backupName, expired, readBackupName } from './backup-names.ts';
import { writeVerifiedCopy } from './copy.ts';
import { partPath, placeNew, removeDatabase, removeParts } from './durable.ts';
import { refusing } from './file-refusals.ts';
import { FILE_ENDING } from './identity.ts';

export interface Backup extends BackupName {
  readonly sizeBytes: number;
  /** True when the content is still, to the bit, what was proved right when the backup was made. */
  readonly verified: boolean;
}

const CHUNK_BYTES = 1024 * 1024;

function digestOf(path: string): string {
  const hash = createHash('sha256');
  const chunk = Buffer.alloc(CHUNK_BYTES);
  const file = openSync(path, 'r');
  try {
    for (;;) {
      const length = readSync(file, chunk, 0, CHUNK_BYTES, null);
      if (length === 0) return hash.digest('hex').slice(0, 16);
      hash.update(chunk.subarray(0, length));
    }
  } finally {
    closeSync(file);
  }
}

function namesIn(folder: string): BackupName[] {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true) return [];
  return readdirSync(folder)
    .map((name) => readBackupName(folder, name))
    .filter((name) => name !== undefined);
}

function withCheck(name: BackupName): Backup {
  let verified = false;
  try {
    verified = digestOf(name.path) === name.digest;
  } catch {
    // unreadable is not verified
  }
  return { ...name, sizeBytes: statSync(name.path, { throwIfNoEntry: false })?.size ?? 0, verified };
}

/**
 * The backups in a folder, newest first, each compared with the digest in its name. A backup only gets its name after
 * it was opened and proved, so an unchanged one is a good one.
 * @param workbookPath Only this workbook's; without it, everybody's.
 */
export function listBackups(folder: string, workbookPath?: string): Backup[] {
  const wanted = workbookPath === undefined ? undefined : basename(workbookPath, FILE_ENDING);
  return namesIn(folder)
    .filter(({ workbook }) => wanted === undefined || workbook === wanted)
    .toSorted((a, b) => b.number - a.number || (a.path < b.path ? -1 : 1))
    .map(withCheck);
}

/**
 * Backs up an open workbook into `folder`, which is made if need be: copy, force to the disk, open again, check every
 * page and count every row, and only then give it its name. Afterwards backups beyond the ring go (see `expired`).
 * @param db The workbook's writing connection, not in a transaction.
 * @throws Refusal `disk-full`, `read-only` or `damaged`; no half backup is left and none of the older ones has gone.
 */
export function backUp(db: Database, path: string, folder: string, now: Date): Backup {
  return refusing(folder, () => {
    mkdirSync(folder, { recursive: true });
    const stem = join(folder, basename(path));
    removeParts(stem);
    const part = partPath(stem);
    try {
      writeVerifiedCopy(db, part);
      const own = namesIn(folder).filter(({ workbook }) => workbook === basename(path, FILE_ENDING));
      const number = Math.max(0, ...own.map((backup) => backup.number)) + 1;
      const name = backupName(path, number, now, digestOf(part));
      placeNew(part, join(folder, name));
      const made = readBackupName(folder, name);
      if (made === undefined) throw new Error(`${name} does not read back as a backup's name.`);
      for (const { path: old } of expired([...own, made])) rmSync(old, { force: true });
      return { ...made, sizeBytes: statSync(made.path).size, verified: true };
    } finally {
      removeDatabase(part);
    }
  });
}
