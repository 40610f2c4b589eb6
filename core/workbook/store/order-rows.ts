import type { OrderRow } from '../../contract/orders.ts';
import { addFigures } from '../../ledger/figures.ts';
import { agedBackOrders } from '../../purchasing/back-orders.ts';
import { all, type Connection } from './connection.ts';
import { orderStanding } from './order-standing.ts';
import { type LinePosition, linePositions, type OrderScope } from './order-states.ts';
import { type LineWord, latestPromise, lineWords, orderWords } from './promises.ts';

interface Row {
  readonly id: number;
  readonly number: string;
  readonly vendor: number;
  readonly vendorName: string;
  readonly orderedOn: string;
  readonly currency: string;
  readonly rate: string | null;
  readonly totalMinor: number;
}

/** Days on which the vendor was last asked, by order line. */
export function chasedDays(connection: Connection, { build, order, asOf }: OrderScope): Map<number, string> {
  return new Map(
    all<{ line: number; on: string }>(
      connection,
      `SELECT line, max(on_day) AS "on" FROM entries e WHERE kind = 'chased' AND ${order === undefined ? '+build' : 'order_id'} = ?
       AND on_day <= ? AND line IS NOT NULL
       AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) GROUP BY line`,
      order ?? build,
      asOf ?? '9999-12-31',
    ).map(({ line, on }) => [line, on]),
  );
}

/** What the vendors said about the lines of the scope. */
export const wordsOf = (connection: Connection, { build, order, asOf }: OrderScope): Map<number, LineWord> =>
  order === undefined ? lineWords(connection, build, asOf) : orderWords(connection, order, asOf);

const earliest = (days: readonly (string | null)[]): string | null =>
  days.filter((day) => day !== null).sort()[0] ?? null;
const latest = (days: readonly (string | undefined)[]): string | null =>
  days
    .filter((day) => day !== undefined)
    .sort()
    .at(-1) ?? null;

/** The oldest back-order notice among lines that still wait on one. */
function backOrderOf(
  lines: readonly LinePosition[],
  words: ReadonlyMap<number, LineWord>,
  day: string,
): Pick<OrderRow, 'backOrderedOn' | 'backOrderAgeDays'> {
  const notices = lines
    .filter(({ line }) => line.backOrderedMilli > 0)
    .flatMap(({ line }) => {
      const word = words.get(line.line);
      return word === undefined || word.backOrderedOn === null
        ? []
        : [{ id: line.line, noticeOn: word.backOrderedOn, promises: word.promises }];
    });
  const [oldest] = agedBackOrders(notices, day);
  const notice = earliest(notices.map(({ noticeOn }) => noticeOn));
  return { backOrderedOn: notice, backOrderAgeDays: oldest?.ageDays ?? null };
}

/**
 * Orders of a build, the newest first, as they stand now or stood at the end of a day.
 * @param today the day that ages are counted to when no past day is asked for.
 */
export function orderRows(connection: Connection, scope: OrderScope, today: string): OrderRow[] {
  const { build, order, asOf } = scope;
  const until = asOf ?? '9999-12-31';
  const orders = all<Row>(
    connection,
    `SELECT o.id, o.number, o.vendor, v.name AS vendorName, o.ordered_on AS orderedOn, o.currency, o.rate,
     o.total_minor AS totalMinor FROM orders o JOIN vendors v ON v.id = o.vendor
     WHERE o.build = ? AND o.gone = 0 AND o.ordered_on <= ?${order === undefined ? '' : ' AND o.id = ?'}
     ORDER BY o.ordered_on DESC, o.id DESC`,
    build,
    until,
    ...(order === undefined ? [] : [order]),
  );
  const byOrder = Map.groupBy(linePositions(connection, scope).values(), ({ line }) => line.order);
  const words = wordsOf(connection, scope);
  const chased = chasedDays(connection, scope);
  return orders.map((row) => {
    const lines = byOrder.get(row.id) ?? [];
    const open = lines.filter(({ outstandingMilli }) => outstandingMilli > 0);
    const sums = addFigures(lines.map(({ figures }) => figures));
    const totalBaseMinor = lines.reduce((sum, { line }) => sum + line.landedMinor, 0);
    return {
      id: row.id,
      build,
      number: row.number,
      vendor: row.vendor,
      vendorName: row.vendorName,
      orderedOn: row.orderedOn,
      currency: row.currency,
      standing: orderStanding(lines),
      lines: lines.length,
      outstandingLines: open.length,
      promisedOn: earliest(open.map(({ line }) => latestPromise(words.get(line.line)))),
      ...backOrderOf(open, words, asOf ?? today),
      chasedOn: latest(lines.map(({ line }) => chased.get(line.line))),
      // An order in the base currency is worth what its lines say, on a past day too.
      totalMinor: row.rate === null ? totalBaseMinor : row.totalMinor,
      totalBaseMinor,
      paidBaseMinor: sums.paidMinor,
      stillToPayMinor: sums.stillToPayMinor,
      claimsMinor: sums.claimsMinor,
    };
  });
}
