/** Refused units and what becomes of them: sent back, exchanged, refunded. */
import { isFromVendor } from './coverage.ts';
import { type EntryDraft, rejectReasons } from './entry.ts';
import { lineOf, lotOf } from './find-in-state.ts';
import { tooMuch } from './limits.ts';
import { chooseLots, type LotPick, postMove } from './lot-choice.ts';
import { type Bucket, moves } from './moves.ts';
import type { LineState, LotState, PartState } from './part-state.ts';
import { amountOf, payloadChoice, payloadNumber, quantityOf, requireReason } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';
import { claimShare, costShare, overpaidOf } from './unit-costs.ts';

/** Refused, cost c: claims + c, cost − c, and c comes back into the remaining estimate. */
export function postRejected(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const lot = lotOf(state, draft);
  requireReason(draft);
  payloadChoice(draft, 'reason', rejectReasons);
  const from = payloadChoice(draft, 'from', moves.rejected.from);
  const picks = chooseLots(state, 'rejected', quantityOf(draft), { lot: lot.lot, ...(from ? { from } : {}) });
  return postIntoRejected(list, state, lot, picks);
}

/** Moves picked units of a lot to the rejected ones. Units that no vendor sent stay our cost: nobody owes for them. */
export function postIntoRejected(
  list: PostingList,
  state: PartState,
  lot: LotState,
  picks: readonly LotPick[],
): RemainingRule {
  postMove(list, state, picks, 'rejected');
  if (!isFromVendor(lot)) return { by: 'estimate' };
  const quantityMilli = picks.reduce((sum, pick) => sum + pick.quantityMilli, 0);
  const costMinor = costShare(lot, quantityMilli);
  list.lot(lot, 'claims', { amountMinor: costMinor });
  list.lot(lot, 'cost', { amountMinor: -costMinor });
  return { by: 'cost', costMinor, quantityMilli };
}

/** Return sent: rejected units leave for good. */
export function postSentBack(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const lot = lotOf(state, draft);
  postMove(list, state, chooseLots(state, 'sent-back', quantityOf(draft), { lot: lot.lot }), 'returned');
  return { by: 'estimate' };
}

/** Exchange agreed, claim c: the units are on order again; commitment + c, vendor + c, claims − c. */
export function postExchanged(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const quantityMilli = quantityOf(draft);
  const picks = settle(list, state, line, draft, quantityMilli);
  let moved = 0;
  for (const { lot, quantityMilli: units } of picks) {
    const share = claimShare(lot, units);
    list.lot(lot, 'claims', { amountMinor: -share });
    moved += share;
  }
  list.line(line, 'replaced', { quantityMilli });
  list.line(line, 'placed', { quantityMilli });
  list.line(line, 'vendor', { amountMinor: moved });
  list.line(line, 'commitment', { amountMinor: moved });
  return { by: 'estimate' };
}

/**
 * Refund f of claim c with fee c − f: cash + f, fees + (c − f), claims − c. Once the claims are closed it takes back
 * what was overpaid, say after a price was lowered. A difference from the day's exchange rate goes to the exchange
 * account, not to the part.
 */
export function postRefunded(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const cash = amountOf(draft, 0);
  const fee = payloadNumber(draft, 'feeMinor') ?? 0;
  const closed = payloadNumber(draft, 'claimMinor') ?? cash + fee;
  const overpaid = overpaidOf(line);
  const most = line.claimsMinor + overpaid;
  if (closed > most) throw tooMuch(overpaid > 0 ? 'claims and overpayment' : 'claims', most, closed);
  const settling = payloadNumber(draft, 'closesMilli') ?? 0;
  const settled = settling > 0 ? settle(list, state, line, draft, settling).map((pick) => pick.lot) : [];
  const lots = state.lots.filter((lot) => lot.line === line.line);
  const named = lots.filter((lot) => lot.lot === draft.lot);
  const claimed = Math.min(closed, line.claimsMinor);
  closeClaims(list, line, claimed, lots, [...settled, ...named, null, ...lots]);
  list.line(line, 'vendor', { amountMinor: -(closed - claimed) });
  list.line(line, 'cash', { amountMinor: cash });
  list.line(line, 'cost', { amountMinor: fee });
  list.line(line, 'exchange', { amountMinor: closed - cash - fee });
  return { by: 'estimate' };
}

/** Takes claims off in the order given; null stands for the line's own claims, from cancelling. */
function closeClaims(
  list: PostingList,
  line: LineState,
  closed: number,
  lots: readonly LotState[],
  order: readonly (LotState | null)[],
): void {
  const ofLine = line.claimsMinor - lots.reduce((sum, lot) => sum + lot.claimsMinor, 0);
  let open = closed;
  for (const lot of new Set(order)) {
    const taken = Math.min(open, lot === null ? ofLine : lot.claimsMinor);
    if (lot === null) list.line(line, 'claims', { amountMinor: -taken });
    else list.lot(lot, 'claims', { amountMinor: -taken });
    open -= taken;
  }
}

interface Settled {
  readonly lot: LotState;
  readonly quantityMilli: number;
}

/** Marks returned units of the line (or of the draft's lot) as settled, oldest lot first. */
function settle(
  list: PostingList,
  state: PartState,
  line: LineState,
  draft: EntryDraft,
  quantityMilli: number,
): Settled[] {
  const lots = state.lots.filter((lot) => lot.line === line.line);
  const kind = draft.kind === 'exchanged' ? 'exchanged' : 'refunded';
  const picks = chooseLots({ ...state, lots }, kind, quantityMilli, draft.lot === undefined ? {} : { lot: draft.lot });
  return picks.flatMap((pick) => {
    const lot = lots.find((one) => one.lot === pick.lot);
    if (lot === undefined) return [];
    list.lot(lot, 'settled', { quantityMilli: pick.quantityMilli });
    return [{ lot, quantityMilli: pick.quantityMilli }];
  });
}

/** Claim given up with units that won't go back, because they were lost or scrapped after they were refused. */
export function postClaimGivenUp(list: PostingList, lot: LotState, from: Bucket, quantityMilli: number): void {
  if (from !== 'rejected' || !isFromVendor(lot)) return;
  const share = claimShare(lot, quantityMilli);
  list.lot(lot, 'loss', { amountMinor: share });
  list.lot(lot, 'claims', { amountMinor: -share });
}
