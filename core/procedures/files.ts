import { existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, resolve, sep } from 'node:path';
import { Refusal } from '../refusal.ts';
import { backUp, listBackups } from '../workbook/file/backup.ts';
import { createWorkbookFile } from '../workbook/file/create-file.ts';
import { FILE_ENDING } from '../workbook/file/identity.ts';
import type { FileMark } from '../workbook/file/mark.ts';
import { openWorkbookFile } from '../workbook/file/open-file.ts';
import { restoreBackup } from '../workbook/file/restore.ts';
import { connect } from '../workbook/store/connection.ts';
import { watchForBackup } from './auto-backup.ts';
import type { Book, FileActions } from './context.ts';

export interface FileActionsOptions {
  readonly folder: string;
  readonly allowAnyPath: boolean;
  readonly now: () => Date;
  current(): Book | null;
  become(book: Book | null): void;
}

/** A name that every file system takes: letters, digits, blanks, `-`, `_`, `.`, `'`, brackets; no reserved device names. */
const usableName = /^(?!\.)(?!.*\.$)[\p{L}\p{N}][\p{L}\p{N} ._'()-]{0,79}$/u;
const reservedName = /^(con|prn|aux|nul|com\d|lpt\d)(\..*)?$/i;

/** Opening, making, copying and restoring workbooks, with the one open workbook of this process. */
export function fileActions(options: FileActionsOptions): FileActions {
  const { folder, now } = options;
  const seenPath = join(folder, '.seen.json');

  const readSeen = (): Record<string, FileMark> => {
    try {
      return JSON.parse(readFileSync(seenPath, 'utf8')) as Record<string, FileMark>;
    } catch {
      return {};
    }
  };
  const remember = (path: string, mark: FileMark | undefined): void => {
    if (mark === undefined) return;
    try {
      writeFileSync(seenPath, JSON.stringify({ ...readSeen(), [path]: mark }));
    } catch {
      // A folder that can't be written only costs the check next time.
    }
  };

  const allowed = (path: string): string => {
    const full = isAbsolute(path) ? resolve(path) : resolve(folder, path);
    if (options.allowAnyPath) return full;
    const inside = (candidate: string): boolean => candidate.startsWith(realpathSync(folder) + sep);
    const real = existsSync(full) ? realpathSync(full) : join(realpathSync(dirname(full)), basename(full));
    if (!inside(real)) {
      throw new Refusal(
        'bad-input',
        'Only workbooks in the workbook folder can be opened from here. Nothing was changed.',
        {
          field: 'path',
          accepted: 'the name of a workbook in the folder shown',
        },
      );
    }
    return real;
  };

  /** Each workbook has a ring of its own, so a folder of its own too. */
  const backupFolder = (path: string): string => join(dirname(path), 'Backups', basename(path, FILE_ENDING));

  const closeCurrent = (): void => {
    options.current()?.close();
    options.become(null);
  };

  const open = (path: string, readOnly: boolean): void => {
    const full = allowed(path);
    const current = options.current();
    if (current?.path === full && current.readOnly === readOnly) return;
    const seen = readSeen()[full];
    const file = openWorkbookFile(full, {
      now: now(),
      ...(readOnly ? { readOnly: true } : {}),
      ...(seen === undefined ? {} : { lastSeen: seen }),
    });
    current?.close();
    let stopWatch = (): void => undefined;
    const book: Book = {
      connection: connect(file.db),
      path: full,
      name: basename(full, FILE_ENDING),
      readOnly: file.readOnly,
      notices: file.notices,
      close: () => {
        stopWatch();
        remember(full, file.close());
      },
    };
    if (!file.readOnly) {
      const newest = (): string | null => listBackups(backupFolder(full), full)[0]?.madeAt ?? null;
      stopWatch = watchForBackup(book, newest, () => {
        backUp(file.db, full, backupFolder(full), now());
      });
    }
    options.become(book);
  };

  const pathFor = (name: string): string => {
    const plain = name.trim().endsWith(FILE_ENDING) ? name.trim().slice(0, -FILE_ENDING.length) : name.trim();
    if (!usableName.test(plain) || reservedName.test(plain)) {
      throw new Refusal('bad-input', `“${name}” can't be a file name. Nothing was changed.`, {
        field: 'name',
        accepted: "letters, digits, blanks and - _ ' ( ), at most 80, such as Tarnwell Drover",
      });
    }
    mkdirSync(folder, { recursive: true });
    return join(folder, plain + FILE_ENDING);
  };

  const needCurrent = (): Book => {
    const book = options.current();
    if (book === null)
      throw new Refusal('not-found', 'No workbook is open. Nothing was changed.', { accepted: 'an open workbook' });
    return book;
  };

  return {
    folder,
    held: new Map(),
    pathFor,
    find() {
      if (!existsSync(folder)) return [];
      return readdirSync(folder)
        .filter((name) => name.endsWith(FILE_ENDING))
        .flatMap((name) => {
          const path = join(folder, name);
          const stats = statSync(path, { throwIfNoEntry: false });
          return stats?.isFile() === true
            ? [{ name: basename(name, FILE_ENDING), path, changedAt: stats.mtime.toISOString(), bytes: stats.size }]
            : [];
        })
        .sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1));
    },
    create(name, path) {
      const full = path === undefined ? pathFor(name) : allowed(path);
      createWorkbookFile(full, { now: now() });
      open(full, false);
    },
    open,
    close: closeCurrent,
    backUpIfWritten() {
      const book = options.current();
      if (book === null || book.readOnly) return;
      const written = book.connection.prepare('SELECT 1 FROM parts LIMIT 1').get() !== undefined;
      if (written) backUp(book.connection.sqlite, book.path, backupFolder(book.path), now());
    },
    backUp() {
      const book = needCurrent();
      const made = backUp(book.connection.sqlite, book.path, backupFolder(book.path), now());
      return { file: basename(made.path), bytes: made.sizeBytes };
    },
    backups() {
      const book = needCurrent();
      return listBackups(backupFolder(book.path), book.path).map((made) => ({
        file: basename(made.path),
        madeAt: made.madeAt,
        bytes: made.sizeBytes,
        verified: made.verified,
      }));
    },
    restore(file) {
      const book = needCurrent();
      const wanted = listBackups(backupFolder(book.path), book.path).find(({ path }) => basename(path) === file);
      if (wanted === undefined) {
        throw new Refusal('not-found', `There is no backup called “${file}” of this workbook. Nothing was changed.`, {
          field: 'file',
          accepted: 'the name of a backup in the list',
        });
      }
      const { path } = book;
      closeCurrent();
      try {
        restoreBackup(wanted.path, path, now());
      } finally {
        open(path, false);
      }
    },
  };
}
