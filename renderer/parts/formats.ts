import { isDate } from '../../core/dates/calendar-date.ts';
import { formatMoney, isCurrency, minorDigits } from '../../core/money/currency.ts';
import { extraPriceDigits } from '../../core/money/line-value.ts';
import { formatQuantity, isUnit } from '../../core/units/quantity.ts';
import type { LocaleSettings } from './locale.tsx';

/** Money as the reader writes it, from whole minor units; a code that no table knows stands beside the bare figure. */
export function moneyText(amountMinor: number, locale: LocaleSettings, currency = locale.currency): string {
  return isCurrency(currency) ? formatMoney(amountMinor, currency, locale.language) : `${amountMinor} ${currency}`;
}

/** A price each in 1/10 000 of a minor unit as plain decimal text: the currency's own decimals, and more if it has them. */
export function plainUnitPrice(priceE4: number, currency: string): string {
  const places = minorDigits(currency);
  const digits = String(priceE4).padStart(places + extraPriceDigits + 1, '0');
  const point = digits.length - places - extraPriceDigits;
  const beyond = digits.slice(point + places).replace(/0+$/, '');
  const decimals = digits.slice(point, point + places) + beyond;
  return decimals === '' ? digits.slice(0, point) : `${digits.slice(0, point)}.${decimals}`;
}

/** A price each as the reader writes it, to the last place that it has. */
export function unitPriceText(priceE4: number, locale: LocaleSettings, currency = locale.currency): string {
  const places = minorDigits(currency);
  return new Intl.NumberFormat(locale.language, {
    style: 'currency',
    currency,
    minimumFractionDigits: places,
    maximumFractionDigits: places + extraPriceDigits,
  }).format(plainUnitPrice(priceE4, currency) as Intl.StringNumericLiteral);
}

/** A quantity in thousandths of its unit, as the reader writes it; pieces stand without a unit. */
export const quantityText = (quantityMilli: number, locale: LocaleSettings, unit = 'each'): string =>
  isUnit(unit)
    ? formatQuantity(quantityMilli, unit, locale.language)
    : `${formatQuantity(quantityMilli, 'each', locale.language)} ${unit}`.trim();

/** A plain number, grouped the reader's way. */
export const numberText = (value: number, locale: LocaleSettings, decimals = 0): string =>
  new Intl.NumberFormat(locale.language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(value);

// The interface is in English, so months are too, whatever marks the figures have.
const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** A calendar date (YYYY-MM-DD) as the workbook's settings have it; text that is no date is shown as it is. */
export function dateText(date: string, locale: Pick<LocaleSettings, 'dateForm'>): string {
  if (!isDate(date)) return date;
  const [year = '', month = '', day = ''] = date.split('-');
  switch (locale.dateForm) {
    case 'yyyy-mm-dd':
      return date;
    case 'dd/mm/yyyy':
      return `${day}/${month}/${year}`;
    case 'mm/dd/yyyy':
      return `${month}/${day}/${year}`;
    default:
      return `${Number(day)} ${months[Number(month) - 1]} ${year}`;
  }
}

const twoDigits = (number: number): string => String(number).padStart(2, '0');

/** An instant by the clock of this machine: "12 Mar 2026 18:20"; text that is none is shown as it is. */
export function instantText(instant: string, locale: Pick<LocaleSettings, 'dateForm'>): string {
  const at = new Date(instant);
  if (Number.isNaN(at.getTime())) return instant;
  const day = `${at.getFullYear()}-${twoDigits(at.getMonth() + 1)}-${twoDigits(at.getDate())}`;
  return `${dateText(day, locale)} ${twoDigits(at.getHours())}:${twoDigits(at.getMinutes())}`;
}

/** A calendar month (YYYY-MM) short enough for an axis: "Mar 26". */
export function monthText(month: string): string {
  const [year = '', number = ''] = month.split('-');
  const name = months[Number(number) - 1];
  return name === undefined ? month : `${name} ${year.slice(2)}`;
}

/** "1 part", "12 parts": the noun follows the count. */
export const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
