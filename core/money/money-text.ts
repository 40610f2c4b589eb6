/**
 * Amounts as people write them: "$1,234.50", "1.234,50 €", "(45.00)", "1'234.50". Nothing is guessed: text that can be
 * read two ways is reported as such, and a whole column is asked first, because one clear row settles the rest.
 * Accepted digits are 0 to 9; full-width and other digits, powers ("1e5") and sums ("=2*49.95") are not.
 */
import { Refusal } from '../refusal.ts';
import { minorDigits } from './currency.ts';
import { splitSign } from './currency-signs.ts';
import { extraPriceDigits } from './line-value.ts';
import { type DecimalMark, readMarkedNumber } from './number-marks.ts';

export type { DecimalMark } from './number-marks.ts';

export type MoneyReading =
  | { readonly kind: 'blank' }
  /** `plain` is exact decimal text in major units; `minor` is rounded half away from zero for a finer unit price. */
  | { readonly kind: 'amount'; readonly minor: number; readonly plain: string; readonly shows: DecimalMark | null }
  | {
      readonly kind: 'ambiguous';
      readonly mark: DecimalMark;
      readonly asDecimal: string;
      readonly asGrouped: string;
    }
  | {
      readonly kind: 'error';
      readonly reason: 'not-money' | 'groups' | 'sign' | 'currency' | 'decimals' | 'range';
      readonly message: string;
      readonly accepted: string;
    };

export interface MoneyTextOptions {
  /** A unit price may carry up to four decimals more than the currency has; an amount may not. */
  readonly purpose?: 'amount' | 'unit-price';
  /** Settles an ambiguous mark. */
  readonly decimalMark?: DecimalMark;
}

/**
 * Reads one amount.
 * @param currency ISO 4217 code of the column; a sign or code in the text must agree with it.
 * @throws Refusal `bad-input` when the currency itself is unknown; bad text is returned as `error`.
 */
export function parseMoneyText(text: string, currency: string, options: MoneyTextOptions = {}): MoneyReading {
  const digits = minorDigits(currency);
  const accepted = acceptedMoney(currency, digits);
  const fail = (reason: 'not-money' | 'groups' | 'sign' | 'currency' | 'decimals' | 'range', message: string) =>
    ({ kind: 'error', reason, message, accepted }) as const;
  const trimmed = text.replace(/[\s\u00a0\u202f\u2009]+/g, ' ').trim();
  if (trimmed === '') return { kind: 'blank' };

  if (trimmed.length > 80) return fail('not-money', `“${trimmed.slice(0, 40)}…” is not an amount.`);
  const bare = takeSigns(trimmed);
  if (bare.currencies !== null && !bare.currencies.includes(currency)) {
    return bare.currencies.length === 0
      ? fail('not-money', `“${trimmed}” is not an amount.`)
      : fail('currency', `“${trimmed}” is not in ${currency}.`);
  }
  if (bare.signs > 1) return fail('sign', `“${trimmed}” has two signs.`);
  const number = readMarkedNumber(bare.digits);
  if (number.kind === 'error') {
    return number.reason === 'groups'
      ? fail('groups', `The groups of digits in “${trimmed}” are not groups of three.`)
      : fail('not-money', `“${trimmed}” is not an amount.`);
  }
  const sign = bare.negative ? '-' : '';
  let plain: string;
  let shows: DecimalMark | null = null;
  if (number.kind === 'number') {
    plain = number.plain;
    shows = number.shows;
  } else if (digits === 0) {
    plain = number.asGrouped;
  } else if (options.decimalMark !== undefined) {
    plain = options.decimalMark === number.mark ? number.asDecimal : number.asGrouped;
  } else {
    return {
      kind: 'ambiguous',
      mark: number.mark,
      asDecimal: sign + number.asDecimal,
      asGrouped: sign + number.asGrouped,
    };
  }

  const [whole = '0', allDecimals = ''] = plain.split('.');
  const decimals = allDecimals.replace(/0+$/, '');
  if (decimals.length > digits + (options.purpose === 'unit-price' ? extraPriceDigits : 0)) {
    return fail('decimals', `“${trimmed}” has too many decimals: ${currency} has ${digits}.`);
  }
  const exact = `${sign}${whole}${decimals === '' ? '' : `.${decimals}`}`;
  const minor = minorOfPlain(exact, digits);
  if (minor === null) return fail('range', `“${trimmed}” is larger than the workbook can hold exactly.`);
  return { kind: 'amount', minor, plain: exact, shows };
}

