import { all, type Connection } from './connection.ts';

/** A movement on a day, summed. */
export interface DayDelta {
  readonly on: string;
  readonly id: number;
  readonly amount: number;
}

/** Our own units of each part line that are accepted, by the day on which the count changed; thousandths. */
export const acceptedByDay = (connection: Connection, build: number, asOf: string): DayDelta[] =>
  all<DayDelta>(
    connection,
    `SELECT q.on_day AS "on", q.part AS id, sum(q.quantity_milli) AS amount FROM postings q LEFT JOIN lots l ON l.id = q.lot
     WHERE q.build = ? AND q.on_day <= ? AND q.part > 0 AND (l.source IS NULL OR l.source <> 'borrowed')
     AND q.account IN ('shelf', 'allocated', 'trial-fitted', 'fitted', 'snug', 'verified', 'lent', 'consumed')
     GROUP BY q.on_day, q.part HAVING amount <> 0 ORDER BY q.on_day`,
    build,
    asOf,
  );

/** Cost recognised by day, in minor units, over the whole build (losses in it). */
export const costByDay = (connection: Connection, build: number, asOf: string): DayDelta[] =>
  all<DayDelta>(
    connection,
    `SELECT on_day AS "on", 0 AS id, sum(amount_minor) AS amount FROM postings
     WHERE build = ? AND on_day <= ? AND account IN ('cost', 'loss') GROUP BY on_day HAVING amount <> 0 ORDER BY on_day`,
    build,
    asOf,
  );

/** Jobs done (+1000) or open again (−1000), by day. */
export const jobsByDay = (connection: Connection, build: number, asOf: string): DayDelta[] =>
  all<DayDelta>(
    connection,
    `SELECT on_day AS "on", subject AS id, sum(quantity_milli) AS amount FROM postings
     WHERE build = ? AND on_day <= ? AND subject_kind = 'job' AND account = 'job-done'
     GROUP BY on_day, subject HAVING amount <> 0 ORDER BY on_day`,
    build,
    asOf,
  );

/** Minutes worked on each job, by day. */
export const minutesByDay = (connection: Connection, build: number, asOf: string): DayDelta[] =>
  all<{ on: string; id: number; amount: number | null }>(
    connection,
    `SELECT on_day AS "on", subject AS id, sum(json_extract(payload, '$.minutes')) AS amount FROM entries e
     WHERE +build = ? AND on_day <= ? AND subject_kind = 'job' AND kind = 'hours'
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) GROUP BY on_day, subject ORDER BY on_day`,
    build,
    asOf,
  ).map(({ on, id, amount }) => ({ on, id, amount: amount ?? 0 }));
