import { statSync } from 'node:fs';
import type { Database } from 'better-sqlite3';

/** How a workbook's file looked when this program last let go of it. Kept by the shell in its list of recent files. */
export interface FileMark {
  readonly sizeBytes: number;
  readonly changedAtMs: number;
  readonly inode: string;
  /** See `idsGiven`. */
  readonly idsGiven: number;
}

/**
 * How many ids the workbook has ever given out, over all tables with ids that aren't reused. It never falls while the
 * file lives, so a lower figure means older content: a copy made without its journal, or an old file put in its place.
 */
export function idsGiven(db: Database): number {
  const known = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'sqlite_sequence'").get();
  if (known === undefined) return 0;
  return db.prepare<[], number>('SELECT coalesce(sum(seq), 0) FROM sqlite_sequence').pluck().get() ?? 0;
}

/** The mark of a file as it lies on the disk now. */
export function markOf(path: string, ids: number): FileMark {
  const stat = statSync(path, { bigint: true });
  return { sizeBytes: Number(stat.size), changedAtMs: Number(stat.mtimeMs), inode: String(stat.ino), idsGiven: ids };
}

/** Is the file on the disk still the one the mark describes? */
export function sameFile(path: string, mark: FileMark): boolean {
  const now = markOf(path, mark.idsGiven);
  return now.sizeBytes === mark.sizeBytes && now.changedAtMs === mark.changedAtMs && now.inode === mark.inode;
}
