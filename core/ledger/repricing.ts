/** An order line's price corrected, before or after its units came. */
import { allocate } from '../money/allocate.ts';
import { valueOfFirst } from '../money/line-value.ts';
import { outstandingOf, unsettledOf } from './coverage.ts';
import type { EntryDraft } from './entry.ts';
import { lineOf } from './find-in-state.ts';
import type { LineState, LotState, PartState } from './part-state.ts';
import { amountOf } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';
import { isPristine, unitsWithCost } from './unit-costs.ts';

/**
 * New landed value, d more than before: commitment + d on the part not received, cost + d against the vendor on the
 * part received. The share of cancelled units has gone with them.
 */
export function postRepriced(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const line = lineOf(state, draft);
  const landed = amountOf(draft, 0);
  const change = split(line, landed);
  list.line(line, 'ordered', { amountMinor: landed - line.landedMinor });
  list.line(line, 'commitment', { amountMinor: change.commitment });
  spread(list, state, line, change.received);
  list.line(line, 'vendor', { amountMinor: -change.received });
  return { by: 'estimate' };
}

function split(line: LineState, landed: number): { commitment: number; received: number } {
  const change = landed - line.landedMinor;
  if (isPristine(line)) {
    const commitment = landed - valueOfFirst(landed, line.orderedMilli, line.receivedMilli) - line.commitmentMinor;
    return { commitment, received: change - commitment };
  }
  const waiting = outstandingOf(line);
  // Replacements arrive in place of units that were received before, so they are counted once.
  const kept = Math.max(0, line.receivedMilli - line.replacedMilli);
  const [onOrder = 0, arrived = 0] = allocate(change, [waiting, kept, line.cancelledMilli]);
  const commitment = Math.max(onOrder, -line.commitmentMinor);
  return { commitment, received: arrived + (onOrder - commitment) };
}

/** Spreads the change over the line's received units: where their cost went, there the change goes. */
function spread(list: PostingList, state: PartState, line: LineState, change: number): void {
  if (change === 0) return;
  const lots = state.lots.filter((lot) => lot.line === line.line && lot.source === 'bought');
  if (lots.length === 0) {
    list.line(line, 'cost', { amountMinor: change });
    return;
  }
  const shares = allocate(
    change,
    lots.map((lot) => lot.cameInMilli - lot.settledMilli),
  );
  lots.forEach((lot, index) => {
    spreadOverLot(list, lot, shares[index] ?? 0);
  });
}

function spreadOverLot(list: PostingList, lot: LotState, change: number): void {
  const refused = lot.places.rejected + unsettledOf(lot);
  const gone = lot.exits.lost + lot.exits.scrapped;
  const [, loss = 0, claim = 0] = allocate(change, [unitsWithCost(lot) + lot.exits.moved, gone, refused]);
  // A claim can't be lowered below nothing; what it can't take stays with the cost.
  const claims = Math.max(claim, -lot.claimsMinor);
  list.lot(lot, 'loss', { amountMinor: loss });
  list.lot(lot, 'claims', { amountMinor: claims });
  list.lot(lot, 'cost', { amountMinor: change - loss - claims });
}
