/**
 * Amounts of a foreign order in the book's currency. The document's total is converted once; its lines are then made to
 * add up to that, because lines converted one by one can differ from it by a few minor units.
 */
import { minorDigits, roundHalfAway, safeMinor } from './currency.ts';
import { parseExchangeRate } from './rate.ts';

/**
 * Converts a document's total, rounding once, a half away from zero.
 * @param totalMinor minor units of `from`; may be negative.
 * @param rateText units of `to` for one unit of `from`, decimal text.
 * @returns minor units of `to`.
 * @throws Refusal `bad-input` for an unknown currency, a rate that can't be read or is 0, or too large a result.
 */
export function convertDocument(totalMinor: number, from: string, to: string, rateText: string): number {
  const { top, bottom } = conversion(from, to, rateText);
  return safeMinor(roundHalfAway(BigInt(totalMinor) * top, bottom), 'converted total');
}

/**
 * Converts a document's lines so that they add up to `convertDocument` of their sum: every line is cut to whole minor
 * units of `to` and the units left over go to the largest fractional parts, ties to the earlier line. Credit lines
 * (negative) keep their sign. The same refusals as `convertDocument`.
 */
export function convertLines(lineMinors: readonly number[], from: string, to: string, rateText: string): number[] {
  const { top, bottom } = conversion(from, to, rateText);
  const total = convertDocument(
    lineMinors.reduce((sum, line) => sum + line, 0),
    from,
    to,
    rateText,
  );
  const floors = lineMinors.map((line) => floorRatio(BigInt(line) * top, bottom));
  const remainders = lineMinors.map((line, index) => BigInt(line) * top - (floors[index] ?? 0n) * bottom);
  let left = total - floors.reduce((sum, floor) => sum + Number(floor), 0);
  const order = lineMinors.map((_, index) => index);
  order.sort((a, b) => Number((remainders[b] ?? 0n) - (remainders[a] ?? 0n)));
  const lines = floors.map((floor) => safeMinor(floor, 'converted line'));
  for (const index of order) {
    if (left === 0) break;
    lines[index] = (lines[index] ?? 0) + 1;
    left -= 1;
  }
  return lines;
}

function conversion(from: string, to: string, rateText: string): { top: bigint; bottom: bigint } {
  const rate = parseExchangeRate(rateText);
  return {
    top: rate.numerator * 10n ** BigInt(minorDigits(to)),
    bottom: rate.denominator * 10n ** BigInt(minorDigits(from)),
  };
}

function floorRatio(numerator: bigint, denominator: bigint): bigint {
  const cut = numerator / denominator;
  return numerator < 0n && numerator % denominator !== 0n ? cut - 1n : cut;
}
