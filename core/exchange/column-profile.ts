/** What stands in a column, in shares of its filled cells: enough to tell dates from prices from words. */
import { parseDateText } from '../dates/date-text.ts';
import { currenciesNamed, parseMoneyText } from '../money/money-text.ts';
import { readPriceCell } from './price-cell.ts';
import { readQuantityCell } from './quantity-cell.ts';
import { guessState, stateWord } from './state-words.ts';
import type { Table } from './table-types.ts';

const rowsLookedAt = 400;

export interface ColumnProfile {
  readonly filled: number;
  readonly dates: number;
  readonly amounts: number;
  readonly currencySigns: number;
  readonly quantities: number;
  readonly links: number;
  readonly states: number;
  /** 1, 2, 3 … down the column: a line number. */
  readonly counting: boolean;
  readonly distinct: number;
  readonly averageLength: number;
}

export function profileColumn(table: Table, index: number): ColumnProfile {
  const texts: string[] = [];
  for (const row of table.rows) {
    if (row.row <= table.headerRow) continue;
    const text = (row.cells[index] ?? '').trim();
    if (text !== '') texts.push(text.slice(0, 200));
    if (texts.length === rowsLookedAt) break;
  }
  const share = (test: (text: string) => boolean) =>
    texts.length === 0 ? 0 : texts.filter((text) => test(text)).length / texts.length;
  return {
    filled: texts.length,
    dates: share((text) => ['date', 'ambiguous'].includes(parseDateText(text).kind)),
    amounts: share((text) => isAmount(text)),
    currencySigns: share((text) => /\d/.test(text) && currenciesNamed(readPriceCell(text).amount) !== null),
    quantities: share((text) => readQuantityCell(text, null, { zero: true }).kind === 'quantity'),
    links: share((text) => /^(?:https?:\/\/|www\.)\S+$/i.test(text)),
    states: share((text) => {
      const word = stateWord(text);
      return guessState(word.key, 'state', word.bin !== undefined) !== 'unknown';
    }),
    counting: texts.length > 1 && texts.every((text, at) => text === String(at + 1)),
    distinct: texts.length === 0 ? 0 : new Set(texts).size / texts.length,
    averageLength: texts.length === 0 ? 0 : texts.reduce((sum, text) => sum + text.length, 0) / texts.length,
  };
}

function isAmount(text: string): boolean {
  const { mark, amount } = readPriceCell(text);
  if (mark === 'unknown') return true;
  const named = currenciesNamed(amount);
  const reading = parseMoneyText(amount, named?.[0] ?? 'USD', { purpose: 'unit-price' });
  return reading.kind === 'amount' || reading.kind === 'ambiguous';
}
