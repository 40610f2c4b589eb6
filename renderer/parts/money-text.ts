import { minorDigits, plainAmount } from '../../core/money/currency.ts';
import { Refusal } from '../../core/refusal.ts';

export const plainMoney = plainAmount;

export interface MoneyTextOptions {
  readonly field: string;
  readonly negative?: boolean;
}

/**
 * Read a typed amount into whole minor units: `1234.5`, `1 234,50`, `1,234.50` and `1.234,50` are all the same in EUR.
 * A single mark with exactly three digits behind it could group thousands or start decimals, so it is refused.
 * @throws Refusal `bad-input` naming the field and what it accepts.
 */
export function parseMoneyText(text: string, currency: string, { field, negative = false }: MoneyTextOptions): number {
  const places = minorDigits(currency);
  const refuse: (reason: string) => never = (reason) => {
    throw new Refusal('bad-input', `The ${field} “${text}” ${reason} Nothing was changed.`, {
      field,
      accepted: places === 0 ? 'a whole amount such as 1250' : `an amount such as ${(1250).toFixed(places)}`,
    });
  };
  const typed = text
    .trim()
    .replace(/[\s\u00a0\u202f'’]/g, '')
    .replace(/^[−–]/, '-');
  const match = /^(-?)(\d{1,3}(?:([.,])\d{3})*|\d+)(?:([.,])(\d+))?$/.exec(typed);
  if (match === null) refuse("can't be read as an amount.");
  const [, minus, head = '', grouping, mark, decimals = ''] = match;
  const ambiguous =
    places !== 3 &&
    ((mark !== undefined && grouping === undefined && decimals.length === 3) ||
      (mark === undefined && grouping !== undefined && head.split(grouping).length === 2));
  if (ambiguous || (grouping !== undefined && grouping === mark)) refuse('could mean two amounts.');
  if (decimals.length > places) refuse(`has more than ${places} decimals.`);
  const whole = BigInt(head.replace(/[.,]/g, '') + decimals.padEnd(places, '0'));
  if (whole > BigInt(Number.MAX_SAFE_INTEGER)) refuse('is larger than the workbook can hold.');
  if (minus === '-' && !negative && whole !== 0n) refuse('is below nothing.');
  return minus === '-' ? -Number(whole) : Number(whole);
}
