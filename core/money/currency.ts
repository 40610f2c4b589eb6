/**
 * Currencies and the one way money is rounded. An amount is an integer count of the currency's minor unit (cents for
 * USD, yen for JPY, fils for KWD), never a binary fraction.
 * Source: ISO 4217 list of current currencies and their minor units; bullion, test and fund-settlement codes are left
 * out because nothing is bought with them. Two codes withdrawn since 2025 stay, so that old receipts can be entered.
 */
import { Refusal } from '../refusal.ts';

const withoutMinorUnit = 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF';
const threeDigits = 'BHD IQD JOD KWD LYD OMR TND';
const fourDigits = 'CLF UYW';
const twoDigits =
  'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW ' +
  'CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ' +
  'ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV ' +
  'MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD ' +
  'SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG';

const digitsByCode = new Map<string, number>();
for (const [digits, codes] of [
  [0, withoutMinorUnit],
  [2, twoDigits],
  [3, threeDigits],
  [4, fourDigits],
] as const) {
  for (const code of codes.split(' ')) digitsByCode.set(code, digits);
}

/** Every currency code the workbook accepts, in alphabetical order. */
export const currencyCodes: readonly string[] = [...digitsByCode.keys()].sort();

/** Whether `code` is an ISO 4217 code of a currency things are bought with. Capitals only. */
export function isCurrency(code: string): boolean {
  return digitsByCode.has(code);
}

/**
 * How many decimal digits the minor unit of a currency stands for: 0, 2, 3 or 4.
 * @throws Refusal `bad-input` when the code is unknown.
 */
export function minorDigits(code: string): number {
  const digits = digitsByCode.get(code);
  if (digits === undefined) {
    throw new Refusal('bad-input', `The currency “${code}” is not a known code. Nothing was changed.`, {
      field: 'currency',
      accepted: 'a three-letter ISO 4217 code in capitals, such as USD, EUR or JPY',
    });
  }
  return digits;
}

const formats = new Map<string, Intl.NumberFormat>();

/**
 * Money as people read it, with the currency's own number of decimals: `formatMoney(12345, 'USD')` is "$123.45".
 * @param minor integer minor units, positive or negative.
 * @param locale BCP 47 tag that decides the marks and where the symbol stands.
 * @throws Refusal `bad-input` when the currency is unknown.
 */
export function formatMoney(minor: number, currency: string, locale = 'en'): string {
  const digits = minorDigits(currency);
  const key = `${locale} ${currency}`;
  let format = formats.get(key);
  if (format === undefined) {
    format = new Intl.NumberFormat(locale, {
      style: 'currency',
      currency,
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    });
    formats.set(key, format);
  }
  return format.format(plainAmount(minor, currency) as Intl.StringNumericLiteral);
}

/** Money as plain decimal text with a point and no symbol or grouping, for files: `plainAmount(-5, 'USD')` is "-0.05". */
export function plainAmount(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const whole = Math.abs(minor)
    .toString()
    .padStart(digits + 1, '0');
  const sign = minor < 0 ? '-' : '';
  return digits === 0 ? `${sign}${whole}` : `${sign}${whole.slice(0, -digits)}.${whole.slice(-digits)}`;
}

/** How a book rounds a fraction of a minor unit. `half up` sends a half away from zero; `down` cuts towards zero. */
export type RoundingMode = 'half up' | 'half even' | 'down';

/**
 * `numerator / denominator` as an integer, rounded once in the given mode.
 * @throws RangeError when the denominator is 0: callers show a sentence instead of dividing.
 */
export function roundRatio(numerator: bigint, denominator: bigint, mode: RoundingMode): bigint {
  if (denominator === 0n) throw new RangeError('roundRatio: the denominator is 0');
  const negative = numerator < 0n !== denominator < 0n;
  const top = numerator < 0n ? -numerator : numerator;
  const bottom = denominator < 0n ? -denominator : denominator;
  const cut = top / bottom;
  const twice = (top % bottom) * 2n;
  const up = mode === 'down' ? false : twice > bottom || (twice === bottom && (mode === 'half up' || cut % 2n === 1n));
  const size = up ? cut + 1n : cut;
  return negative ? -size : size;
}

/** `numerator / denominator` rounded to the nearest integer, a half away from zero: the product's default rounding. */
export function roundHalfAway(numerator: bigint, denominator: bigint): bigint {
  return roundRatio(numerator, denominator, 'half up');
}

/**
 * A big amount back as a plain number, for storage and display.
 * @throws Refusal `bad-input` when it passes 2^53 - 1, the largest integer a number holds exactly.
 */
export function safeMinor(amount: bigint, field: string): number {
  if (amount > BigInt(Number.MAX_SAFE_INTEGER) || amount < BigInt(Number.MIN_SAFE_INTEGER)) {
    throw new Refusal('bad-input', `The ${field} is larger than the workbook can hold exactly. Nothing was changed.`, {
      field,
      accepted: `an amount between ${Number.MIN_SAFE_INTEGER} and ${Number.MAX_SAFE_INTEGER} minor units`,
    });
  }
  return Number(amount);
}
