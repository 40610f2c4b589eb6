import { basename, join } from 'node:path';
import { stamp } from './durable.ts';
import { FILE_ENDING } from './identity.ts';

/** What a backup's file name says: `drover.000012.2026-03-04T05-06-07Z.3fa9c2d1e0b7a8c4.hoistday`. */
export interface BackupName {
  readonly path: string;
  /** The workbook's name without its ending. */
  readonly workbook: string;
  /** Counts up from 1; backups are ordered by it and not by a clock, which may have been set back. */
  readonly number: number;
  /** The moment it was made, ISO 8601 in universal time, to the second. */
  readonly madeAt: string;
  /** The first 16 hexadecimal digits of the content's SHA-256. */
  readonly digest: string;
}

const form = /^(.+)\.(\d{6,})\.(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)Z\.([0-9a-f]{16})\.hoistday$/;

/** The file name of a backup. */
export function backupName(workbookPath: string, number: number, now: Date, digest: string): string {
  const workbook = basename(workbookPath, FILE_ENDING);
  return `${workbook}.${String(number).padStart(6, '0')}.${stamp(now)}.${digest}${FILE_ENDING}`;
}

/** Reads a file name back; undefined when the file isn't a backup of ours. */
export function readBackupName(folder: string, name: string): BackupName | undefined {
  const [, workbook, number, day, hour, minute, second, digest] = form.exec(name) ?? [];
  if (workbook === undefined || digest === undefined) return undefined;
  const madeAt = `${day}T${hour}:${minute}:${second}Z`;
  return { path: join(folder, name), workbook, number: Number(number), madeAt, digest };
}

/** The newest backups kept whatever their age, and for how many days the day's last one is kept besides. */
const NEWEST_KEPT = 10;
const DAYS_KEPT = 14;

/**
 * Which of one workbook's backups may go: all but the newest ten and the last one of each of the newest fourteen days
 * that have any.
 */
export function expired(backups: readonly BackupName[]): BackupName[] {
  const newestFirst = backups.toSorted((a, b) => b.number - a.number);
  const kept = new Set(newestFirst.slice(0, NEWEST_KEPT));
  const days = new Set<string>();
  for (const backup of newestFirst) {
    const day = backup.madeAt.slice(0, 10);
    if (days.has(day) || days.size === DAYS_KEPT) continue;
    days.add(day);
    kept.add(backup);
  }
  return newestFirst.filter((backup) => !kept.has(backup));
}
