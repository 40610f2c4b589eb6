/**
 * Instants in local wall time, to the minute: text YYYY-MM-DDTHH:MM outside, whole minutes since 1970-01-01T00:00
 * inside (names end in `Minute`). No zone is involved; a clock change shifts nothing here.
 */
import { Refusal } from '../refusal.ts';
import { dateOfDayNumber, dayNumber, isDate } from './calendar-date.ts';

export const minutesPerDay = 1440;

/**
 * Reads a wall time such as "2026-03-02T08:00" into minutes.
 * @throws Refusal `bad-input` naming the field.
 */
export function parseInstant(text: string, field = 'time'): number {
  const date = text.slice(0, 10);
  const match = /^T([01]\d|2[0-3]):([0-5]\d)$/.exec(text.slice(10));
  if (match === null || !isDate(date)) {
    throw new Refusal('bad-input', `The ${field} “${text}” is not a day and time. Nothing was changed.`, {
      field,
      accepted: 'a day and time written YYYY-MM-DDTHH:MM, such as 2026-03-02T08:00',
    });
  }
  return startOfDay(date) + Number(match[1]) * 60 + Number(match[2]);
}

/** The minute a day begins at. */
export function startOfDay(date: string): number {
  return dayNumber(date) * minutesPerDay;
}

/** The wall time of a minute, YYYY-MM-DDTHH:MM. */
export function formatInstant(minute: number): string {
  const day = Math.floor(minute / minutesPerDay);
  const rest = minute - day * minutesPerDay;
  const hours = Math.trunc(rest / 60)
    .toString()
    .padStart(2, '0');
  return `${dateOfDayNumber(day)}T${hours}:${(rest % 60).toString().padStart(2, '0')}`;
}

/** The day a minute lies in. */
export function dateOfMinute(minute: number): string {
  return dateOfDayNumber(Math.floor(minute / minutesPerDay));
}
