import { Refusal } from '../../core/refusal.ts';
import { clockOf, weekdays } from './week-windows.ts';

interface Hours {
  readonly from: string;
  readonly to: string;
}

interface WeekHours extends Hours {
  /** 1 is Monday, 7 is Sunday. */
  readonly weekday: number;
}

function readHours(text: string, field: string, accepted: string): Hours {
  const [from, to, ...more] = text.split(/\s*(?:–|-|to)\s*/).map(clockOf);
  if (from != null && to != null && more.length === 0 && from < to) return { from, to };
  throw new Refusal('bad-input', `“${text}” is no stretch of a day. Nothing was changed.`, { field, accepted });
}

const pieces = (text: string): string[] =>
  text
    .split(/[,;\n]/)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');

/** The hours of a day as typed: "9-12, 13:30-17". @throws Refusal naming the piece that can't be read. */
export const readDayHours = (text: string, field: string): Hours[] =>
  pieces(text).map((piece) => readHours(piece, field, 'hours such as 9-12, 13:30-17'));

/** The hours of a week as typed: "Tue 18:30-21, Sat 9-15". @throws Refusal naming the piece that can't be read. */
export function readWeekHours(text: string, field: string): WeekHours[] {
  const accepted = 'days and hours such as Tue 18:30-21, Sat 9-15';
  return pieces(text).map((piece) => {
    const [, name = '', hours = ''] = /^([a-z]+)\.?\s+(.+)$/i.exec(piece) ?? [];
    const weekday =
      weekdays.findIndex(({ label }) => name.length >= 2 && label.toLowerCase().startsWith(name.toLowerCase())) + 1;
    if (weekday > 0) return { weekday, ...readHours(hours, field, accepted) };
    throw new Refusal('bad-input', `“${piece}” names no day of the week with hours. Nothing was changed.`, {
      field,
      accepted,
    });
  });
}

/** "09:00–12:00, 13:30–17:00". */
export const dayHoursText = (hours: readonly Hours[]): string =>
  hours.map(({ from, to }) => `${from}–${to}`).join(', ');

/** "Tue 18:30–21:00, Sat 09:00–15:00". */
export const weekHoursText = (hours: readonly WeekHours[]): string =>
  hours.map(({ weekday, from, to }) => `${weekdays[weekday - 1]?.label.slice(0, 3) ?? ''} ${from}–${to}`).join(', ');
