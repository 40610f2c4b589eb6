/** Units that arrive: a new lot in inspection, its cost recognised. */
import type { EntryDraft } from './entry.ts';
import { lineOf, lotOf, newLotId } from './find-in-state.ts';
import { chooseLots, postMove } from './lot-choice.ts';
import { takeLabels } from './ordering.ts';
import type { PartState } from './part-state.ts';
import { amountOf, payloadChoice, quantityOf } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';
import { arrivalValue } from './unit-costs.ts';

/** Received, value v: commitment − v, cost + v against the vendor. More than is outstanding is an over-delivery. */
export function postReceived(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const quantityMilli = quantityOf(draft);
  const lot = { lot: newLotId(state, draft), line: line.line, source: 'bought' } as const;
  // What was promised first comes first; units on back-order were said not to be in this box.
  takeLabels(list, line, draft, ['in-transit', 'acknowledged', 'placed', 'back-ordered'], 'outstanding');
  const amountMinor = arrivalValue(line, quantityMilli);
  list.line(line, 'received', { quantityMilli });
  list.line(line, 'commitment', { amountMinor: -amountMinor });
  list.lot(lot, 'came-in', { quantityMilli });
  list.lot(lot, 'inspection', { quantityMilli });
  list.lot(lot, 'cost', { amountMinor });
  list.line(line, 'vendor', { amountMinor: -amountMinor });
  return { by: 'estimate' };
}

/** More than was ordered: a lot outside the order, at the value that the vendor bills for it, or 0. */
export function postOverDelivered(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const quantityMilli = quantityOf(draft);
  const amountMinor = draft.amountMinor === undefined ? 0 : amountOf(draft, 0);
  const lot = { lot: newLotId(state, draft), line: line.line, source: 'over-delivery' } as const;
  list.lot(lot, 'came-in', { quantityMilli });
  list.lot(lot, 'inspection', { quantityMilli });
  list.lot(lot, 'cost', { amountMinor });
  list.line(line, 'vendor', { amountMinor: -amountMinor });
  return { by: 'estimate' };
}

/** Looked at and good: from inspection to the shelf, or straight to the build. */
export function postAccepted(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const lot = lotOf(state, draft);
  const picks = chooseLots(state, 'accepted', quantityOf(draft), { lot: lot.lot });
  postMove(list, state, picks, payloadChoice(draft, 'to', ['shelf', 'allocated']) ?? 'shelf');
  return { by: 'estimate' };
}
