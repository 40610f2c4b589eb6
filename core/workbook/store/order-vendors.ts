import type { VendorCard } from '../../contract/orders.ts';
import { addFigures } from '../../ledger/figures.ts';
import { type VendorLine, vendorCard } from '../../purchasing/vendor-card.ts';
import { all, type Connection } from './connection.ts';
import { type LinePosition, linePositions } from './order-states.ts';
import { lineWords } from './promises.ts';

/** Last day on which units of a line came or were accepted, by line. */
export function arrivalDays(connection: Connection, build: number, until: string): Map<number, string> {
  return new Map(
    all<{ line: number; on: string }>(
      connection,
      `SELECT l.line, max(e.on_day) AS "on" FROM entries e JOIN lots l ON l.id = e.lot
       WHERE e.kind IN ('received', 'accepted') AND e.build = ? AND e.on_day <= ? AND l.line <> 0
       AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) GROUP BY l.line`,
      build,
      until,
    ).map(({ line, on }) => [line, on]),
  );
}

/** Units refused as wrong or faulty, by line; damage on the road is no fault of the vendor's choosing. */
function wrongUnits(connection: Connection, build: number, until: string): Map<number, number> {
  return new Map(
    all<{ line: number; milli: number }>(
      connection,
      `SELECT l.line, sum(e.quantity_milli) AS milli FROM entries e JOIN lots l ON l.id = e.lot
       WHERE e.kind = 'rejected' AND e.build = ? AND e.on_day <= ? AND l.line <> 0
       AND json_extract(e.payload, '$.reason') IN ('wrong part', 'faulty')
       AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) GROUP BY l.line`,
      build,
      until,
    ).map(({ line, milli }) => [line, milli]),
  );
}

/**
 * A line is here: nothing of it is to come or to inspect, and something of it is good. What was refused counts against the
 * vendor as wrong units; only when a replacement is agreed does the line wait again.
 */
export const hasArrived = ({ line, ...position }: LinePosition): boolean =>
  position.outstandingMilli + position.inspectionMilli === 0 &&
  line.receivedMilli > position.rejectedMilli + position.returnedUnsettledMilli;

/** A line that was cancelled before anything came says nothing about the vendor. */
const counts = (position: LinePosition): boolean => position.line.receivedMilli > 0 || position.outstandingMilli > 0;

/**
 * The card of every vendor that stands or has an order in the build, by name, now or at the end of a day. Shares are
 * left out below five judged lines.
 */
export function vendorCards(
  connection: Connection,
  build: number,
  today: string,
  asOf: string | undefined,
): VendorCard[] {
  const day = asOf ?? today;
  const until = asOf ?? '9999-12-31';
  const positions = linePositions(connection, { build, asOf });
  const words = lineWords(connection, build, until);
  const arrivals = arrivalDays(connection, build, until);
  const wrong = wrongUnits(connection, build, until);
  const orders = all<{ id: number; vendor: number; orderedOn: string }>(
    connection,
    'SELECT id, vendor, ordered_on AS orderedOn FROM orders WHERE build = ? AND gone = 0 AND ordered_on <= ?',
    build,
    until,
  );
  const ordersOf = Map.groupBy(orders, ({ vendor }) => vendor);
  const linesOf = Map.groupBy(positions.values(), ({ line }) => line.order);
  const vendors = all<{ id: number; name: string; retired: number }>(
    connection,
    'SELECT id, name, retired_on IS NOT NULL AS retired FROM vendors WHERE gone = 0 ORDER BY lower(name), id',
  ).filter(({ id, retired }) => retired === 0 || ordersOf.has(id));
  return vendors.map(({ id, name }) => {
    const own = ordersOf.get(id) ?? [];
    const lines = own.flatMap(({ id: order, orderedOn }) =>
      (linesOf.get(order) ?? []).map((position) => ({ position, orderedOn })),
    );
    const judged: VendorLine[] = lines
      .filter(({ position }) => counts(position))
      .map(({ position, orderedOn }) => ({
        orderedOn,
        firstPromiseOn:
          words.get(position.line.line)?.promises.find(({ promisedOn }) => promisedOn !== null)?.promisedOn ?? null,
        arrivedOn: hasArrived(position) ? (arrivals.get(position.line.line) ?? null) : null,
        receivedMilli: position.line.receivedMilli,
        wrongMilli: wrong.get(position.line.line) ?? 0,
      }));
    const card = vendorCard(judged, day);
    const sums = addFigures(lines.map(({ position }) => position.figures));
    return {
      vendor: id,
      name,
      orders: own.length,
      openLines: card.openLines,
      judgedLines: card.judgedLines,
      onTimeLines: card.onTimeLines,
      onTimeShare: card.comparable ? card.onTimeShare : null,
      receivedMilli: card.receivedMilli,
      wrongMilli: card.wrongMilli,
      wrongShare: card.comparable ? card.wrongShare : null,
      medianLeadDays: card.medianLeadDays,
      arrivedLines: card.arrivedLines,
      committedMinor: sums.commitmentMinor,
      costMinor: sums.costMinor,
      paidMinor: sums.paidMinor,
      stillToPayMinor: sums.stillToPayMinor,
    };
  });
}
