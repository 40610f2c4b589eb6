/** What parts and order lines have in common: dates, quantities, prices, names. */
import { extendedMinor, unitPriceFromText } from '../money/line-value.ts';
import { Refusal } from '../refusal.ts';
import type { Unit } from '../units/quantity.ts';
import type { ImportDefaults, PaidState } from './import-types.ts';
import type { DateField, DateValues } from './plan-dates.ts';
import type { MoneyField, MoneyValues } from './plan-money.ts';
import type { StateValues } from './plan-states.ts';
import { readQuantityCell, unitOfWord } from './quantity-cell.ts';
import type { RowNotes } from './row-notes.ts';
import type { RowReader } from './row-reader.ts';
import { guessState, stateWord } from './state-words.ts';
import type { TableRow } from './table-types.ts';

export interface PlanContext {
  readonly reader: RowReader;
  readonly money: MoneyValues;
  readonly dates: DateValues;
  readonly states: StateValues;
  readonly defaults: ImportDefaults;
  /** The answer to the question about blank quantities. */
  readonly blankIsOne: boolean;
  /** One spelling for each vendor and for each system. */
  readonly vendorName: (text: string) => string;
  readonly systemName: (text: string) => string;
  /** The system named by the heading above a row. */
  readonly sectionOf: (row: TableRow) => string;
}

export function dateOf(context: PlanContext, row: TableRow, field: DateField, notes: RowNotes): string | undefined {
  const reading = context.dates.value(row, field);
  if (reading.kind === 'date') {
    if (field !== 'promisedOn' && reading.date > context.defaults.today) {
      notes.add('attention', field, `${reading.date} lies in the future.`);
    }
    return reading.date;
  }
  if (reading.kind !== 'error') return undefined;
  if (reading.reason !== 'not-a-date') notes.refuse(field, reading.message, reading.accepted);
  else if (!context.states.words(row).some((word) => word.field === field)) notes.setAside(field, reading.message);
  return undefined;
}

export interface RowQuantity {
  readonly milli: number | null;
  readonly unit: Unit;
}

/** Unreadable or missing quantities block the row: how many is not for us to guess. */
export function quantityOf(context: PlanContext, row: TableRow, notes: RowNotes): RowQuantity {
  const { reader } = context;
  const unitText = reader.text(row, 'unit');
  const columnUnit = unitText === '' ? null : unitOfWord(unitText);
  if (unitText !== '' && columnUnit === null)
    notes.setAside('unit', `“${unitText}” is not a unit that the workbook knows.`);
  const certain = reader.kind(row, 'quantity') === 'number';
  const reading = readQuantityCell(reader.text(row, 'quantity'), columnUnit, { certain });
  if (reading.kind === 'quantity') return { milli: reading.milli, unit: reading.unit ?? 'each' };
  const unit = columnUnit ?? 'each';
  if (reading.kind === 'error') {
    notes.block('quantity', reading.message, reading.accepted);
    return { milli: null, unit };
  }
  if (context.blankIsOne) {
    notes.add('note', 'quantity', 'No quantity is given; 1 was taken.');
    return { milli: 1000, unit };
  }
  notes.block('quantity', 'No quantity is given.', 'a number above 0, or the answer that a blank quantity is 1');
  return { milli: null, unit };
}

/** A quantity beside the main one (shipped, back-ordered); blank and unreadable are both undefined. */
export function sideQuantity(
  context: PlanContext,
  row: TableRow,
  field: 'shippedQuantity' | 'backorderedQuantity',
  unit: Unit,
  notes: RowNotes,
): number | undefined {
  const certain = context.reader.kind(row, field) === 'number';
  const reading = readQuantityCell(context.reader.text(row, field), unit, { certain, zero: true });
  if (reading.kind === 'error') notes.refuse(field, reading.message, reading.accepted);
  return reading.kind === 'quantity' ? reading.milli : undefined;
}

export interface RowAmount {
  readonly minor: number;
  readonly plain: string;
  readonly guess: boolean;
}

/**
 * An amount of the row, or undefined.
 * @param strict true: text that is no amount blocks the row (it is money owed); false: it only means that there is no
 * estimate, and the text is kept in the note.
 */
export function amountOf(
  context: PlanContext,
  row: TableRow,
  field: MoneyField,
  notes: RowNotes,
  strict: boolean,
): RowAmount | undefined {
  const { reading, mark, text } = context.money.value(row, field);
  const problem = (message: string, accepted: string) =>
    strict ? notes.refuse(field, message, accepted) : notes.setAside(field, message);
  if (mark === 'unknown') {
    if (strict) notes.refuse(field, `“${text}” is not an amount.`, 'an amount, or a blank cell');
    else notes.add('attention', field, 'The price is not known; the line has no estimate.');
    return undefined;
  }
  if (reading.kind === 'error') problem(reading.message, reading.accepted);
  if (reading.kind !== 'amount') return undefined;
  if (reading.minor < 0 && field !== 'discount') {
    problem(`“${text}” is below 0; refunds and returns are entered on the order.`, 'an amount from 0');
    return undefined;
  }
  return { minor: reading.minor, plain: reading.plain, guess: mark === 'guess' };
}

export interface RowPrice {
  readonly unitPriceMinor?: number;
  readonly unitPriceE4?: number;
  /** Quantity × price. */
  readonly lineMinor?: number;
}

/** Price of one and of the line, exact; an amount too large to be held blocks the row. */
export function priceOf(
  amount: RowAmount | undefined,
  quantityMilli: number | null,
  currency: string,
  notes: RowNotes,
): RowPrice {
  if (amount === undefined) return {};
  try {
    const unitPriceE4 = unitPriceFromText(amount.plain, currency);
    const price = { unitPriceMinor: amount.minor, unitPriceE4 };
    return quantityMilli === null ? price : { ...price, lineMinor: extendedMinor(quantityMilli, unitPriceE4) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    notes.refuse('unitPrice', error.message.replace(' Nothing was changed.', ''), error.accepted);
    return {};
  }
}

export function paidOf(context: PlanContext, row: TableRow, notes: RowNotes): PaidState {
  const text = context.reader.text(row, 'paid');
  if (text === '') return context.defaults.paid;
  const { key } = stateWord(text);
  if (/^(?:paid|bezahlt|paye|pagado|pagato|betaald)\b/.test(key) || /^(?:1|100 ?%)$/.test(key)) return 'paid';
  if (/^(?:unpaid|not paid|due|open|owed|0|offen|unbezahlt|nicht bezahlt)\b/.test(key)) return 'not-paid';
  const state = guessState(key, 'paid');
  if (state === 'on-shelf') return 'paid';
  if (state === 'needed') return 'not-paid';
  notes.setAside('paid', `“${text}” says neither paid nor not paid.`);
  return context.defaults.paid;
}

/** Leaves keys without a value out of an object, as exact optional properties want it. */
export function present<T extends Record<string, string | number | undefined>>(
  values: T,
): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined && value !== '')) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}
