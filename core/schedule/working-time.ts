/**
 * When a builder works: windows that repeat every week, and days that differ (off, or with other windows). Work flows
 * from window to window; waits on the clock (a cure, a delivery) run day and night and are plain additions of minutes.
 * Windows hold their first minute and not their last, so work that fills a window ends exactly at its end.
 */
import { dayNumber, requireDate, weekdayOfDayNumber } from '../dates/calendar-date.ts';
import { minutesPerDay } from '../dates/instant.ts';
import { Refusal } from '../refusal.ts';

/** Wall times HH:MM; `to` may be 24:00. A session past midnight is two windows. */
export interface WorkWindow {
  readonly from: string;
  readonly to: string;
}

export interface WeeklyWindow extends WorkWindow {
  /** 1 is Monday, 7 is Sunday. */
  readonly weekday: number;
}

/** A day that replaces its weekday's windows; no windows makes it a day off. */
export interface WorkException {
  readonly date: string;
  readonly windows: readonly WorkWindow[];
}

export interface WorkingTimePlan {
  readonly weekly: readonly WeeklyWindow[];
  readonly exceptions: readonly WorkException[];
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** A checked plan, ready to compute with. */
export interface WorkingTime {
  readonly byWeekday: ReadonlyMap<number, readonly Span[]>;
  /** By day number, which is quicker to count through than dates. */
  readonly byDay: ReadonlyMap<number, readonly Span[]>;
}

/** How far ahead work is looked for before the answer is "no working time". */
const horizonDays = 3653;

/**
 * Checks a plan.
 * @throws Refusal `bad-input` naming the window that can't be read, ends before it begins or overlaps another, the
 * weekday outside 1 to 7, or the exception day entered twice.
 */
export function readWorkingTime(plan: WorkingTimePlan): WorkingTime {
  const byWeekday = new Map<number, readonly Span[]>();
  for (const { weekday } of plan.weekly) {
    if (!Number.isInteger(weekday) || weekday < 1 || weekday > 7) {
      throw refused('weekday', `The weekday ${weekday} does not exist.`, '1 for Monday to 7 for Sunday');
    }
    if (!byWeekday.has(weekday)) {
      byWeekday.set(weekday, readSpans(plan.weekly.filter((window) => window.weekday === weekday)));
    }
  }
  const byDay = new Map<number, readonly Span[]>();
  for (const exception of plan.exceptions) {
    const day = dayNumber(requireDate(exception.date, 'exception day'));
    if (byDay.has(day)) {
      throw refused('exception day', `The exception day ${exception.date} is entered twice.`, 'each day once');
    }
    byDay.set(day, readSpans(exception.windows));
  }
  return { byWeekday, byDay };
}

/** Whether any week or day has a window; without one no work can be dated. */
export function hasWorkingTime(time: WorkingTime): boolean {
  return [...time.byWeekday.values(), ...time.byDay.values()].some((spans) => spans.length > 0);
}

/** Minutes of the longest window from `start` on; 0 without one. What must be done in one sitting fits into it or never. */
export function longestWindow(time: WorkingTime, start: number): number {
  const spans = [
    ...[...time.byWeekday.values()].flat(),
    ...[...time.byDay].flatMap(([day, ofDay]) => ((day + 1) * minutesPerDay > start ? ofDay : [])),
  ];
  return spans.reduce((most, { from, to }) => Math.max(most, to - from), 0);
}

/**
 * When work of `minutes` begins and ends if nothing is done before `start`. Zero minutes end where they start, on the
 * clock. All instants are minutes of wall time.
 * @param oneSitting whether the work must fit into one window.
 * @throws Refusal `bad-input` when no window within ten years is long enough, or there is no working time.
 */
export function placeWork(
  time: WorkingTime,
  start: number,
  minutes: number,
  oneSitting = false,
): { first: number; finish: number } {
  if (minutes === 0) return { first: start, finish: start };
  let left = minutes;
  let first: number | undefined;
  let longest = 0;
  for (const window of windowsFrom(time, start)) {
    const from = Math.max(window.from, start);
    const length = window.to - from;
    longest = Math.max(longest, window.to - window.from);
    if (oneSitting && length < minutes) continue;
    first ??= from;
    if (length >= left) return { first, finish: from + left };
    left -= length;
  }
  if (oneSitting && longest > 0) {
    throw refused(
      'minutes',
      `A sitting of ${showMinutes(minutes)} never fits: the longest window is ${showMinutes(longest)}.`,
      'a shorter sitting, a special session that long, or a job split in two',
    );
  }
  throw refused('working time', 'There is no working time in the next ten years.', 'at least one weekly window');
}

/**
 * When pieces of work of these lengths would each end, all begun at `start`: one walk through the windows for all.
 * Zero minutes end at `start`.
 * @throws Refusal `bad-input` when the longest doesn't end within ten years.
 */
export function workEnds(time: WorkingTime, start: number, lengths: readonly number[]): Map<number, number> {
  const wanted = [...new Set(lengths)].sort((a, b) => a - b);
  const ends = new Map<number, number>();
  let next = 0;
  while ((wanted[next] ?? 1) <= 0) {
    ends.set(wanted[next] ?? 0, start);
    next += 1;
  }
  let done = 0;
  if (next === wanted.length) return ends;
  for (const window of windowsFrom(time, start)) {
    const from = Math.max(window.from, start);
    const held = done + window.to - from;
    for (let length = wanted[next]; length !== undefined && length <= held; length = wanted[next]) {
      ends.set(length, from + length - done);
      next += 1;
    }
    if (next === wanted.length) return ends;
    done = held;
  }
  throw refused('working time', 'There is no working time in the next ten years.', 'at least one weekly window');
}

/** Working minutes from one instant to another. */
export function workingMinutes(time: WorkingTime, from: number, to: number): number {
  let sum = 0;
  for (const window of windowsFrom(time, from)) {
    if (window.from >= to) break;
    sum += Math.min(window.to, to) - Math.max(window.from, from);
  }
  return sum;
}

/** A length of time as people say it: "6 h", "2 h 30 min", "45 min". */
export function showMinutes(minutes: number): string {
  const hours = Math.trunc(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** The windows not over at `start`, in order, for ten years. */
export function* windowsFrom(time: WorkingTime, start: number): Generator<Span> {
  const today = Math.floor(start / minutesPerDay);
  for (let day = today; day < today + horizonDays; day += 1) {
    const begin = day * minutesPerDay;
    for (const span of time.byDay.get(day) ?? time.byWeekday.get(weekdayOfDayNumber(day)) ?? []) {
      const window = { from: begin + span.from, to: begin + span.to };
      if (window.to > start) yield window;
    }
  }
}

function readSpans(windows: readonly WorkWindow[]): Span[] {
  const spans = windows.map((window) => {
    const span = { from: readTime(window.from), to: readTime(window.to) };
    if (span.from >= span.to) {
      throw refused(
        'window',
        `The window ${window.from}–${window.to} ends before it begins.`,
        'an end after the start',
      );
    }
    return span;
  });
  spans.sort((a, b) => a.from - b.from);
  spans.forEach((span, index) => {
    const next = spans[index + 1];
    if (next !== undefined && next.from < span.to) {
      throw refused('window', 'Two windows of one day overlap.', 'windows that end before the next begins');
    }
  });
  return spans;
}

function readTime(text: string): number {
  const match = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text);
  if (text === '24:00') return minutesPerDay;
  if (match === null) throw refused('window', `The time “${text}” can't be read.`, 'a time HH:MM from 00:00 to 24:00');
  return Number(match[1]) * 60 + Number(match[2]);
}

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}
