import { all, type Connection } from './connection.ts';

/** When work on a job really began, and whether somebody is at it. */
export interface JobDays {
  /** The first day that hours were written down or it was started. */
  readonly begunOn: string | null;
  /** Started and not stopped or done since. */
  readonly running: boolean;
}

/** What the journal says of the days of jobs, now or at the end of a past day. */
export function jobDays(connection: Connection, build: number, asOf: string | undefined): Map<number, JobDays> {
  const rows = all<{ subject: number; kind: string; on_day: string }>(
    connection,
    `SELECT subject, kind, on_day FROM entries e WHERE +build = ? AND subject_kind = 'job'
     AND kind IN ('hours', 'job-started', 'job-stopped', 'job-done') AND on_day <= ?
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY seq`,
    build,
    asOf ?? '9999-12-31',
  );
  const found = new Map<number, JobDays>();
  for (const { subject, kind, on_day } of rows) {
    const before = found.get(subject) ?? { begunOn: null, running: false };
    const begins = kind === 'hours' || kind === 'job-started';
    const earlier = before.begunOn !== null && (!begins || before.begunOn <= on_day) ? before.begunOn : null;
    found.set(subject, {
      begunOn: earlier ?? (begins ? on_day : before.begunOn),
      running: kind === 'hours' ? before.running : kind === 'job-started',
    });
  }
  return found;
}
