import { isDate } from '../../core/dates/calendar-date.ts';
import { Refusal } from '../../core/refusal.ts';
import type { LocaleSettings } from './locale.tsx';

const monthNames = new Map<string, readonly string[]>();

/** Months as the language and as English shorten them, lower case, without the point that some languages add. */
function monthsIn(language: string): readonly string[] {
  const known = monthNames.get(language);
  if (known !== undefined) return known;
  const format = new Intl.DateTimeFormat(language, { month: 'long', timeZone: 'UTC' });
  const names = Array.from({ length: 12 }, (_, month) => format.format(Date.UTC(2024, month, 1)).toLowerCase());
  monthNames.set(language, names);
  return names;
}

function monthNumber(word: string, language: string): number {
  const typed = word.toLowerCase().replace(/\.$/, '');
  for (const names of [monthsIn(language), monthsIn('en')]) {
    const index = names.findIndex((name) => name.startsWith(typed));
    if (index >= 0) return index + 1;
  }
  return 0;
}

const fullYear = (year: string): string => (year.length === 2 ? `20${year}` : year.padStart(4, '0'));
const two = (text: string | number): string => String(text).padStart(2, '0');

/** Whether the language writes the month before the day, as en-US does. */
function monthFirst(language: string): boolean {
  const parts = new Intl.DateTimeFormat(language).formatToParts(Date.UTC(2024, 0, 31));
  return parts.findIndex(({ type }) => type === 'month') < parts.findIndex(({ type }) => type === 'day');
}

/**
 * Read a typed date: `2026-03-12`, `12 Mar 2026`, `Mar 12 2026`, `12.3.26`, `12/3/2026` in the language's own order,
 * `12 Mar` or `12.3` in the year of `today`, or `today`.
 * @throws Refusal `bad-input` naming the field.
 */
export function parseDateText(text: string, field: string, today: string, locale: LocaleSettings): string {
  const typed = text.trim().replace(/\s+/g, ' ');
  const found = dateIn(typed, today, locale);
  if (found !== null && isDate(found)) return found;
  throw new Refusal('bad-input', `The ${field} “${text}” can't be read as a date. Nothing was changed.`, {
    field,
    accepted: 'a day such as 12 Mar 2026 or 2026-03-12',
  });
}

function dateIn(typed: string, today: string, locale: LocaleSettings): string | null {
  if (typed.toLowerCase() === 'today') return today;
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(typed);
  if (iso !== null) return `${iso[1]}-${two(iso[2] ?? '')}-${two(iso[3] ?? '')}`;

  const dayWord = /^(\d{1,2})\.? ?(\p{L}{3,}\.?)(?:,? ?(\d{4}|\d{2}))?$/u.exec(typed);
  const wordDay = /^(\p{L}{3,}\.?) ?(\d{1,2})(?:,? (\d{4}|\d{2}))?$/u.exec(typed);
  if (dayWord !== null || wordDay !== null) {
    const day = dayWord?.[1] ?? wordDay?.[2] ?? '';
    const month = monthNumber(dayWord?.[2] ?? wordDay?.[1] ?? '', locale.language);
    const year = dayWord?.[3] ?? wordDay?.[3] ?? today.slice(0, 4);
    return `${fullYear(year)}-${two(month)}-${two(day)}`;
  }

  const figures = /^(\d{1,2})[./ ](\d{1,2})(?:[./ ](\d{4}|\d{2}))?\.?$/.exec(typed);
  if (figures === null) return null;
  const slashes = typed.includes('/') && monthFirst(locale.language);
  const [month, day] = slashes ? [figures[1], figures[2]] : [figures[2], figures[1]];
  return `${fullYear(figures[3] ?? today.slice(0, 4))}-${two(month ?? '')}-${two(day ?? '')}`;
}
