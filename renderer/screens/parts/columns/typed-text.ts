import { unitPriceFromText } from '../../../../core/money/line-value.ts';
import { parseMoneyText } from '../../../../core/money/money-text.ts';
import { Refusal } from '../../../../core/refusal.ts';

/** What was typed, without blanks around it. @throws Refusal when nothing is left. */
export function requireTyped(text: string, field: string): string {
  const typed = text.trim();
  if (typed !== '') return typed;
  throw new Refusal('bad-input', `The ${field} is empty. Nothing was changed.`, {
    field,
    accepted: 'a few words that name the part',
  });
}

/**
 * A price each in 1/10 000 of a minor unit, from typed text; null when it was emptied.
 * @throws Refusal when it can't be read or is below zero.
 */
export function readTypedPrice(text: string, currency: string): number | null {
  if (text.trim() === '') return null;
  const reading = parseMoneyText(text, currency, { purpose: 'unit-price' });
  if (reading.kind === 'amount' && !reading.plain.startsWith('-')) return unitPriceFromText(reading.plain, currency);
  const reason = reading.kind === 'error' ? reading.message : `“${text.trim()}” can't be taken.`;
  throw new Refusal('bad-input', `The price each can't be read: ${reason} Nothing was changed.`, {
    field: 'price each',
    accepted: 'a price of 0 or more such as 12.50 or 0.0345',
  });
}
