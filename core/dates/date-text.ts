/**
 * Dates as people write them. ISO 8601 first (calendar, basic and week dates), then dates with a month's name, then three
 * numbers, then spreadsheet serial days. 03/04/26 can be read two ways and is reported as such: the order of day and
 * month is a matter for the whole column (date-column.ts) or for the person who types.
 */
import { Refusal } from '../refusal.ts';
import { addDays, isDate, weekdayOf } from './calendar-date.ts';
import { isWeekdayName, monthOfName } from './month-names.ts';

export type DateOrder = 'day-first' | 'month-first';

export type DateReading =
  | { readonly kind: 'blank' }
  /** `proves`: the order that this text gives away. `time` is hh:mm as written; a zone is not converted. */
  | {
      readonly kind: 'date';
      readonly date: string;
      readonly time?: string;
      readonly proves: DateOrder | null;
    }
  | { readonly kind: 'ambiguous'; readonly dayFirst: string; readonly monthFirst: string }
  | {
      readonly kind: 'error';
      /** not-a-date: words or numbers that mean something else; no-such-day: a date that the calendar doesn't have. */
      readonly reason: 'not-a-date' | 'no-such-day' | 'order';
      readonly message: string;
      readonly accepted: string;
    };

export interface DateTextOptions {
  readonly order?: DateOrder;
  /** Reads bare numbers: 20260304 as a basic date, 20 000 to 80 000 as serial days. Off unless the column is dates. */
  readonly bareNumbers?: '1900' | '1904';
}

const acceptedDates = 'a date such as 2026-03-04, 4 Mar 2026 or Mar 4, 2026';

const timePattern = /[T ]+(\d{1,2}):(\d{2})(?::\d{2}(?:[.,]\d+)?)?\s*([ap]m)?\s*(?:Z|[+-]\d{2}:?\d{2})?$/i;

/** Reads one date. Two-digit years: 00 to 68 are 20xx, 69 to 99 are 19xx (the rule of POSIX, from memory). */
export function parseDateText(text: string, options: DateTextOptions = {}): DateReading {
  const trimmed = text.replace(/[\s\u00a0\u202f]+/g, ' ').trim();
  if (trimmed === '') return { kind: 'blank' };
  if (trimmed.length > 60) return notADate(`${trimmed.slice(0, 40)}…`);
  const timed = timePattern.exec(trimmed);
  const time = timed === null ? undefined : readTime(timed);
  if (time === null) return notADate(trimmed);
  const day = timed === null ? trimmed : trimmed.slice(0, timed.index).trim();
  const reading =
    readIso(day) ?? readNamed(day) ?? readTriplet(day, options.order) ?? readBare(day, options.bareNumbers);
  if (reading === null) return notADate(trimmed);
  return reading.kind === 'date' && time !== undefined ? { ...reading, time } : reading;
}

function readTime(match: RegExpExecArray): string | null {
  let hour = Number(match[1]);
  const half = match[3]?.toLowerCase();
  if (half !== undefined && (hour < 1 || hour > 12)) return null;
  if (half === 'pm' && hour < 12) hour += 12;
  if (half === 'am' && hour === 12) hour = 0;
  if (hour > 23 || Number(match[2]) > 59) return null;
  return `${String(hour).padStart(2, '0')}:${match[2]}`;
}

function readIso(text: string): DateReading | null {
  const calendar = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})\.?$/.exec(text);
  if (calendar !== null) return dayOf(text, Number(calendar[1]), Number(calendar[3]), Number(calendar[4]), null);
  const week = /^(\d{4})-?W(\d{2})-?([1-7])$/.exec(text);
  if (week === null) return null;
  const year = Number(week[1]);
  // Week 1 is the week of 4 January.
  const fourth = `${week[1]}-01-04`;
  const number = Number(week[2]);
  if (!isDate(fourth) || number < 1 || number > weeksOf(year)) return noSuchDay(text);
  return found(addDays(fourth, 1 - weekdayOf(fourth) + (number - 1) * 7 + Number(week[3]) - 1), null, text);
}

/** A year has 53 ISO weeks when it begins on a Thursday, or on a Wednesday in a leap year. */
function weeksOf(year: number): number {
  const first = weekdayOf(`${year}-01-01`);
  const leap = isDate(`${year}-02-29`);
  return first === 4 || (leap && first === 3) ? 53 : 52;
}

