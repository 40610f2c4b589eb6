/**
 * Calendar days as ISO 8601 text, YYYY-MM-DD, without a time of day or a zone. Such texts sort as they stand. Nothing
 * here knows what day it is: today is always handed in.
 */
import { Refusal } from '../refusal.ts';

const dayLength = 86_400_000;
export const firstYear = 1900;
export const lastYear = 2199;

/** Whether `text` is a real calendar day from 1900-01-01 to 2199-12-31 written YYYY-MM-DD. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const year = Number(text.slice(0, 4));
  if (year < firstYear || year > lastYear) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  // A day past the month's end is either refused by the platform or rolled into the next month.
  return !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
}

/**
 * Hands a valid date back.
 * @throws Refusal `bad-input` naming the field.
 */
export function requireDate(text: string, field: string): string {
  if (!isDate(text)) {
    throw new Refusal('bad-input', `The ${field} “${text}” is not a calendar day. Nothing was changed.`, {
      field,
      accepted: `a day written YYYY-MM-DD from ${firstYear}-01-01 to ${lastYear}-12-31, such as 2026-03-02`,
    });
  }
  return text;
}

/** Days since 1970-01-01; negative before it. @throws Refusal `bad-input` when the text isn't a date. */
export function dayNumber(date: string): number {
  requireDate(date, 'date');
  return Date.parse(`${date}T00:00:00Z`) / dayLength;
}

/** The date of a day number. @throws Refusal `bad-input` outside 1900 to 2199. */
export function dateOfDayNumber(day: number): string {
  const time = new Date(day * dayLength);
  const text = Number.isNaN(time.getTime()) ? `day ${day}` : time.toISOString().slice(0, 10);
  return requireDate(text, 'date');
}

/** Days from `from` to `to`: 0 on the same day, negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** The day `days` later (earlier when negative). @throws Refusal `bad-input` outside 1900 to 2199. */
export function addDays(date: string, days: number): string {
  return dateOfDayNumber(dayNumber(date) + days);
}

/** ISO 8601 weekday: 1 is Monday, 7 is Sunday. */
export function weekdayOf(date: string): number {
  return weekdayOfDayNumber(dayNumber(date));
}

/** ISO 8601 weekday of a day number. */
export function weekdayOfDayNumber(day: number): number {
  // Day 0 of the count, 1970-01-01, was a Thursday.
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** The calendar month of a date, YYYY-MM. */
export function monthOf(date: string): string {
  return requireDate(date, 'date').slice(0, 7);
}

/** Every calendar month touched from `from` to `to`, both included, in order; empty when `to` is earlier. */
export function monthsBetween(from: string, to: string): string[] {
  const months: string[] = [];
  let [year, month] = [Number(monthOf(from).slice(0, 4)), Number(from.slice(5, 7))];
  const last = monthOf(to);
  for (;;) {
    const text = `${year}-${month.toString().padStart(2, '0')}`;
    if (text > last) return months;
    months.push(text);
    month += 1;
    if (month === 13) [year, month] = [year + 1, 1];
  }
}

/** The last day of the month a date lies in. */
export function lastDayOfMonth(date: string): string {
  const year = Number(monthOf(date).slice(0, 4));
  return new Date(Date.UTC(year, Number(date.slice(5, 7)), 0)).toISOString().slice(0, 10);
}

/** Order of two dates for sorting: negative when `a` is earlier. */
export function compareDates(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
