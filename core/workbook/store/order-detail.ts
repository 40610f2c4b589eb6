import type { OrderDetail } from '../../contract/orders.ts';
import { Refusal } from '../../refusal.ts';
import { all, type Connection, readSettings } from './connection.ts';
import { needOrder, orderLinesOf } from './order-records.ts';
import { orderRows, wordsOf } from './order-rows.ts';
import { linePositions } from './order-states.ts';

interface MoneyRow {
  readonly seq: number;
  readonly act: number;
  readonly kind: 'paid' | 'refunded';
  readonly on_day: string;
  readonly amount_minor: number;
  readonly note: string;
  readonly payload: string | null;
  readonly reversed: number;
}

/**
 * Money that went to the vendor and came back (below 0), one row an act however many lines it was shared over. `amount`
 * is in the currency that the bill was paid in, `base` what left or came at the rate of the day.
 */
function paymentsOf(connection: Connection, order: number, currency: string, until: string): OrderDetail['payments'] {
  const base = readSettings(connection).currency;
  const rows = all<MoneyRow>(
    connection,
    `SELECT seq, act, kind, on_day, amount_minor, note, payload,
     EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) AS reversed
     FROM entries e WHERE order_id = ? AND kind IN ('paid', 'refunded') AND on_day <= ? ORDER BY seq`,
    order,
    until,
  );
  const grouped = Map.groupBy(rows, (row) => `${row.act} ${row.kind} ${row.reversed}`);
  return [...grouped.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const refund = first.kind === 'refunded';
    let amountMinor = 0;
    let baseMinor = 0;
    for (const row of group) {
      const payload = (row.payload === null ? {} : JSON.parse(row.payload)) as Record<string, number | undefined>;
      amountMinor += payload['documentMinor'] ?? row.amount_minor;
      baseMinor += payload['cashMinor'] ?? row.amount_minor;
    }
    const sign = refund ? -1 : 1;
    return [
      {
        seq: first.seq,
        on: first.on_day,
        amountMinor: sign * amountMinor,
        currency: refund ? base : currency,
        baseMinor: sign * baseMinor,
        note: first.note === '' && refund ? 'Refund' : first.note,
        reversed: first.reversed === 1,
      },
    ];
  });
}

/** Everything about one order: its row, its lines with promises, what was paid, and when the vendor was asked. */
export function readOrderDetail(
  connection: Connection,
  question: { readonly order: number; readonly asOf?: string | undefined },
  today: string,
): OrderDetail {
  const order = needOrder(connection, question.order);
  const asOf = question.asOf !== undefined && question.asOf < today ? question.asOf : undefined;
  const scope = { build: order.build, order: order.id, asOf };
  const [row] = orderRows(connection, scope, today);
  if (row === undefined) {
    throw new Refusal('not-found', `The order was placed on ${order.orderedOn}, after ${asOf ?? today}.`, {
      field: 'asOf',
      accepted: `a day from ${order.orderedOn} on`,
    });
  }
  const until = asOf ?? '9999-12-31';
  const positions = linePositions(connection, scope);
  const words = wordsOf(connection, scope);
  const parts = new Map(
    all<{ id: number; description: string; partNumber: string; unit: string }>(
      connection,
      `SELECT id, description, part_number AS partNumber, unit FROM parts
       WHERE id IN (SELECT part FROM order_lines WHERE order_id = ?)`,
      order.id,
    ).map((part) => [part.id, part]),
  );
  return {
    row,
    charges: order.charges,
    rate: order.rate,
    note: order.note,
    revision: order.revision,
    lines: orderLinesOf(connection, order.id).flatMap((record) => {
      const position = positions.get(record.id);
      const part = parts.get(record.part);
      if (position === undefined || part === undefined) return [];
      const { line, figures } = position;
      const word = words.get(record.id);
      return [
        {
          id: record.id,
          part: record.part,
          description: part.description,
          partNumber: part.partNumber,
          unit: part.unit,
          quantityMilli: record.quantityMilli,
          eachE4: record.eachE4,
          landed: record.landed,
          orderedMilli: line.orderedMilli,
          replacedMilli: line.replacedMilli,
          cancelledMilli: line.cancelledMilli,
          receivedMilli: line.receivedMilli,
          outstandingMilli: position.outstandingMilli,
          placedMilli: line.placedMilli,
          acknowledgedMilli: line.acknowledgedMilli,
          backOrderedMilli: line.backOrderedMilli,
          inTransitMilli: line.inTransitMilli,
          inspectionMilli: position.inspectionMilli,
          rejectedMilli: position.rejectedMilli,
          returnedUnsettledMilli: position.returnedUnsettledMilli,
          commitmentMinor: figures.commitmentMinor,
          costMinor: figures.costMinor,
          claimsMinor: figures.claimsMinor,
          depositsMinor: figures.depositsMinor,
          backOrderedOn: line.backOrderedMilli > 0 ? (word?.backOrderedOn ?? null) : null,
          promises: [...(word?.promises ?? [])],
        },
      ];
    }),
    payments: paymentsOf(connection, order.id, order.currency, until),
    chases: all<{ on: string; note: string }>(
      connection,
      `SELECT min(on_day) AS "on", note FROM entries e WHERE order_id = ? AND kind = 'chased' AND on_day <= ?
       AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) GROUP BY act, note ORDER BY 1, act`,
      order.id,
      until,
    ),
  };
}
