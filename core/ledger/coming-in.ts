/** Units that come in without an order: owned already, from a donor, borrowed, found, made. */
import { requireDate } from '../dates/calendar-date.ts';
import type { EntryDraft } from './entry.ts';
import { newLotId } from './find-in-state.ts';
import type { PartState } from './part-state.ts';
import { amountOf, badInput, payloadChoice, quantityOf } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';

/**
 * Brings a lot in at value c (0 is fine): cost + c, transfer − c, so the value counts as paid by this build and not as
 * cash. A borrowed lot is quantity only and goes straight to the build: it needs an owner and a day to go back.
 */
export function postCameIn(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const quantityMilli = quantityOf(draft);
  const source = payloadChoice(draft, 'source', ['owned', 'donor', 'borrowed', 'found', 'made']);
  if (source === undefined) throw badInput('source', 'is missing', 'owned, donor, borrowed, found or made');
  const amountMinor = draft.amountMinor === undefined ? 0 : amountOf(draft, 0);
  const lot = { lot: newLotId(state, draft), line: 0, source };
  const borrowed = source === 'borrowed';
  if (borrowed) checkLoan(draft, amountMinor);
  const to = payloadChoice(draft, 'to', borrowed ? ['allocated'] : ['shelf', 'allocated']);
  list.lot(lot, 'came-in', { quantityMilli });
  list.lot(lot, to ?? (borrowed ? 'allocated' : 'shelf'), { quantityMilli });
  list.lot(lot, 'cost', { amountMinor });
  list.lot(lot, 'transfer', { amountMinor: -amountMinor });
  return { by: 'estimate' };
}

function checkLoan(draft: EntryDraft, amountMinor: number): void {
  const owner = draft.payload?.['owner'];
  const dueOn = draft.payload?.['dueOn'];
  if (typeof owner !== 'string' || owner.trim() === '') throw badInput('owner', 'is missing', 'whose it is');
  if (typeof dueOn !== 'string') throw badInput('due day', 'is missing', 'the day it goes back, such as 2026-03-14');
  requireDate(dueOn, 'due day');
  if (amountMinor !== 0) throw badInput('amount', 'is given for a borrowed unit', 'no value: it stays its owner’s');
}
