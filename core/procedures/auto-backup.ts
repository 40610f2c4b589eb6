import { first } from '../workbook/store/connection.ts';
import type { Book } from './context.ts';

const minuteMs = 60_000;
/** How soon after opening a changed workbook is backed up, and how often while it is worked on. */
const firstAfterMs = minuteMs;
const everyMs = 60 * minuteMs;

const lastActOf = (book: Book): number =>
  first<{ id: number | null }>(book.connection, 'SELECT max(id) AS id FROM acts')?.id ?? 0;

/**
 * Backs a workbook up by itself: shortly after it was opened, when it changed since its newest backup, and every hour in
 * which something was done. A backup that fails is left to the next try; it never stands in anybody's way.
 * @param newestAt when its newest backup was made, ISO 8601 to the second, or null.
 * @returns stops the watch.
 */
export function watchForBackup(book: Book, newestAt: () => string | null, backUp: () => void): () => void {
  let backedUp: number | null = null;
  /** Looked at once, and late: reading the backups' digests would make opening slow. */
  const alreadySafe = (): boolean => {
    const changedAt =
      first<{ at: string | null }>(book.connection, 'SELECT max(recorded_at) AS at FROM acts')?.at ?? null;
    const newest = newestAt();
    return changedAt === null || (newest !== null && newest >= changedAt);
  };
  const look = (): void => {
    try {
      const last = lastActOf(book);
      if (backedUp === null && alreadySafe()) backedUp = last;
      if (last === backedUp) return;
      backUp();
      backedUp = last;
    } catch {
      // The disk may be full or the folder gone; the next hour tries again.
    }
  };
  const soon = setTimeout(look, firstAfterMs);
  const hourly = setInterval(look, everyMs);
  soon.unref();
  hourly.unref();
  return () => {
    clearTimeout(soon);
    clearInterval(hourly);
  };
}