/** Plain decimal text to minor units, a half rounded away from zero; null past 2^53 - 1. */
function minorOfPlain(plain: string, digits: number): number | null {
  const negative = plain.startsWith('-');
  const [whole = '0', decimals = ''] = plain.replace('-', '').split('.');
  let amount = BigInt(whole + decimals.slice(0, digits).padEnd(digits, '0'));
  if ((decimals[digits] ?? '0') >= '5') amount += 1n;
  if (amount > BigInt(Number.MAX_SAFE_INTEGER)) return null;
  return negative && amount !== 0n ? -Number(amount) : Number(amount);
}

interface BareAmount {
  readonly digits: string;
  readonly negative: boolean;
  readonly signs: number;
  readonly currencies: readonly string[] | null;
}

/** Takes parentheses, plus and minus, and a currency sign off an amount, in whatever order they were written. */
function takeSigns(trimmed: string): BareAmount {
  // "45,-" and "45.-" say that there are no cents.
  let rest = trimmed.replace(/[.,][-–—−]{1,2}(?=\s*\D*$)/u, '');
  let signs = 0;
  let negative = false;
  let currencies: readonly string[] | null = null;
  for (let turn = 0; turn < 4; turn += 1) {
    if (/^\(.*\)$/.test(rest)) {
      negative = true;
      signs += 1;
      rest = rest.slice(1, -1).trim();
    }
    const leading = /^[-−+]\s*/u.exec(rest);
    if (leading !== null) {
      negative = negative || !rest.startsWith('+');
      signs += 1;
      rest = rest.slice(leading[0].length);
    }
    const trailing = /\s*[-−]$/u.exec(rest);
    if (trailing !== null) {
      negative = true;
      signs += 1;
      rest = rest.slice(0, trailing.index);
    }
    if (currencies === null) {
      const split = splitSign(rest);
      currencies = split.currencies;
      rest = split.rest;
    }
  }
  return { digits: rest.trim(), negative, signs, currencies };
}

/** The currencies that the sign or code in an amount can stand for; null when it names none. */
export function currenciesNamed(text: string): readonly string[] | null {
  if (text.length > 80) return null;
  const { currencies } = takeSigns(text.replace(/[\s\u00a0\u202f\u2009]+/g, ' ').trim());
  return currencies === null || currencies.length === 0 ? null : currencies;
}

function acceptedMoney(currency: string, digits: number): string {
  return digits === 0
    ? `whole ${currency} such as 1250`
    : `an amount in ${currency} with at most ${digits} decimals, such as 1250 or 12.${'5'.padEnd(digits, '0')}`;
}

/**
 * Reads an amount somebody types into a field: the same forms, but nothing may be left open and a minus stands in front.
 * @returns minor units, or null for an empty field (no price is not a price of 0).
 * @throws Refusal `bad-input` naming the field and what it accepts.
 */
export function parseTypedMoney(text: string, currency: string, field = 'amount'): number | null {
  const reading = parseMoneyText(text, currency);
  if (reading.kind === 'blank') return null;
  const accepted = acceptedMoney(currency, minorDigits(currency));
  if (reading.kind === 'ambiguous') {
    throw new Refusal(
      'bad-input',
      `The ${field} “${text.trim()}” can be read as ${reading.asGrouped} or as ${reading.asDecimal}; ${currency} has ` +
        `${minorDigits(currency)} decimals. Nothing was changed.`,
      { field, accepted: `${accepted}, without a mark between thousands` },
    );
  }
  if (reading.kind === 'error') {
    throw new Refusal('bad-input', `The ${field} can't be read: ${reading.message} Nothing was changed.`, {
      field,
      accepted,
    });
  }
  if (/\d\s*[-−]\s*\D*$/u.test(text)) {
    throw new Refusal('bad-input', `The ${field} “${text.trim()}” ends with a minus. Nothing was changed.`, {
      field,
      accepted: `${accepted}; a minus stands in front`,
    });
  }
  return reading.minor;
}
