import { mkdirSync, realpathSync, statSync, unlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal } from '../../refusal.ts';
import { openElsewhere, refusalFor, refusing } from './file-refusals.ts';

/** Held while one process may write a workbook. */
export interface WorkbookLock {
  /** The file's one true path: links followed. */
  readonly path: string;
  release(): void;
}

/** Workbooks this process writes. It spares us touching their files, which would drop the engine's locks (POSIX). */
const heldHere = new Set<string>();

/** The path with every link followed, also when the file itself doesn't exist yet. */
export function truePath(path: string): string {
  return refusing(path, () => {
    if (statSync(path, { throwIfNoEntry: false }) !== undefined) return realpathSync.native(path);
    return join(realpathSync.native(dirname(path)), basename(path));
  });
}

const fileKey = (path: string): string | undefined => {
  const stat = statSync(path, { bigint: true, throwIfNoEntry: false });
  return stat === undefined ? undefined : `${stat.dev}-${stat.ino}`;
};

/** Does this process hold the file, by this name or by another that leads to the same content? */
export function isHeldHere(path: string): boolean {
  const key = fileKey(path);
  return heldHere.has(path) || (key !== undefined && heldHere.has(key));
}

/** Is the file under `lockPath` still the one we locked? A second look at a locked file is refused as busy. */
function stillOurs(lockPath: string): boolean {
  let second: Database.Database | undefined;
  try {
    second = new Database(lockPath, { readonly: true, fileMustExist: true, timeout: 0 });
    second.prepare('SELECT count(*) FROM sqlite_schema').get();
    return false;
  } catch (error) {
    return error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
  } finally {
    second?.close();
  }
}

/**
 * Locks an empty database file and returns what lets go of it. The lock belongs to the process and the system drops it
 * when the process dies in any way, so no lock is ever stale; a lock file left lying by a crash is simply locked again.
 */
function lockFile(lockPath: string, path: string): () => void {
  for (;;) {
    const lock = new Database(lockPath, { timeout: 0 });
    try {
      lock.pragma('journal_mode = MEMORY');
      lock.exec('BEGIN EXCLUSIVE');
    } catch (error) {
      lock.close();
      throw refusalFor(error, path);
    }
    // Another process may have locked, let go and removed the file between our opening it and locking it.
    if (stillOurs(lockPath)) {
      return () => {
        try {
          if (process.platform !== 'win32') unlinkSync(lockPath); // while it is locked, so nobody else's is removed
        } catch {
          // a lock file that stays is harmless
        }
        lock.close();
      };
    }
    lock.close();
  }
}

/**
 * Makes this process the one that may write the workbook at `path`, whichever of its names it is opened by.
 * @throws Refusal `open-elsewhere` when a process, this one included, holds it; `read-only` when the folder takes no files.
 */
export function lockWorkbook(path: string): WorkbookLock {
  const target = truePath(path);
  if (isHeldHere(target)) throw openElsewhere(path);
  const releases: (() => void)[] = [];
  const keys = [target];
  try {
    releases.push(refusing(path, () => lockFile(`${target}-lock`, path)));
    const stat = statSync(target, { throwIfNoEntry: false });
    const key = fileKey(target);
    if (key !== undefined) keys.push(key);
    // A file with several names in the file system needs a lock that doesn't depend on the name.
    if (stat !== undefined && stat.nlink > 1 && key !== undefined) {
      const folder = join(tmpdir(), 'hoistday-locks');
      mkdirSync(folder, { recursive: true });
      releases.push(lockFile(join(folder, key), path));
    }
  } catch (error) {
    for (const release of releases) release();
    throw error;
  }
  for (const key of keys) heldHere.add(key);
  return {
    path: target,
    release() {
      for (const key of keys) heldHere.delete(key);
      for (const release of releases.splice(0).reverse()) release();
    },
  };
}

/**
 * Keeps writers away while a file is copied; returns what lets them in again. In a folder that takes no lock file there
 * can be no writer either.
 * @throws Refusal `open-elsewhere`.
 */
export function keepWritersAway(path: string): () => void {
  try {
    return lockWorkbook(path).release;
  } catch (error) {
    if (error instanceof Refusal && error.code === 'read-only') return () => undefined;
    throw error;
  }
}
