/** Rates are kept as the decimal text people typed and computed with exactly, as a fraction of two whole numbers. */
import { Refusal } from '../refusal.ts';

export interface Rate {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/**
 * Reads a rate such as "0.0825" (a tax of 8.25 %) or "1.1050" (an exchange rate).
 * @param field name of the field, for the refusal.
 * @returns the exact fraction, 0 or more.
 * @throws Refusal `bad-input` for anything but digits with a decimal point, at most 9 before it and 12 behind it.
 */
export function parseRate(text: string, field: string): Rate {
  const match = /^(\d{1,9})(?:\.(\d{1,12}))?$/.exec(text.trim());
  if (match === null) {
    throw new Refusal('bad-input', `The ${field} “${text}” can't be read. Nothing was changed.`, {
      field,
      accepted: 'digits with a decimal point and at most 12 decimals, such as 0.0825',
    });
  }
  const fraction = match[2] ?? '';
  return { numerator: BigInt(`${match[1]}${fraction}`), denominator: 10n ** BigInt(fraction.length) };
}

/**
 * Reads an exchange rate: base-currency units for one unit of the order's currency.
 * @throws Refusal `bad-input` as `parseRate`, and for 0.
 */
export function parseExchangeRate(text: string): Rate {
  const rate = parseRate(text, 'exchange rate');
  if (rate.numerator === 0n) {
    throw new Refusal('bad-input', 'The exchange rate is 0. Nothing was changed.', {
      field: 'exchange rate',
      accepted: 'a rate above 0, such as 1.1050',
    });
  }
  return rate;
}

/**
 * A percentage as a rate: "8.25" is "0.0825".
 * @throws Refusal `bad-input` naming the field when the text isn't a decimal number with at most 10 decimals.
 */
export function rateOfPercent(percent: string, field: string): string {
  const match = /^(\d{1,9})(?:\.(\d{1,10}))?$/.exec(percent.trim());
  if (match === null) {
    throw new Refusal('bad-input', `The ${field} “${percent}” can't be read. Nothing was changed.`, {
      field,
      accepted: 'a percentage in digits with a decimal point, such as 8.25',
    });
  }
  const digits = (match[1] ?? '').padStart(3, '0');
  return `${digits.slice(0, -2).replace(/^0+(?=\d)/, '')}.${digits.slice(-2)}${match[2] ?? ''}`;
}
