import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  unlinkSync,
} from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { Refusal } from '../../refusal.ts';

/** SQLite's companions of a database file: the write-ahead log, its index and the rollback journal. */
export const companionEndings = ['-wal', '-shm', '-journal'] as const;

const partName = /\.[0-9a-f]{12}\.part(-wal|-shm|-journal)?$/;
const keptName = /^(v\d+-before.*\.bak|(before-restore|damaged)-.*)$/;

/** Is there anything under this path, even a link that leads nowhere? */
export const somethingAt = (path: string): boolean => lstatSync(path, { throwIfNoEntry: false }) !== undefined;

/** A name beside `path` for a file still being made. It starts with a dot and ends in `.part`; nothing lists those. */
export const partPath = (path: string): string =>
  join(dirname(path), `.${basename(path)}.${randomBytes(6).toString('hex')}.part`);

/** Forces a file's content to the disk. */
export function syncFile(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Forces a folder's names to the disk, so that a rename survives a power cut. Windows can't and needn't. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Removes a database file that nobody has open, with its companions. Missing ones are fine. */
export function removeDatabase(path: string): void {
  for (const name of [path, ...companionEndings.map((ending) => path + ending)]) rmSync(name, { force: true });
}

/**
 * Removes what killed runs left half made beside `path`: the file itself and the copies that are kept of it. Call only
 * while holding its lock.
 */
export function removeParts(path: string): void {
  const ending = extname(path);
  const stem = `.${basename(path, ending)}.`;
  for (const name of readdirSync(dirname(path))) {
    if (!name.startsWith(stem) || !partName.test(name)) continue;
    const of = name.slice(stem.length).replace(partName, '');
    if (of === ending.slice(1) || keptName.test(of)) rmSync(join(dirname(path), name), { force: true });
  }
}

/**
 * Gives a finished file its name, in one step, and never over something that is already there.
 * @throws Refusal `not-allowed-from-here` when the name is taken.
 */
export function placeNew(part: string, path: string): void {
  const taken = () =>
    new Refusal(
      'not-allowed-from-here',
      `There is already something called "${basename(path)}" in that folder. Choose another name. Nothing was changed.`,
      { field: 'path', accepted: 'a name that is not in use', detail: { path } },
    );
  try {
    linkSync(part, path); // unlike a rename, a link fails when the name is taken
    unlinkSync(part);
  } catch {
    if (somethingAt(path) && existsSync(part)) throw taken();
    renameSync(part, path); // disks without links, such as memory sticks
  }
  syncFolder(dirname(path));
}

/** Gives a finished file its name in place of what bore it before. */
export function placeOver(part: string, path: string): void {
  renameSync(part, path);
  syncFolder(dirname(path));
}

/** A moment as it may stand in a file name on every system: `2026-03-04T05-06-07Z`. */
export const stamp = (now: Date): string => `${now.toISOString().slice(0, 19).replaceAll(':', '-')}Z`;
