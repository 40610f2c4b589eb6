import { all, type Connection } from './connection.ts';

/** Somebody at work on a job. */
export interface RunningJob {
  readonly job: number;
  /** The instant of the start, ISO 8601 in UTC. */
  readonly at: string;
  readonly by: string;
  readonly on: string;
}

/** Jobs that were started and neither stopped nor done since, by job; those of a past day stood so at its end. */
export function runningJobs(
  connection: Connection,
  build: number,
  asOf: string | undefined,
): ReadonlyMap<number, RunningJob> {
  const rows = all<{ subject: number; kind: string; on_day: string; recorded_at: string; payload: string | null }>(
    connection,
    `SELECT subject, kind, on_day, recorded_at, payload FROM entries e WHERE +build = ? AND subject_kind = 'job'
     AND kind IN ('job-started', 'job-stopped', 'job-done') AND on_day <= ?
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY seq`,
    build,
    asOf ?? '9999-12-31',
  );
  const running = new Map<number, RunningJob>();
  for (const { subject: job, kind, on_day: on, recorded_at, payload } of rows) {
    running.delete(job);
    if (kind !== 'job-started') continue;
    const said = payload === null ? {} : (JSON.parse(payload) as { at?: string; by?: string });
    running.set(job, { job, at: said.at ?? recorded_at, by: said.by ?? '', on });
  }
  return running;
}
