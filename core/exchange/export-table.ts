/** A table on its way out, whatever the file: values as the workbook holds them, and what each column is. */
import { plainAmount } from '../money/currency.ts';
import { plainQuantity } from '../units/quantity.ts';

export type ExportKind = 'text' | 'number' | 'money' | 'quantity' | 'date';

export interface ExportColumn {
  readonly key: string;
  readonly title: string;
  /** money: integer minor units. quantity: integer thousandths. date: YYYY-MM-DD. number: a number or decimal text. */
  readonly kind: ExportKind;
  /** ISO 4217 code of a money column. */
  readonly currency?: string;
  /** Key of the column that names the currency of each row, where rows differ. */
  readonly currencyKey?: string;
}

export type ExportValue = string | number | null | undefined;
export type ExportRow = Readonly<Record<string, ExportValue>>;

export interface ExportTable {
  readonly name: string;
  readonly columns: readonly ExportColumn[];
  readonly rows: readonly ExportRow[];
}

/** The value of a cell, null when there is none; names from outside can't reach an object's own machinery. */
export function cellValue(row: ExportRow, key: string): string | number | null {
  return Object.hasOwn(row, key) ? (row[key] ?? null) : null;
}

/**
 * A number as plain decimal text with a point, or null where the value is no number after all.
 * @throws Refusal `bad-input` when a money column names an unknown currency; Error when it names none.
 */
export function plainNumber(row: ExportRow, column: ExportColumn): string | null {
  const value = cellValue(row, column.key);
  if (value === null || value === '') return null;
  if (column.kind === 'number') {
    const text = String(value);
    return /^-?\d+(?:\.\d+)?$/.test(text) ? text : null;
  }
  if (typeof value !== 'number' || !Number.isSafeInteger(value)) return null;
  if (column.kind === 'quantity') return plainQuantity(value);
  if (column.kind !== 'money') return null;
  const currency = column.currencyKey === undefined ? column.currency : cellValue(row, column.currencyKey);
  if (typeof currency !== 'string') throw new Error(`The money column “${column.key}” names no currency.`);
  return plainAmount(value, currency);
}
