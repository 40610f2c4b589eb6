import type { KeptForecast } from '../../contract/forecast.ts';
import { all, type Connection, first } from './connection.ts';

type Said = Pick<KeptForecast, 'runs' | 'seed' | 'gates'>;

/** What was done between two days, the first not counted, the last counted. */
function doneBetween(connection: Connection, build: number, from: string, to: string): KeptForecast['since'] {
  const row = first<{ jobs: number; parts: number }>(
    connection,
    `SELECT count(DISTINCT CASE WHEN kind = 'job-done' THEN subject END) AS jobs,
     count(DISTINCT CASE WHEN kind IN ('received', 'over-delivered', 'came-in') THEN part END) AS parts FROM entries e
     WHERE e.build = ? AND e.on_day > ? AND e.on_day <= ? AND e.kind IN ('job-done', 'received', 'over-delivered', 'came-in')
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq)`,
    build,
    from,
    to,
  );
  return { jobsDone: row?.jobs ?? 0, partsReceived: row?.parts ?? 0 };
}

/** The forecasts of a build that were kept and not taken back, up to a day, in order of their days. */
export function keptForecasts(connection: Connection, build: number, until: string): KeptForecast[] {
  const rows = all<{ seq: number; act: number; on: string; payload: string }>(
    connection,
    `SELECT seq, act, on_day AS "on", payload FROM entries e WHERE +build = ? AND kind = 'forecast-kept' AND on_day <= ?
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY on_day, seq`,
    build,
    until,
  );
  return rows.map(({ seq, act, on, payload }, index) => {
    const { runs, seed, gates } = JSON.parse(payload) as Said;
    const before = rows[index - 1];
    const since = before === undefined ? null : doneBetween(connection, build, before.on, on);
    return { seq, act, on, runs, seed, gates, since };
  });
}
