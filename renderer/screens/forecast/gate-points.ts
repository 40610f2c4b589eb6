import { dayNumber } from '../../../core/dates/calendar-date.ts';
import type { ForecastAnswer } from '../../../core/forecast/view.ts';

/** The share of runs that have reached the gate by the end of a day. */
export interface GatePoint {
  readonly on: string;
  readonly day: number;
  readonly runs: number;
  readonly share: number;
}

type Gate = ForecastAnswer['gates'][number];

/** Days and the runs that they add, summed up; rising to 1. */
export function cumulative(runsByDay: Gate['runsByDay']): readonly GatePoint[] {
  const all = runsByDay.reduce((sum, { runs }) => sum + runs, 0);
  let reached = 0;
  return runsByDay.map(({ on, runs }) => {
    reached += runs;
    return { on, day: dayNumber(on), runs, share: reached / all };
  });
}

export interface GateMark {
  readonly name: string;
  readonly on: string;
  readonly share: number;
}

/** The days that are named in the picture. */
export const marksOf = ({ p10On, p50On, p80On, p90On }: Gate): readonly GateMark[] => [
  { name: 'P10', on: p10On, share: 0.1 },
  { name: 'P50', on: p50On, share: 0.5 },
  { name: 'P80', on: p80On, share: 0.8 },
  { name: 'P90', on: p90On, share: 0.9 },
];

/** Runs that come later than this share lie beyond the right edge: a few very late ones would press all others together. */
const shownShare = 0.95;

/** The days that the picture covers: from today, or before it on a past day, to where nearly all runs are in. */
export function shownDays(points: readonly GatePoint[], today: string): readonly [number, number] {
  const first = Math.min(dayNumber(today), points[0]?.day ?? dayNumber(today));
  const last = points.find(({ share }) => share >= shownShare)?.day ?? points.at(-1)?.day ?? first;
  return [first, Math.max(last + Math.ceil((last - first) * 0.06), first + 7)];
}

/** The first days of months, or where there are too few of them, days evenly apart. */
export function dayMarks(from: number, to: number, months: readonly number[]): readonly number[] {
  if (months.length >= 3) return months;
  const step = Math.max(1, Math.ceil((to - from) / 5));
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);
}

/** At most about `most` points of a curve, for drawing: steps too small to be seen are left out. */
export function thinned(points: readonly GatePoint[], most: number): readonly GatePoint[] {
  if (points.length <= most) return points;
  let last = -1;
  return points.filter(({ share }, index) => {
    const kept = share - last >= 1 / most || index === points.length - 1;
    if (kept) last = share;
    return kept;
  });
}
