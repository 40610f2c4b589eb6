/** Money to the vendor. */
import type { EntryDraft } from './entry.ts';
import { lineOf } from './find-in-state.ts';
import type { PartState } from './part-state.ts';
import { amountOf, payloadNumber } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';

/**
 * Paid a: vendor + a, cash − a. The vendor account is cleared at the booked value; what left at the day's rate beyond
 * it goes to the exchange account, cash rounding to its own, neither to the part.
 * Source: the idea of IAS 21 (effects of changes in foreign exchange rates).
 */
export function postPaid(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const booked = amountOf(draft, 1);
  const cash = payloadNumber(draft, 'cashMinor') ?? booked;
  const rounding = payloadNumber(draft, 'roundingMinor', Number.MIN_SAFE_INTEGER) ?? 0;
  list.line(line, 'vendor', { amountMinor: booked });
  list.line(line, 'exchange', { amountMinor: cash - booked });
  list.line(line, 'rounding', { amountMinor: rounding });
  list.line(line, 'cash', { amountMinor: -cash - rounding });
  return { by: 'estimate' };
}
