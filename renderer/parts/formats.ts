import { isDate } from '../../core/dates/calendar-date.ts';
import { formatMoney, isCurrency } from '../../core/money/currency.ts';
import { formatQuantity, isUnit } from '../../core/units/quantity.ts';
import type { LocaleSettings } from './locale.tsx';

/** Money as the reader writes it, from whole minor units; a code that no table knows stands beside the bare figure. */
export function moneyText(amountMinor: number, locale: LocaleSettings, currency = locale.currency): string {
  return isCurrency(currency) ? formatMoney(amountMinor, currency, locale.language) : `${amountMinor} ${currency}`;
}

/** A quantity in thousandths of its unit, as the reader writes it; pieces stand without a unit. */
export const quantityText = (quantityMilli: number, locale: LocaleSettings, unit = 'each'): string =>
  isUnit(unit)
    ? formatQuantity(quantityMilli, unit, locale.language)
    : `${formatQuantity(quantityMilli, 'each', locale.language)} ${unit}`;

/** A plain number, grouped the reader's way. */
export const numberText = (value: number, locale: LocaleSettings, decimals = 0): string =>
  new Intl.NumberFormat(locale.language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(value);

const dateFormats = new Map<string, Intl.DateTimeFormat>();

function dateFormat(locale: LocaleSettings): Intl.DateTimeFormat {
  const key = `${locale.language} ${locale.dateForm}`;
  let format = dateFormats.get(key);
  if (format === undefined) {
    const words = locale.dateForm === 'words';
    format = new Intl.DateTimeFormat(locale.language, {
      year: 'numeric',
      month: words ? 'short' : '2-digit',
      day: words ? 'numeric' : '2-digit',
      timeZone: 'UTC',
    });
    dateFormats.set(key, format);
  }
  return format;
}

/** A calendar date (YYYY-MM-DD) as the reader writes it; text that is no date is shown as it is. */
export function dateText(date: string, locale: LocaleSettings): string {
  if (locale.dateForm === 'iso' || !isDate(date)) return date;
  return dateFormat(locale).format(Date.parse(`${date}T00:00:00Z`));
}

/** A calendar month (YYYY-MM) as the reader writes it, short enough for an axis: "Mar 26". */
export function monthText(month: string, locale: LocaleSettings): string {
  if (!isDate(`${month}-01`)) return month;
  const options = { month: 'short', year: '2-digit', timeZone: 'UTC' } as const;
  return new Intl.DateTimeFormat(locale.language, options).format(Date.parse(`${month}-01T00:00:00Z`));
}

/** "1 part", "12 parts": the noun follows the count. */
export const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
