import type { OrderRow } from '../../contract/orders.ts';
import type { LinePosition } from './order-states.ts';

/**
 * The word for an order as a whole. What needs a person comes first: units on back-order, then a delivery in parts; an
 * order is acknowledged once no unit is merely placed. When nothing is to come, refused or returned units and claims
 * keep it open.
 */
export function orderStanding(lines: readonly LinePosition[]): OrderRow['standing'] {
  const some = (pick: (position: LinePosition) => number): boolean => lines.some((position) => pick(position) > 0);
  if (some(({ outstandingMilli }) => outstandingMilli)) {
    if (some(({ line }) => line.backOrderedMilli)) return 'back-ordered';
    if (some(({ line }) => line.receivedMilli)) return 'part received';
    if (some(({ line }) => line.inTransitMilli)) return 'in transit';
    return some(({ line }) => line.placedMilli) ? 'placed' : 'acknowledged';
  }
  const open = ({ rejectedMilli, returnedUnsettledMilli, figures }: LinePosition): number =>
    rejectedMilli + returnedUnsettledMilli + figures.claimsMinor;
  if (some(open)) return 'to settle';
  return some(({ line }) => line.receivedMilli) ? 'received' : 'cancelled';
}
