/** The money columns of a list, read column by column, because one row tells how the others are meant. */
import { isCurrency, minorDigits, roundHalfAway } from '../money/currency.ts';
import { extraPriceDigits } from '../money/line-value.ts';
import { readMoneyColumn } from '../money/money-column.ts';
import { currenciesNamed, type MoneyReading, parseMoneyText } from '../money/money-text.ts';
import type { ImportAnswers, ImportDefaults, ImportField } from './import-types.ts';
import { type PriceMark, readPriceCell } from './price-cell.ts';
import type { RowReader } from './row-reader.ts';
import type { ImportFinding, ImportQuestion, TableRow } from './table-types.ts';

const moneyFields = [
  'unitPrice',
  'lineTotal',
  'shipping',
  'tax',
  'discount',
  'duty',
  'orderTotal',
  'coreDeposit',
] as const satisfies readonly ImportField[];
export type MoneyField = (typeof moneyFields)[number];

export interface MoneyValue {
  readonly reading: MoneyReading;
  readonly mark: PriceMark;
  readonly text: string;
}

export interface MoneyValues {
  value(row: TableRow, field: MoneyField): MoneyValue;
  currency(row: TableRow): string;
  readonly questions: readonly ImportQuestion[];
  readonly findings: readonly ImportFinding[];
}

const blank: MoneyValue = { reading: { kind: 'blank' }, mark: 'blank', text: '' };

/**
 * Reads every money column over the given rows (lines and totals).
 * The currency of a row is its own column's, else the one its signs name, else the one that the other rows name, else
 * the default.
 */
export function readMoney(
  rows: readonly TableRow[],
  reader: RowReader,
  answers: ImportAnswers,
  defaults: ImportDefaults,
): MoneyValues {
  const fields = moneyFields.filter((field) => reader.has(field));
  const { currencyOf, findings } = rowCurrencies(rows, reader, fields, defaults);
  const questions: ImportQuestion[] = [];
  const values = new Map<MoneyField, Map<number, MoneyValue>>();
  for (const field of fields) {
    const cells = rows.flatMap((row) => {
      const text = reader.text(row, field);
      return text === '' ? [] : [{ row, text, ...readPriceCell(text), number: reader.kind(row, field) === 'number' }];
    });
    const purpose = field === 'unitPrice' ? 'unit-price' : 'amount';
    const typed = cells.filter((cell) => !cell.number);
    const id = `decimal-mark:${reader.index(field)}`;
    const given = Object.hasOwn(answers, id) ? answers[id] : undefined;
    const answer = given === '.' || given === ',' ? given : null;
    const column = readMoneyColumn(
      typed.map((cell) => cell.amount),
      typed.map((cell) => currencyOf(cell.row)),
      {
        purpose,
        ...(answer === null ? {} : { answer }),
        ...(defaults.decimalMark === undefined ? {} : { setting: defaults.decimalMark }),
      },
    );
    const found = new Map<number, MoneyValue>();
    typed.forEach(({ row, mark, text }, index) => {
      found.set(row.row, { reading: column.readings[index] ?? { kind: 'blank' }, mark, text });
    });
    for (const { row, mark, text, amount, number } of cells) {
      if (number) found.set(row.row, { reading: readNumberCell(amount, currencyOf(row), purpose), mark, text });
    }
    values.set(field, found);
    const concerned = column.decidedBy.how === 'answer' ? ambiguousRows(typed, currencyOf) : column.open;
    const example = typed[concerned[0] ?? -1];
    if (example !== undefined) {
      const rowsConcerned = concerned.flatMap((index) => typed[index]?.row.row ?? []);
      questions.push(
        markQuestion(id, reader.title(field), example.amount, currencyOf(example.row), rowsConcerned, answer),
      );
    }
  }
  return {
    value: (row, field) => values.get(field)?.get(row.row) ?? blank,
    currency: currencyOf,
    questions,
    findings,
  };
}

function ambiguousRows(
  cells: readonly { readonly row: TableRow; readonly amount: string }[],
  currencyOf: (row: TableRow) => string,
): readonly number[] {
  return cells.flatMap(({ row, amount }, index) =>
    parseMoneyText(amount, currencyOf(row)).kind === 'ambiguous' ? [index] : [],
  );
}

/** A number cell has a point for its decimals; what a formula left beyond the last decimal that counts is rounded off. */
function readNumberCell(text: string, currency: string, purpose: 'amount' | 'unit-price'): MoneyReading {
  const decimals = minorDigits(currency) + (purpose === 'unit-price' ? extraPriceDigits : 0);
  return parseMoneyText(roundPlain(text, decimals), currency, { purpose, decimalMark: '.' });
}

function roundPlain(text: string, decimals: number): string {
  const match = /^(-?)(\d+)\.(\d+)$/.exec(text);
  const [, sign = '', whole = '', fraction = ''] = match ?? [];
  if (fraction.length <= decimals) return text;
  const scale = 10n ** BigInt(fraction.length - decimals);
  const digits = roundHalfAway(BigInt(whole + fraction), scale)
    .toString()
    .padStart(decimals + 1, '0');
  const cut = digits.length - decimals;
  return `${sign}${digits.slice(0, cut)}${decimals === 0 ? '' : `.${digits.slice(cut)}`}`;
}

function markQuestion(
  id: string,
  column: string,
  example: string,
  currency: string,
  rowsConcerned: readonly number[],
  answer: '.' | ',' | null,
): ImportQuestion {
  const reading = parseMoneyText(example, currency);
  const read = (mark: '.' | ',') => {
    if (reading.kind !== 'ambiguous') return example;
    return mark === reading.mark ? reading.asDecimal : reading.asGrouped;
  };
  return {
    id,
    kind: 'decimal-mark',
    column,
    text: `“${example}” under “${column}” can be read two ways. Which mark stands before the decimals?`,
    choices: [
      { value: '.', label: 'A point', preview: `${example} is ${read('.')} ${currency}` },
      { value: ',', label: 'A comma', preview: `${example} is ${read(',')} ${currency}` },
    ],
    guess: null,
    rowsConcerned,
    blocking: true,
    answer,
  };
}

function rowCurrencies(
  rows: readonly TableRow[],
  reader: RowReader,
  fields: readonly MoneyField[],
  defaults: ImportDefaults,
): { readonly currencyOf: (row: TableRow) => string; readonly findings: readonly ImportFinding[] } {
  const own = new Map<number, string>();
  const named = new Set<string>();
  for (const row of rows) {
    const column = reader.text(row, 'currency').toUpperCase();
    const signs = fields.flatMap((field) => {
      const text = reader.text(row, field);
      return /\d/.test(text) ? [currenciesNamed(readPriceCell(text).amount) ?? []] : [];
    });
    const single = signs.find((codes) => codes.length === 1)?.[0];
    const code = isCurrency(column) ? column : single;
    if (code !== undefined) {
      own.set(row.row, code);
      named.add(code);
    }
  }
  const [only] = named;
  const common = named.size === 1 && only !== undefined ? only : defaults.currency;
  const findings: ImportFinding[] =
    common === defaults.currency
      ? []
      : [
          {
            severity: 'note',
            column: '',
            text: common,
            message: `The amounts name ${common}, so all of them are read as ${common} and not as ${defaults.currency}.`,
          },
        ];
  return { currencyOf: (row) => own.get(row.row) ?? common, findings };
}
