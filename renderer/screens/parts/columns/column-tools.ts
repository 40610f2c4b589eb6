import type { PartRow, PartValues } from '../../../../core/contract/parts.ts';
import { parseTypedDate } from '../../../../core/dates/date-text.ts';
import { minorDigits } from '../../../../core/money/currency.ts';
import { dateText, moneyText, quantityText } from '../../../parts/formats.ts';
import type { LocaleSettings } from '../../../parts/locale.tsx';
import type { SheetColumn } from '../../../parts/sheet/sheet-types.ts';
import { sumOf } from './row-figures.ts';

export type PartColumn = SheetColumn<PartRow>;

/** How cells are stored. Both reject with a refusal that the cell shows, having changed nothing. */
export interface CellActs {
  /** False while nothing may be changed: a past day is shown. */
  readonly allowed: () => boolean;
  readonly save: (
    row: PartRow,
    values: Partial<PartValues>,
    typed: string,
    shown: (row: PartRow) => string,
  ) => Promise<void>;
  readonly putInBin: (row: PartRow, bin: number | null) => Promise<void>;
}

/** The choice that stands for none. */
export const noneWord = 'None';

/** A quantity column; nothing is shown for zero, so that what is there stands out. */
export function quantityColumn(
  key: string,
  title: string,
  milli: (row: PartRow) => number,
  locale: LocaleSettings,
): PartColumn {
  return {
    key,
    title,
    kind: 'quantity',
    width: Math.max(100, 46 + 7 * title.length),
    value: (row) => milli(row) || null,
    text: (row) => (milli(row) === 0 ? '' : quantityText(milli(row), locale, row.unit)),
    filter: { kind: 'range', digits: 3, accepted: 'a quantity such as 8 or 2.5' },
    searched: false,
  };
}

/** A money column in the workbook's currency, summed for groups and at the foot. */
export function moneyColumn(
  key: string,
  title: string,
  minor: (row: PartRow) => number,
  locale: LocaleSettings,
): PartColumn {
  return {
    key,
    title,
    kind: 'money',
    value: (row) => minor(row) || null,
    text: (row) => (minor(row) === 0 ? '' : moneyText(minor(row), locale)),
    filter: { kind: 'range', digits: minorDigits(locale.currency), accepted: 'an amount such as 12.50' },
    subtotal: (rows) => moneyText(sumOf(rows, minor), locale),
    searched: false,
  };
}

/** A column of calendar days. */
export function dateColumn(
  key: string,
  title: string,
  day: (row: PartRow) => string | null,
  locale: LocaleSettings,
): PartColumn {
  return {
    key,
    title,
    kind: 'date',
    value: day,
    text: (row) => {
      const date = day(row);
      return date === null ? '' : dateText(date, locale);
    },
    filter: { kind: 'range', parse: (text) => dayOf(text, locale), accepted: 'a day such as 2026-03-14' },
    searched: false,
  };
}

function dayOf(text: string, locale: LocaleSettings): string | null {
  try {
    return parseTypedDate(text, dateOrderOf(locale));
  } catch {
    return null;
  }
}

/** Which number of a typed date is the day, where it could be either. */
export const dateOrderOf = (locale: LocaleSettings): 'month-first' | 'day-first' =>
  locale.dateForm === 'mm/dd/yyyy' ? 'month-first' : 'day-first';
