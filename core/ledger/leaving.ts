/** Units that leave for good, and lost ones that turn up again. */
import { isFromVendor } from './coverage.ts';
import type { EntryDraft } from './entry.ts';
import { lotOf } from './find-in-state.ts';
import { chooseLots, type LotPick, postMove } from './lot-choice.ts';
import { moves } from './moves.ts';
import type { LotState, PartState } from './part-state.ts';
import { payloadChoice, quantityOf, requireReason } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';
import { postClaimGivenUp } from './returning.ts';
import { costShare, lossShare } from './unit-costs.ts';

const exitOf = {
  lost: 'lost',
  scrapped: 'scrapped',
  consumed: 'consumed',
  'given-back': 'given-back',
  moved: 'moved',
} as const;

export type LeavingKind = keyof typeof exitOf;

export function isLeaving(kind: string): kind is LeavingKind {
  return kind in exitOf;
}

/**
 * Lost, scrapped, used up, given back to its owner, moved to another build. Lost and scrapped, cost c: loss + c,
 * cost − c; moved takes its cost along; what is used up stays a cost of the build.
 */
export function postLeaving(list: PostingList, state: PartState, draft: EntryDraft, kind: LeavingKind): RemainingRule {
  const lot = lotOf(state, draft);
  if (kind !== 'given-back' && kind !== 'moved') requireReason(draft);
  const from = payloadChoice(draft, 'from', moves[kind].from);
  const picks = chooseLots(state, kind, quantityOf(draft), { lot: lot.lot, ...(from === undefined ? {} : { from }) });
  if (kind === 'lost' || kind === 'scrapped') return postGone(list, state, lot, picks, kind);
  postMove(list, state, picks, exitOf[kind]);
  if (kind === 'moved') {
    const cost = costShare(lot, quantityOf(draft));
    list.lot(lot, 'transfer', { amountMinor: cost });
    list.lot(lot, 'cost', { amountMinor: -cost });
  }
  return { by: 'estimate' };
}

/** Scraps picked units of a lot. */
export function postScrapped(
  list: PostingList,
  state: PartState,
  lot: LotState,
  picks: readonly LotPick[],
): RemainingRule {
  return postGone(list, state, lot, picks, 'scrapped');
}

function postGone(
  list: PostingList,
  state: PartState,
  lot: LotState,
  picks: readonly LotPick[],
  exit: 'lost' | 'scrapped',
): RemainingRule {
  postMove(list, state, picks, exit);
  // A vendor's refused units carry a claim instead of a cost.
  const claimed = isFromVendor(lot) ? 'rejected' : undefined;
  let units = 0;
  for (const pick of picks) {
    if (pick.from === claimed) postClaimGivenUp(list, lot, pick.from, pick.quantityMilli);
    else units += pick.quantityMilli;
  }
  const cost = costShare(lot, units);
  list.lot(lot, 'loss', { amountMinor: cost });
  list.lot(lot, 'cost', { amountMinor: -cost });
  return { by: 'estimate' };
}

/** Found after it was written off: back on the shelf, its cost back from loss. A borrowed unit is allocated again. */
export function postFoundAgain(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const lot = lotOf(state, draft);
  const quantityMilli = quantityOf(draft);
  const picks = chooseLots(state, 'found-again', quantityMilli, { lot: lot.lot });
  postMove(list, state, picks, lot.source === 'borrowed' ? 'allocated' : 'shelf');
  const back = lossShare(lot, quantityMilli);
  list.lot(lot, 'cost', { amountMinor: back });
  list.lot(lot, 'loss', { amountMinor: -back });
  return { by: 'estimate' };
}
