/** How far a part line's need is covered: one home for each count, in thousandths. */
import { type PlaceAccount, placeAccounts } from './accounts.ts';
import type { LineState, LotState, PartState } from './part-state.ts';

/** Places where a unit stands in for one that is needed. Rejected units don't: they wait to go back. */
export const coveringPlaces = placeAccounts.filter((place) => place !== 'rejected');

const onEnginePlaces = ['fitted', 'snug', 'verified'] as const satisfies readonly PlaceAccount[];

/** Bought, given or made: ours to keep. A borrowed unit goes back to its owner, so its need stays open. */
export function isOurs(lot: Pick<LotState, 'source'>): boolean {
  return lot.source !== 'borrowed';
}

/** Whether the lot came from a vendor, who can be asked to take it back. */
export function isFromVendor(lot: Pick<LotState, 'source'>): boolean {
  return lot.source === 'bought' || lot.source === 'over-delivery';
}

/** Units of a line still to come: ordered + replaced − cancelled − received. */
export function outstandingOf(line: LineState): number {
  return line.orderedMilli + line.replacedMilli - line.cancelledMilli - line.receivedMilli;
}

/** Units on the way on all lines. */
export function outstanding(state: PartState): number {
  return state.lines.reduce((sum, line) => sum + outstandingOf(line), 0);
}

/** Units in the places given, over the lots given. */
export function inPlaces(lots: readonly LotState[], places: readonly PlaceAccount[]): number {
  let sum = 0;
  for (const lot of lots) for (const place of places) sum += lot.places[place];
  return sum;
}

/** Units that count against the need: on the way, or ours in any place but the rejected ones. */
export function covered(state: PartState): number {
  return outstanding(state) + inPlaces(state.lots.filter(isOurs), coveringPlaces);
}

/** U in units: needed, neither in hand nor on the way. Its price is E. */
export function uncovered(state: PartState): number {
  return Math.max(0, state.needMilli - covered(state));
}

/** Units on the engine to stay, finally torqued or not, whoever owns them. */
export function onEngine(state: PartState): number {
  return inPlaces(state.lots, onEnginePlaces);
}

/** How many more units the engine takes. */
export function room(state: PartState): number {
  return state.needMilli - onEngine(state);
}

/** Units tied to the need, which must be released before it is dropped: all but what lies on the shelf or is lent. */
export function tied(state: PartState): number {
  return outstanding(state) + inPlaces(state.lots, ['inspection', 'allocated', 'trial-fitted', ...onEnginePlaces]);
}

/** Returned units of a lot that the vendor has neither refunded nor replaced. */
export function unsettledOf(lot: LotState): number {
  return lot.exits.returned - lot.settledMilli;
}
