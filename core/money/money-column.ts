/** A column of amounts is one person's hand: one clear row settles which mark stands before the cents in the others. */
import { type DecimalMark, type MoneyReading, type MoneyTextOptions, parseMoneyText } from './money-text.ts';

export interface MoneyColumn {
  readonly readings: readonly MoneyReading[];
  /** The decimal mark used for the ambiguous rows, and how it was found. */
  readonly mark: DecimalMark | null;
  readonly decidedBy:
    | { readonly how: 'row'; readonly index: number }
    | { readonly how: 'setting' | 'answer' | 'nothing to decide' | 'open' };
  /** Indices that can't be read until somebody says which mark it is. */
  readonly open: readonly number[];
}

export interface MoneyColumnOptions {
  readonly purpose?: 'amount' | 'unit-price';
  /** The user's answer for this column; goes before everything. */
  readonly answer?: DecimalMark;
  /** The user's own habit; counts only where the column doesn't show one. */
  readonly setting?: DecimalMark;
}

/**
 * Reads a column of amounts. Ambiguity is settled by, in order: the answer given, a currency without minor units, a row
 * that can be read one way only (rows that contradict each other settle nothing), the user's setting; else it is open.
 * @param currencies one for each text.
 */
export function readMoneyColumn(
  texts: readonly string[],
  currencies: readonly string[],
  options: MoneyColumnOptions = {},
): MoneyColumn {
  const base: MoneyTextOptions = options.purpose === undefined ? {} : { purpose: options.purpose };
  const currencyAt = (index: number) => currencies[index] ?? currencies[0] ?? 'USD';
  // The same amount stands on many rows of a long list.
  const read = new Map<string, MoneyReading>();
  const first = texts.map((text, index) => {
    const key = `${currencyAt(index)} ${text}`;
    const known = read.get(key) ?? parseMoneyText(text, currencyAt(index), base);
    read.set(key, known);
    return known;
  });
  const open = first.flatMap((reading, index) => (reading.kind === 'ambiguous' ? [index] : []));
  if (open.length === 0) return { readings: first, mark: null, decidedBy: { how: 'nothing to decide' }, open };

  const shown = (reading: MoneyReading) => (reading.kind === 'amount' ? reading.shows : null);
  const index = first.findIndex((reading) => shown(reading) !== null);
  const found = first[index] === undefined ? null : shown(first[index]);
  const contradicted = first.some((reading) => shown(reading) !== null && shown(reading) !== found);

  const settle = (mark: DecimalMark, decidedBy: MoneyColumn['decidedBy']): MoneyColumn => ({
    readings: first.map((reading, at) =>
      reading.kind === 'ambiguous'
        ? parseMoneyText(texts[at] ?? '', currencyAt(at), { ...base, decimalMark: mark })
        : reading,
    ),
    mark,
    decidedBy,
    open: [],
  });
  if (options.answer !== undefined) return settle(options.answer, { how: 'answer' });
  if (found !== null && !contradicted) return settle(found, { how: 'row', index });
  if (options.setting !== undefined) return settle(options.setting, { how: 'setting' });
  return { readings: first, mark: null, decidedBy: { how: 'open' }, open };
}
