import type { OrderDetail, OrderRow } from '../../../core/contract/orders.ts';
import { counted } from '../../parts/formats.ts';
import type { StateName } from '../../parts/state.tsx';

/** What an order is called: its number, or the vendor and day where it has none. */
export const orderName = (row: Pick<OrderRow, 'number' | 'vendorName'>): string =>
  row.number === '' ? `Order at ${row.vendorName}` : `Order ${row.number}`;

/** Units to come, money to pay or money to get back: such an order is open. */
export const isOpen = (row: OrderRow): boolean =>
  row.outstandingLines > 0 || row.stillToPayMinor > 0 || row.claimsMinor > 0;

/** A promise for units still to come lies before the day. */
export const isOverdue = (row: OrderRow, day: string): boolean =>
  row.outstandingLines > 0 && row.promisedOn !== null && row.promisedOn < day;

/** The Orders page's first sentence. */
export function ordersAnswer(rows: readonly OrderRow[], day: string, say: (minor: number) => string): string {
  if (rows.length === 0) return 'No order is entered yet.';
  const open = rows.filter(isOpen);
  const owed = rows.reduce((sum, { stillToPayMinor }) => sum + stillToPayMinor, 0);
  const claims = rows.reduce((sum, { claimsMinor }) => sum + claimsMinor, 0);
  if (open.length === 0) return `All is in and paid: ${counted(rows.length, 'order', 'orders')}.`;
  const waiting = open.filter(({ outstandingLines }) => outstandingLines > 0).length;
  const late = open.filter((row) => isOverdue(row, day)).length;
  const backOrdered = open.filter(({ backOrderedOn }) => backOrderedOn !== null).length;
  const facts = [
    waiting === 0 ? 'nothing more is to come' : `${waiting} ${waiting === 1 ? 'has' : 'have'} parts to come`,
    late === 0 ? 'none is past its promise' : `${late} ${late === 1 ? 'is' : 'are'} past a promise`,
    ...(backOrdered === 0 ? [] : [`${backOrdered} ${backOrdered === 1 ? 'waits' : 'wait'} on a back-order`]),
  ];
  return `${counted(open.length, 'order is', 'orders are')} open: ${facts.join(', ')}. ${paySentence(owed, claims, say)}`;
}

/** What vendors owe is taken off what is still to pay, as on every page. */
function paySentence(owed: number, claims: number, say: (minor: number) => string): string {
  if (owed < 0) return `Vendors owe ${say(-owed)} more than is still to pay them.`;
  const less = claims > 0 ? `, once the ${say(claims)} that vendors owe is taken off` : '';
  return owed === 0 ? `Nothing is left to pay${less}.` : `${say(owed)} is still to pay${less}.`;
}

type Line = OrderDetail['lines'][number];

export interface LineQuantity {
  readonly state: StateName;
  readonly quantityMilli: number;
}

/** Where the units of a line are, in the order of their way here; only what there is. */
export function lineQuantities(line: Line): readonly LineQuantity[] {
  const all: readonly LineQuantity[] = [
    { state: 'placed', quantityMilli: line.placedMilli },
    { state: 'acknowledged', quantityMilli: line.acknowledgedMilli },
    { state: 'back-ordered', quantityMilli: line.backOrderedMilli },
    { state: 'in transit', quantityMilli: line.inTransitMilli },
    { state: 'received', quantityMilli: line.receivedMilli },
    { state: 'to inspect', quantityMilli: line.inspectionMilli },
    { state: 'rejected', quantityMilli: line.rejectedMilli },
    { state: 'returned', quantityMilli: line.returnedUnsettledMilli },
    { state: 'cancelled', quantityMilli: line.cancelledMilli },
  ];
  return all.filter(({ quantityMilli }) => quantityMilli !== 0);
}

/** A line's promises, the one that holds first; the same date said again counts from the day it was first given. */
export function toldPromises({ promises }: Pick<Line, 'promises'>): Line['promises'] {
  return promises
    .filter((promise, index) => index === 0 || promise.promisedOn !== promises[index - 1]?.promisedOn)
    .toReversed();
}

/** Lines with units still to come. */
export const openLines = (detail: OrderDetail): readonly Line[] =>
  detail.lines.filter(({ outstandingMilli }) => outstandingMilli > 0);
