/**
 * What the lines of an order really cost once discount, shipping, duty and tax are in. Each step is rounded once and
 * shared by largest remainder, so the lines add up to the order's total to the minor unit.
 */
import { Refusal } from '../refusal.ts';
import { allocate } from './allocate.ts';
import { minorDigits, type RoundingMode } from './currency.ts';
import { extendedMinor } from './line-value.ts';
import { parseRate } from './rate.ts';
import { taxInGross, taxOnNet } from './tax.ts';

/** A line by quantity and unit price, or by the amount the document prints for it. Credits are below 0. */
export type OrderLineAmount =
  | { readonly quantityMilli: number; readonly unitPriceE4: number }
  | { readonly lineMinor: number };

/** The tax as the document prints it, or a rate to compute it from. */
export type OrderTax =
  | { readonly kind: 'amount'; readonly minor: number }
  | {
      readonly kind: 'rate';
      /** Decimal text: "0.0825" is 8.25 %. */
      readonly rateText: string;
      /** Whether the amounts of the order already contain the tax. */
      readonly inclusive: boolean;
      /** What is taxed: goods after discount, with shipping, or with shipping and duty. */
      readonly base: 'goods' | 'goods+freight' | 'all';
      /** Rounded once for the document, or on every line; the two may differ by a few minor units. */
      readonly basis: 'document' | 'line';
    };

export interface OrderAmounts {
  readonly currency: string;
  readonly lines: readonly OrderLineAmount[];
  /** Taken off the goods: 0 or more. */
  readonly discountMinor: number;
  readonly shippingMinor: number;
  /** One amount to share by goods value, or one per line as the broker lists it. */
  readonly dutyMinor: number | readonly number[];
  readonly tax: OrderTax;
  /** What shipping is shared by (weights, quantities); goods after discount when absent. */
  readonly shippingWeights?: readonly number[];
  readonly rounding?: RoundingMode;
}

/** All in minor units of the order's currency. `landedMinor` is the sum of the others, or of all but an inclusive tax. */
export interface LandedLine {
  readonly extendedMinor: number;
  /** 0 or below. */
  readonly discountMinor: number;
  readonly shippingMinor: number;
  readonly dutyMinor: number;
  readonly taxMinor: number;
  readonly landedMinor: number;
}

export interface LandedOrder {
  readonly lines: readonly LandedLine[];
  readonly total: LandedLine;
  /** Whether the tax is inside the other amounts rather than on top of them. */
  readonly taxIncluded: boolean;
}

/**
 * Lands an order, in this sequence: line amounts, discount shared by them, shipping and duty shared by goods after
 * discount, tax computed on its base and shared by that base. An inclusive tax is reported but not added again.
 * @throws Refusal `bad-input` for no lines, a negative charge, a discount above the goods, an unknown currency, a rate
 * that can't be read, or a list that doesn't have one entry per line.
 */
export function landOrder(order: OrderAmounts): LandedOrder {
  minorDigits(order.currency);
  checkCharges(order);
  const extended = order.lines.map((line) =>
    'lineMinor' in line ? line.lineMinor : extendedMinor(line.quantityMilli, line.unitPriceE4),
  );
  if (order.discountMinor > Math.max(0, sum(extended))) {
    throw refused('discount', 'is larger than the goods', 'an amount from 0 to the sum of the lines');
  }
  const discount = allocate(order.discountMinor === 0 ? 0 : -order.discountMinor, extended);
  const goods = extended.map((amount, line) => amount + (discount[line] ?? 0));
  const shipping = allocate(order.shippingMinor, order.shippingWeights ?? goods);
  const duty = typeof order.dutyMinor === 'number' ? allocate(order.dutyMinor, goods) : [...order.dutyMinor];
  const tax = taxByLine(order, goods, shipping, duty);

  const taxIncluded = order.tax.kind === 'rate' && order.tax.inclusive;
  const lines = extended.map((amount, line) => {
    const parts = {
      extendedMinor: amount,
      discountMinor: discount[line] ?? 0,
      shippingMinor: shipping[line] ?? 0,
      dutyMinor: duty[line] ?? 0,
      taxMinor: tax[line] ?? 0,
    };
    const untaxed = parts.extendedMinor + parts.discountMinor + parts.shippingMinor + parts.dutyMinor;
    return { ...parts, landedMinor: taxIncluded ? untaxed : untaxed + parts.taxMinor };
  });
  return { lines, total: totalOf(lines), taxIncluded };
}

function taxByLine(
  order: OrderAmounts,
  goods: readonly number[],
  shipping: readonly number[],
  duty: readonly number[],
): number[] {
  const { tax } = order;
  if (tax.kind === 'amount') return allocate(tax.minor, goods);
  const base = goods.map((amount, line) => {
    const freight = tax.base === 'goods' ? 0 : (shipping[line] ?? 0);
    return amount + freight + (tax.base === 'all' ? (duty[line] ?? 0) : 0);
  });
  const rate = parseRate(tax.rateText, 'tax rate');
  const compute = tax.inclusive ? taxInGross : taxOnNet;
  if (tax.basis === 'line') return base.map((amount) => compute(amount, rate, order.rounding));
  return allocate(compute(sum(base), rate, order.rounding), base);
}

function checkCharges(order: OrderAmounts): void {
  const count = order.lines.length;
  if (count === 0) throw refused('order', 'has no lines', 'at least one line');
  const duties = typeof order.dutyMinor === 'number' ? [order.dutyMinor] : order.dutyMinor;
  for (const [field, amounts] of [
    ['discount', [order.discountMinor]],
    ['shipping', [order.shippingMinor]],
    ['duty', duties],
    ['tax', order.tax.kind === 'amount' ? [order.tax.minor] : []],
    ['shipping weights', order.shippingWeights ?? []],
  ] as const) {
    if (amounts.some((amount) => !Number.isSafeInteger(amount) || amount < 0)) {
      throw refused(field, 'is below 0 or not a whole number of minor units', '0 or more');
    }
  }
  if (typeof order.dutyMinor !== 'number' && order.dutyMinor.length !== count) {
    throw refused('duty', `lists ${order.dutyMinor.length} amounts for ${count} lines`, 'one amount per line');
  }
  if (order.shippingWeights !== undefined && order.shippingWeights.length !== count) {
    throw refused('shipping weights', `list ${order.shippingWeights.length} for ${count} lines`, 'one per line');
  }
}

function totalOf(lines: readonly LandedLine[]): LandedLine {
  const add = (pick: (line: LandedLine) => number): number => sum(lines.map(pick));
  return {
    extendedMinor: add((line) => line.extendedMinor),
    discountMinor: add((line) => line.discountMinor),
    shippingMinor: add((line) => line.shippingMinor),
    dutyMinor: add((line) => line.dutyMinor),
    taxMinor: add((line) => line.taxMinor),
    landedMinor: add((line) => line.landedMinor),
  };
}

function sum(amounts: readonly number[]): number {
  return amounts.reduce((before, amount) => before + amount, 0);
}

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `The ${field} ${reason}. Nothing was changed.`, { field, accepted });
}
