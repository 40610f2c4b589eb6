import { circleSpots, customSequence, rowSpots, type Spot, spiralSequence, starSequence } from '../torque/sequence.ts';
import type { RecordValuesRow } from '../workbook/store/record-tables.ts';

/** The order in which a group's bolts are tightened: star, spiral or the group's own. */
export function boltSequence(group: RecordValuesRow): number[] {
  const count = Number(group['count']);
  if (group['pattern'] === 'spiral') return spiralSequence(count, Number(group['rows']));
  const order = group['order'] as unknown as readonly number[];
  // A group whose count was changed after its order was written down is walked by numbers until the order is mended.
  if (group['pattern'] === 'custom') {
    return new Set(order).size === count && order.length === count && Math.max(...order) === count
      ? customSequence(order, count)
      : Array.from({ length: count }, (_, index) => index + 1);
  }
  return starSequence(count);
}

/** Where each bolt lies on the drawing; a group in its own order is drawn in the rows it says. */
export const boltSpots = (group: RecordValuesRow): Spot[] =>
  group['pattern'] === 'star'
    ? circleSpots(Number(group['count']))
    : rowSpots(Number(group['count']), Number(group['rows']));
