import type { DueRow } from '../../contract/orders.ts';
import { agedBackOrders } from '../../purchasing/back-orders.ts';
import { all, type Connection } from './connection.ts';
import { chasedDays, wordsOf } from './order-rows.ts';
import { linePositions } from './order-states.ts';
import { latestPromise } from './promises.ts';

interface Row {
  readonly line: number;
  readonly order: number;
  readonly part: number;
  readonly description: string;
  readonly unit: string;
  readonly vendor: number;
  readonly vendorName: string;
  readonly orderNumber: string;
  readonly orderedOn: string;
}

/** A line without a promise stands after every line with one; among those the longest on back-order first. */
function byPromise(a: DueRow, b: DueRow): number {
  const promise = (row: DueRow): string => row.promisedOn ?? '9999-12-31';
  if (promise(a) !== promise(b)) return promise(a) < promise(b) ? -1 : 1;
  return (b.ageDays ?? -1) - (a.ageDays ?? -1) || a.line - b.line;
}

/**
 * Every order line with units still to come, the oldest promise first, now or at the end of a day.
 * @param today the day that ages and delays are counted to when no past day is asked for.
 */
export function dueRows(connection: Connection, build: number, today: string, asOf: string | undefined): DueRow[] {
  const day = asOf ?? today;
  const scope = { build, asOf };
  const positions = linePositions(connection, scope);
  const open = [...positions.values()].filter(({ outstandingMilli }) => outstandingMilli > 0);
  const words = wordsOf(connection, scope);
  const chased = chasedDays(connection, scope);
  const rows = all<Row>(
    connection,
    `SELECT l.id AS line, l.order_id AS "order", l.part, p.description, p.unit, o.vendor, v.name AS vendorName,
     o.number AS orderNumber, o.ordered_on AS orderedOn
     FROM order_lines l JOIN orders o ON o.id = l.order_id JOIN vendors v ON v.id = o.vendor JOIN parts p ON p.id = l.part
     WHERE l.gone = 0 AND l.id IN (SELECT value FROM json_each(?))`,
    JSON.stringify(open.map(({ line }) => line.line)),
  );
  return rows
    .flatMap((row) => {
      const position = positions.get(row.line);
      if (position === undefined) return [];
      const { line, figures } = position;
      const word = words.get(row.line);
      const notice = line.backOrderedMilli > 0 ? (word?.backOrderedOn ?? null) : null;
      // A line that isn't on back-order has promises too; only its age doesn't count.
      const [aged] = agedBackOrders(
        [{ id: row.line, noticeOn: notice ?? row.orderedOn, promises: word?.promises ?? [] }],
        day,
      );
      return [
        {
          ...row,
          outstandingMilli: position.outstandingMilli,
          backOrderedMilli: line.backOrderedMilli,
          backOrderedOn: notice,
          ageDays: notice === null ? null : (aged?.ageDays ?? null),
          band: notice === null ? null : (aged?.band ?? null),
          promisedOn: latestPromise(word),
          promiseChanges: aged?.promiseChanges ?? 0,
          pastPromiseDays: aged?.pastPromiseDays ?? null,
          chasedOn: chased.get(row.line) ?? null,
          commitmentMinor: figures.commitmentMinor,
        },
      ];
    })
    .sort(byPromise);
}
