/**
 * What part of an order line is worth. The value of the first units is rounded from the line's total, and every step
 * is a difference of two such values, so the steps of a line add up to its total in whatever parts it arrives.
 * A unit price is an integer in 1/10,000 of a minor unit (names end in `E4`): small fasteners cost fractions of a cent.
 */
import { Refusal } from '../refusal.ts';
import { minorDigits, roundHalfAway, safeMinor } from './currency.ts';

/** How many decimals a unit price may carry beyond the currency's own. */
export const extraPriceDigits = 4;

/**
 * Value in minor units of the first `firstMilli` of a line: round(total x first / ordered), a half away from zero.
 * @param orderedMilli the line's quantity in thousandths, above 0.
 * @param firstMilli from 0 to `orderedMilli`.
 * @throws RangeError outside those bounds.
 */
export function valueOfFirst(totalMinor: number, orderedMilli: number, firstMilli: number): number {
  if (!(orderedMilli > 0)) throw new RangeError('valueOfFirst: the ordered quantity must be above 0');
  if (firstMilli < 0 || firstMilli > orderedMilli) {
    throw new RangeError(`valueOfFirst: ${firstMilli} lies outside 0 to ${orderedMilli} thousandths`);
  }
  return Number(roundHalfAway(BigInt(totalMinor) * BigInt(firstMilli), BigInt(orderedMilli)));
}

/** Value in minor units of the units after `fromMilli` up to `toMilli`; the steps of a line telescope to its total. */
export function stepValue(totalMinor: number, orderedMilli: number, fromMilli: number, toMilli: number): number {
  return valueOfFirst(totalMinor, orderedMilli, toMilli) - valueOfFirst(totalMinor, orderedMilli, fromMilli);
}

/**
 * Line amount in minor units: quantity x unit price, rounded once, a half away from zero.
 * @throws Refusal `bad-input` when the amount is too large to be held exactly.
 */
export function extendedMinor(quantityMilli: number, unitPriceE4: number): number {
  const exact = BigInt(quantityMilli) * BigInt(unitPriceE4);
  return safeMinor(roundHalfAway(exact, 1000n * 10_000n), 'line amount');
}

/** Unit price in 1/10,000 minor unit from a whole minor amount. */
export function unitPriceFromMinor(unitMinor: number): number {
  return safeMinor(BigInt(unitMinor) * 10_000n, 'unit price');
}

/**
 * Unit price in 1/10,000 minor unit from plain decimal text in major units, such as "12.3456" dollars.
 * @throws Refusal `bad-input` for anything but digits with one decimal point, or for more decimals than the currency's
 * own plus four.
 */
export function unitPriceFromText(text: string, currency: string): number {
  const decimals = minorDigits(currency) + extraPriceDigits;
  const match = /^(-?)(\d{1,15})(?:\.(\d+))?$/.exec(text.trim());
  const fraction = match?.[3] ?? '';
  if (match === null || fraction.length > decimals) {
    throw new Refusal('bad-input', `The unit price “${text}” can't be read. Nothing was changed.`, {
      field: 'unit price',
      accepted: `digits with a decimal point and at most ${decimals} decimals in ${currency}, such as 12.5`,
    });
  }
  const digits = BigInt(`${match[2]}${fraction.padEnd(decimals, '0')}`);
  return safeMinor(match[1] === '-' ? -digits : digits, 'unit price');
}
