/** What some of the units of a lot or a line are worth, in minor units of the base currency. */
import { roundHalfAway } from '../money/currency.ts';
import { extendedMinor, stepValue, valueOfFirst } from '../money/line-value.ts';
import { isFromVendor, outstandingOf, unsettledOf } from './coverage.ts';
import type { LineState, LotState } from './part-state.ts';

/** `total × part / whole`, rounded half away from zero; all of the total when the part is the whole. */
export function shareOf(totalMinor: number, partMilli: number, wholeMilli: number): number {
  if (wholeMilli <= 0 || totalMinor === 0) return 0;
  return Number(roundHalfAway(BigInt(totalMinor) * BigInt(partMilli), BigInt(wholeMilli)));
}

/** Price of units at the estimate each: 0 without an estimate. @throws Refusal `bad-input` past what can be held exactly. */
export function atEstimate(quantityMilli: number, estimateEachE4: number | null): number {
  return extendedMinor(quantityMilli, estimateEachE4 ?? 0);
}

/**
 * Whether nothing but receipts happened to the line's value, so that receipts can follow the steps of its total.
 * After a cancellation or an exchange the commitment is shared by what is outstanding instead.
 */
export function isPristine(line: LineState): boolean {
  if (line.orderedMilli <= 0 || line.receivedMilli > line.orderedMilli) return false;
  return (
    outstandingOf(line) === line.orderedMilli - line.receivedMilli &&
    line.commitmentMinor === line.landedMinor - valueOfFirst(line.landedMinor, line.orderedMilli, line.receivedMilli)
  );
}

/** Value of the next units that arrive on a line; all that is left when they are the last. */
export function arrivalValue(line: LineState, quantityMilli: number): number {
  if (isPristine(line)) {
    const { landedMinor, orderedMilli, receivedMilli } = line;
    return stepValue(landedMinor, orderedMilli, receivedMilli, receivedMilli + quantityMilli);
  }
  return outstandingShare(line, quantityMilli);
}

/** Share of the commitment that some of the outstanding units carry. */
export function outstandingShare(line: LineState, quantityMilli: number): number {
  return shareOf(line.commitmentMinor, quantityMilli, outstandingOf(line));
}

/**
 * What was paid on a line beyond the value received and still on order: the vendor owes it. The vendor account stands
 * at paid − received, in the vendor's debt when positive.
 */
export function overpaidOf(line: LineState, commitmentMinor: number = line.commitmentMinor): number {
  return Math.max(0, line.vendorMinor - commitmentMinor);
}

/** Units of a lot whose cost is still in the lot's cost; a vendor's rejected and returned units moved theirs to claims. */
export function unitsWithCost(lot: LotState): number {
  const { places, exits } = lot;
  const held = Object.values(places).reduce((sum, units) => sum + units, 0);
  return held - (isFromVendor(lot) ? places.rejected : 0) + exits.consumed;
}

/**
 * Cost of some units of a lot that are about to leave it, 0 or more. A lot's cost can stand below 0 when its price was
 * lowered after units had taken theirs along to another build; that credit stays with the lot.
 */
export function costShare(lot: LotState, quantityMilli: number): number {
  return shareOf(Math.max(0, lot.costMinor), quantityMilli, unitsWithCost(lot));
}

/** Loss that comes back with some units of a lot that were written off. */
export function lossShare(lot: LotState, quantityMilli: number): number {
  return shareOf(Math.max(0, lot.lossMinor), quantityMilli, lot.exits.lost + lot.exits.scrapped);
}

/** Claim that goes with some rejected or returned units of a lot. */
export function claimShare(lot: LotState, quantityMilli: number): number {
  return shareOf(lot.claimsMinor, quantityMilli, lot.places.rejected + unsettledOf(lot));
}