function readNamed(text: string): DateReading | null {
  const words = text
    .split(/[\s,/-]+|\.(?=\p{L})/u)
    .map((word) => word.replace(/^(\d{1,2})(?:st|nd|rd|th|\.|er)$/i, '$1').replace(/\.$/, ''))
    .filter((word) => word !== '' && !/^(?:of|the|de|den|le|del)$/i.test(word));
  const kept = words.length === 4 && isWeekdayName(words[0] ?? '') ? words.slice(1) : words;
  const [first, second, third] = kept;
  if (kept.length !== 3 || first === undefined || second === undefined || third === undefined) return null;
  const [day, month, year] = /^\p{L}/u.test(first)
    ? [second, monthOfName(first), third]
    : /^\d{4}$/.test(first)
      ? [third, monthOfName(second), first]
      : [first, monthOfName(second), third];
  if (month === null || !/^\d{1,2}$/.test(day) || !/^'?(?:\d{2}|\d{4})$/.test(year)) return null;
  return dayOf(text, fullYear(year.replace("'", '')), month, Number(day), null);
}

function readTriplet(text: string, order: DateOrder | undefined): DateReading | null {
  const match = /^(\d{1,2}) ?([-/.]) ?(\d{1,2}) ?\2 ?(\d{4}|\d{2})\.?$/.exec(text);
  if (match === null) return null;
  const [a, b, year] = [Number(match[1]), Number(match[3]), fullYear(match[4] ?? '')];
  if (a > 12 && b > 12) return noSuchDay(text);
  const proves: DateOrder | null = a > 12 ? 'day-first' : b > 12 ? 'month-first' : null;
  if (proves === null && a !== b) {
    const dayFirst = dayOf(text, year, b, a, null);
    const monthFirst = dayOf(text, year, a, b, null);
    if (order !== undefined) return order === 'day-first' ? dayFirst : monthFirst;
    if (dayFirst.kind === 'date' && monthFirst.kind === 'date') {
      return { kind: 'ambiguous', dayFirst: dayFirst.date, monthFirst: monthFirst.date };
    }
    return noSuchDay(text);
  }
  if (proves !== null && order !== undefined && proves !== order) {
    return {
      kind: 'error',
      reason: 'order',
      message: `“${text}” has no such day when read ${order === 'day-first' ? 'day first' : 'month first'}.`,
      accepted: acceptedDates,
    };
  }
  return proves === 'day-first' ? dayOf(text, year, b, a, proves) : dayOf(text, year, a, b, proves);
}

function readBare(text: string, system: '1900' | '1904' | undefined): DateReading | null {
  if (system === undefined) return null;
  const basic = /^((?:19|20|21)\d{2})(\d{2})(\d{2})$/.exec(text);
  if (basic !== null) return dayOf(text, Number(basic[1]), Number(basic[2]), Number(basic[3]), null);
  const serial = /^(\d{5})(?:\.\d+)?$/.exec(text);
  const days = Number(serial?.[1]);
  if (serial === null || days < 20_000 || days > 80_000) return null;
  // Serial 61 of the 1900 system is 1 March 1900: counting from 30 December 1899 steps over its day 60, which never was.
  return found(system === '1904' ? addDays('1904-01-01', days) : addDays('1900-03-01', days - 61), null, text);
}

function fullYear(text: string): number {
  const year = Number(text);
  return text.length > 2 ? year : year <= 68 ? 2000 + year : 1900 + year;
}

function dayOf(text: string, year: number, month: number, day: number, proves: DateOrder | null): DateReading {
  const pad = (value: number, width: number) => String(value).padStart(width, '0');
  return found(`${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`, proves, text);
}

function found(date: string, proves: DateOrder | null, text: string): DateReading {
  return isDate(date) ? { kind: 'date', date, proves } : noSuchDay(text);
}

function noSuchDay(text: string): DateReading {
  return { kind: 'error', reason: 'no-such-day', message: `“${text}”: there is no such day.`, accepted: acceptedDates };
}

function notADate(text: string): DateReading {
  return { kind: 'error', reason: 'not-a-date', message: `“${text}” is not a date.`, accepted: acceptedDates };
}

/**
 * Reads a date somebody types into a field.
 * @param order how this person writes three numbers, as shown beside the field.
 * @returns YYYY-MM-DD, or null for an empty field.
 * @throws Refusal `bad-input` naming the field and what it accepts.
 */
export function parseTypedDate(text: string, order: DateOrder, field = 'date'): string | null {
  const reading = parseDateText(text, { order });
  if (reading.kind === 'blank') return null;
  const accepted = `${acceptedDates}, or three numbers with the ${order === 'day-first' ? 'day' : 'month'} first`;
  if (reading.kind !== 'date') {
    const reason = reading.kind === 'error' ? reading.message : `“${text.trim()}” is not a date.`;
    throw new Refusal('bad-input', `The ${field} can't be read: ${reason} Nothing was changed.`, { field, accepted });
  }
  return reading.date;
}
