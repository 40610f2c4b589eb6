import type { z } from 'zod';
import type { progressPoint } from '../../contract/plan.ts';
import { type JobDelta, jobSeries, type PartDelta, progressSeries } from '../../progress/series.ts';
import { ratioOf } from '../../progress/share.ts';
import { isUnit } from '../../units/quantity.ts';
import { all, type Connection } from './connection.ts';

type ProgressPoint = z.infer<typeof progressPoint>;

const received = ['inspection', 'shelf', 'allocated', 'trial-fitted', 'fitted', 'snug', 'verified', 'lent'];
const fitted = new Set(['fitted', 'snug', 'verified']);
const valued = ['cost', 'loss', 'commitment', 'remaining'];

/** What changed on each part line on each day. Borrowed units are nobody's progress and are left out. */
function partDeltas(connection: Connection, build: number, asOf: string): PartDelta[] {
  return all<{ on_day: string; part: number; unit: string; account: string; quantity: number; amount: number }>(
    connection,
    `SELECT q.on_day, q.part, p.unit, q.account, sum(q.quantity_milli) AS quantity, sum(q.amount_minor) AS amount
     FROM postings q JOIN parts p ON p.id = q.part LEFT JOIN lots l ON l.id = q.lot
     WHERE q.build = ? AND q.on_day <= ? AND p.gone = 0 AND p.retired_on IS NULL AND p.optional = 0
     AND (l.source IS NULL OR l.source <> 'borrowed')
     AND q.account IN (SELECT value FROM json_each(?)) GROUP BY q.on_day, q.part, q.account ORDER BY q.on_day`,
    build,
    asOf,
    JSON.stringify(['need', ...received, ...valued]),
  ).map(
    (row): PartDelta => ({
      on: row.on_day,
      lineId: row.part,
      unit: isUnit(row.unit) ? row.unit : 'each',
      ...(row.account === 'need' ? { needMilli: row.quantity } : {}),
      ...(received.includes(row.account) ? { receivedMilli: row.quantity } : {}),
      ...(fitted.has(row.account) ? { fittedMilli: row.quantity } : {}),
      ...(row.account === 'verified' ? { verifiedMilli: row.quantity } : {}),
      ...(valued.includes(row.account) ? { valueMinor: row.amount } : {}),
    }),
  );
}

function jobDeltas(connection: Connection, build: number, asOf: string): JobDelta[] {
  return all<{ on_day: string; subject: number; account: string; quantity: number; minutes: number | null }>(
    connection,
    `SELECT q.on_day, q.subject, q.account, sum(q.quantity_milli) AS quantity, j.minutes_guess AS minutes
     FROM postings q JOIN jobs j ON j.id = q.subject WHERE q.build = ? AND q.subject_kind = 'job' AND q.on_day <= ?
     AND q.account IN ('job-planned', 'job-done') GROUP BY q.on_day, q.subject, q.account ORDER BY q.on_day`,
    build,
    asOf,
  ).map(
    ({ on_day, subject, account, quantity, minutes }): JobDelta => ({
      on: on_day,
      jobId: subject,
      ...(account === 'job-planned'
        ? { planned: quantity / 1000, workMinutes: (minutes ?? 0) * (quantity / 1000) }
        : { done: quantity / 1000 }),
    }),
  );
}

/** Progress of a build over time: a point for each day on which anything changed, each holding all measures. */
export function progressOverTime(connection: Connection, build: number, asOf: string): ProgressPoint[] {
  const parts = partDeltas(connection, build, asOf);
  const byLine = new Map(progressSeries(parts, 'line').map((point) => [point.on, point]));
  const byValue = new Map(progressSeries(parts, 'value').map((point) => [point.on, point]));
  const jobs = new Map(jobSeries(jobDeltas(connection, build, asOf)).map((point) => [point.on, point]));
  const days = [...new Set([...byLine.keys(), ...jobs.keys()])].sort();
  let last: ProgressPoint = {
    on: '',
    jobsByCount: null,
    jobsByWeight: null,
    receivedByLine: null,
    receivedByValue: null,
    fittedByLine: null,
  };
  return days.map((on) => {
    const line = byLine.get(on);
    const value = byValue.get(on);
    const job = jobs.get(on);
    last = {
      on,
      jobsByCount: job === undefined ? last.jobsByCount : ratioOf(job.byCount),
      jobsByWeight: job === undefined ? last.jobsByWeight : ratioOf(job.byWork),
      receivedByLine: line === undefined ? last.receivedByLine : ratioOf(line.received),
      receivedByValue: value === undefined ? last.receivedByValue : ratioOf(value.received),
      fittedByLine: line === undefined ? last.fittedByLine : ratioOf(line.fitted),
    };
    return last;
  });
}
