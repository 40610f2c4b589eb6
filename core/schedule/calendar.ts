/**
 * When each of several people works: their own week, or the week of the settings, and days that are otherwise (off, or
 * with other hours). All of it is wall time, so that an evening at half past six stays one when the clocks change.
 */
import { dateOfDayNumber, dayNumber, weekdayOfDayNumber } from '../dates/calendar-date.ts';
import { minutesPerDay } from '../dates/instant.ts';
import { readWorkingTime, type WeeklyWindow, type WorkingTime, type WorkWindow } from './working-time.ts';

/** Days from `on` to `until`, both counted, that are otherwise than the week says; no windows means off. */
export interface CalendarRange {
  readonly on: string;
  /** Null: the one day. */
  readonly until: string | null;
  /** Whose days; null = everybody's. */
  readonly person: string | null;
  readonly windows: readonly WorkWindow[];
}

export interface CalendarPlan {
  /** The week of who has none of their own. */
  readonly weekly: readonly WeeklyWindow[];
  readonly people: readonly { readonly id: string; readonly name: string; readonly weekly: readonly WeeklyWindow[] }[];
  readonly days: readonly CalendarRange[];
}

export interface WorkingPerson {
  readonly id: string;
  readonly name: string;
  readonly time: WorkingTime;
}

/**
 * The people with their working time. What is said of one person goes before what is said of everybody, and of two that
 * say the same day, the later one goes.
 * @throws Refusal `bad-input` as `readWorkingTime` does.
 */
export function peopleTimes({ weekly, people, days }: CalendarPlan): WorkingPerson[] {
  const shared = days.filter(({ person }) => person === null);
  return people.map(({ id, name, weekly: own }) => {
    const windows = new Map<string, readonly WorkWindow[]>();
    for (const range of [...shared, ...days.filter(({ person }) => person === id)]) {
      const last = dayNumber(range.until ?? range.on);
      for (let day = dayNumber(range.on); day <= last; day += 1) windows.set(dateOfDayNumber(day), range.windows);
    }
    const exceptions = [...windows].map(([date, ofDay]) => ({ date, windows: ofDay }));
    return { id, name, time: readWorkingTime({ weekly: own.length > 0 ? own : weekly, exceptions }) };
  });
}

type Spans = readonly { readonly from: number; readonly to: number }[];

function joined(lists: readonly Spans[]): Spans {
  const spans = lists.flat().sort((a, b) => a.from - b.from || a.to - b.to);
  const result: { from: number; to: number }[] = [];
  for (const { from, to } of spans) {
    const last = result.at(-1);
    // Spans that touch stay apart, as windows of one person do.
    if (last !== undefined && from < last.to) last.to = Math.max(last.to, to);
    else result.push({ from, to });
  }
  return result;
}

/** When at least one of the people works: the hours of a shop with one bench. */
export function togetherTime(people: readonly WorkingPerson[]): WorkingTime {
  const [only] = people;
  if (only !== undefined && people.length === 1) return only.time;
  const times = people.map(({ time }) => time);
  const weekdays = [1, 2, 3, 4, 5, 6, 7];
  const days = new Set(times.flatMap(({ byDay }) => [...byDay.keys()]));
  return {
    byWeekday: new Map(weekdays.map((day) => [day, joined(times.map(({ byWeekday }) => byWeekday.get(day) ?? []))])),
    byDay: new Map(
      [...days].map((day) => [
        day,
        joined(times.map(({ byDay, byWeekday }) => byDay.get(day) ?? byWeekday.get(weekdayOfDayNumber(day)) ?? [])),
      ]),
    ),
  };
}

/** Whether every minute of the narrow hours is one of the wide ones, on each day, and every window lies within one. */
export function isWider(wide: WorkingTime, narrow: WorkingTime): boolean {
  const within = (inner: Spans, outer: Spans): boolean =>
    inner.every(({ from, to }) => outer.some((span) => span.from <= from && to <= span.to));
  const days = new Set([...wide.byDay.keys(), ...narrow.byDay.keys()]);
  const ofDay = ({ byDay, byWeekday }: WorkingTime, day: number): Spans =>
    byDay.get(day) ?? byWeekday.get(weekdayOfDayNumber(day)) ?? [];
  return (
    [...narrow.byWeekday].every(([weekday, spans]) => within(spans, wide.byWeekday.get(weekday) ?? [])) &&
    [...days].every((day) => within(ofDay(narrow, day), ofDay(wide, day)))
  );
}

/** Whether somebody has a window that ends at midnight: work that fills it is done on the day that ends there. */
export function worksToMidnight(people: readonly WorkingPerson[]): boolean {
  return people.some(({ time }) =>
    [...time.byWeekday.values(), ...time.byDay.values()].some((spans) => spans.some(({ to }) => to === minutesPerDay)),
  );
}
