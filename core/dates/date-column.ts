/** A column of dates is one person's hand: one value above 12 shows whether days or months come first. */
import { type DateOrder, type DateReading, type DateTextOptions, parseDateText } from './date-text.ts';

export interface DateColumn {
  readonly readings: readonly DateReading[];
  readonly order: DateOrder | null;
  readonly decidedBy:
    | { readonly how: 'row'; readonly index: number }
    /** Two rows prove opposite orders: nothing is guessed. */
    | { readonly how: 'contradiction'; readonly dayFirst: number; readonly monthFirst: number }
    | { readonly how: 'answer' | 'nothing to decide' | 'open' };
  /** Indices that can't be read until somebody says which order it is. */
  readonly open: readonly number[];
}

/**
 * Reads a column of dates. The order is decided by, in order: the answer given, a row that can be read one way only;
 * else it is open, and so it is when rows contradict each other.
 */
export function readDateColumn(
  texts: readonly string[],
  options: { readonly answer?: DateOrder; readonly bareNumbers?: '1900' | '1904' } = {},
): DateColumn {
  const base: DateTextOptions = options.bareNumbers === undefined ? {} : { bareNumbers: options.bareNumbers };
  // The same day stands on many rows of a long list.
  const read = new Map<string, DateReading>();
  const first = texts.map((text) => {
    const known = read.get(text) ?? parseDateText(text, base);
    read.set(text, known);
    return known;
  });
  const open = first.flatMap((reading, index) => (reading.kind === 'ambiguous' ? [index] : []));
  const proof = (order: DateOrder) => first.findIndex((reading) => reading.kind === 'date' && reading.proves === order);
  const dayFirst = proof('day-first');
  const monthFirst = proof('month-first');
  const settle = (order: DateOrder, decidedBy: DateColumn['decidedBy']): DateColumn => ({
    readings: first.map((reading, index) =>
      reading.kind === 'ambiguous' || (reading.kind === 'date' && reading.proves !== null && reading.proves !== order)
        ? parseDateText(texts[index] ?? '', { ...base, order })
        : reading,
    ),
    order,
    decidedBy,
    open: [],
  });
  if (dayFirst >= 0 && monthFirst >= 0) {
    if (options.answer !== undefined) return settle(options.answer, { how: 'answer' });
    return { readings: first, order: null, decidedBy: { how: 'contradiction', dayFirst, monthFirst }, open };
  }
  if (dayFirst >= 0) return settle('day-first', { how: 'row', index: dayFirst });
  if (monthFirst >= 0) return settle('month-first', { how: 'row', index: monthFirst });
  if (open.length === 0) return { readings: first, order: null, decidedBy: { how: 'nothing to decide' }, open };
  if (options.answer !== undefined) return settle(options.answer, { how: 'answer' });
  return { readings: first, order: null, decidedBy: { how: 'open' }, open };
}
