/**
 * What each kind of entry carries in its payload and columns, and how it is read back. Every quantity is in
 * thousandths, every amount in minor units of the base currency.
 *
 * | kind | columns | payload |
 * |---|---|---|
 * | need-added | quantity (0 for a spare) | estimateEachE4? |
 * | need-changed | | needMilli?, estimateEachE4? (null takes the estimate away) |
 * | need-dropped | quantity? (all of the need when absent) | |
 * | ordered | order, line, quantity, amount = landed value | |
 * | acknowledged, back-ordered, shipped | line, quantity | from? (a label) |
 * | repriced | line, amount = new landed value of the line | |
 * | received | line, lot (a new id), quantity | from? (a label) |
 * | over-delivered | line, lot (a new id), quantity, amount? | |
 * | accepted | lot, quantity | to? shelf, allocated |
 * | rejected | lot, quantity | reason (one of `rejectReasons`), from? |
 * | sent-back | lot, quantity | |
 * | exchanged | line, lot?, quantity | |
 * | refunded | line, lot?, amount = cash that came in | feeMinor?, claimMinor? (booked value closed, when cash plus fee is another at the day's rate), closesMilli? |
 * | cancelled | line, quantity | from? (a label) |
 * | paid | line, amount = booked value cleared | cashMinor? (what left when it was another at the day's rate), roundingMinor? |
 * | deposit-paid, deposit-refunded | line, amount | |
 * | deposit-kept | line, amount | reason |
 * | came-in | lot (a new id), quantity, amount? | source, to? shelf, allocated; owner and dueOn when borrowed |
 * | allocated, released, trial-fitted, fitted, snugged, verified, lent, came-back, given-back, moved | lot, quantity | from? |
 * | taken-off | lot, quantity | from?, to? allocated, shelf, rejected, scrapped; reason for the last two |
 * | verification-withdrawn | lot, quantity | reason, to? fitted, snug |
 * | lost, scrapped, consumed | lot, quantity | reason, from? |
 * | found-again | lot, quantity | |
 * | budgeted | subject, amount (negative takes away) | contingency? true |
 * | contingency-drawn | subject = what it is drawn for, amount | |
 * | bolts-listed, bolts-snugged, bolts-final, bolts-loosened, bolts-dropped | subject, quantity | from? straight, snug, final |
 * | waived | subject | reason |
 *
 * A reason may stand in the payload or in the note.
 */
import { Refusal } from '../refusal.ts';
import type { EntryDraft } from './entry.ts';

/** The draft's quantity, above 0. @throws Refusal `bad-input` naming the quantity. */
export function quantityOf(draft: EntryDraft): number {
  return wholeNumber(draft.quantityMilli, 'quantity', 1, 'a quantity above 0');
}

/** The draft's amount, at least `least`. @throws Refusal `bad-input` naming the amount. */
export function amountOf(draft: EntryDraft, least: number): number {
  return wholeNumber(draft.amountMinor, 'amount', least, least > 0 ? 'an amount above 0' : 'an amount of 0 or more');
}

/** An optional whole number of the payload. @throws Refusal `bad-input` when it isn't one, or is below `least`. */
export function payloadNumber(draft: EntryDraft, key: string, least = 0): number | undefined {
  const value = draft.payload?.[key];
  return value === undefined || value === null ? undefined : wholeNumber(value, key, least, `${least} or more`);
}

/** An optional word of the payload out of a fixed list. @throws Refusal `bad-input` for any other. */
export function payloadChoice<T extends string>(draft: EntryDraft, key: string, choices: readonly T[]): T | undefined {
  const value = draft.payload?.[key];
  if (value === undefined || value === null || value === '') return undefined;
  const chosen = choices.find((choice) => choice === value);
  if (chosen !== undefined) return chosen;
  throw badInput(key, `is “${String(value)}”, which isn't possible here`, `one of: ${choices.join(', ')}`);
}

/** Why: the payload's reason or the note. @throws Refusal `needs-reason` when both are blank. */
export function requireReason(draft: EntryDraft): string {
  const given = draft.payload?.['reason'];
  const reason = typeof given === 'string' && given.trim() !== '' ? given.trim() : (draft.note ?? '').trim();
  if (reason !== '') return reason;
  throw new Refusal('needs-reason', 'A reason is missing. Nothing was changed.', {
    field: 'reason',
    accepted: 'a few words that say why',
  });
}

export function wholeNumber(value: unknown, field: string, least: number, accepted: string): number {
  if (typeof value === 'number' && Number.isSafeInteger(value) && value >= least) return value;
  if (value === undefined) throw badInput(field, 'is missing', accepted);
  throw badInput(field, `is ${String(value)}, which is out of range or not a whole number`, accepted);
}

export function badInput(field: string, what: string, accepted: string): Refusal {
  return new Refusal('bad-input', `The ${field} ${what}. Nothing was changed.`, { field, accepted });
}
