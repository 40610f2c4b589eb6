import { allocate } from '../money/allocate.ts';
import { convertDocument } from '../money/convert.ts';
import { roundHalfAway } from '../money/currency.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { all, readSettings } from '../workbook/store/connection.ts';
import { type OrderLineRecord, type OrderRecord, orderLinesOf } from '../workbook/store/order-records.ts';
import { money, orderName } from './order-acts.ts';
import { type DayRate, dayRate, keepRate } from './order-landing.ts';

interface Payable {
  readonly lines: readonly { readonly record: OrderLineRecord; readonly minor: number }[];
  /** Booked value not yet paid: on order and owed for what came. */
  readonly baseMinor: number;
  /** The same in the order's own currency, as its bill says it. */
  readonly documentMinor: number;
}

const ratio = (amount: number, top: number, bottom: number): number =>
  bottom === 0 ? 0 : Number(roundHalfAway(BigInt(amount) * BigInt(top), BigInt(bottom)));

/** What of an order is still to be paid, line by line. Claims stand beside it: they come back as refunds. */
function payableOf(writer: ActWriter, order: OrderRecord): Payable {
  const lines = orderLinesOf(writer.connection, order.id).map((record) => {
    const line = writer.state(record.part).lines.find(({ line: id }) => id === record.id);
    return { record, minor: line === undefined ? 0 : line.commitmentMinor - line.vendorMinor };
  });
  const baseMinor = lines.reduce((sum, { minor }) => sum + minor, 0);
  if (order.rate === null) return { lines, baseMinor, documentMinor: baseMinor };
  let booked = 0;
  let documents = 0;
  for (const paid of all<{ amount: number; document: number | null }>(
    writer.connection,
    `SELECT amount_minor AS amount, json_extract(payload, '$.documentMinor') AS document FROM entries e
     WHERE order_id = ? AND kind = 'paid' AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq)`,
    order.id,
  )) {
    booked += paid.amount;
    documents += paid.document ?? ratio(paid.amount, order.totalMinor, order.totalBaseMinor);
  }
  // Value that is neither paid nor payable any more was cancelled, at the rate of the order.
  const gone = order.totalBaseMinor - booked - baseMinor;
  const documentMinor = order.totalMinor - documents - ratio(gone, order.totalMinor, order.totalBaseMinor);
  return { lines, baseMinor, documentMinor };
}

export interface Payment {
  readonly on: string;
  /** In the order's currency. */
  readonly amountMinor: number;
  readonly rate: DayRate;
  readonly method: string;
  readonly note: string;
  /** Field that a refusal names. */
  readonly field: string;
}

/**
 * Pays part or all of what is still to pay, shared over the lines by what each still owes: instalments add up to the
 * order without losing a minor unit. Another rate than the order's moves the exchange difference, not the parts.
 * @throws Refusal `not-allowed-from-here` when it is more than what is still to pay.
 */
export function postPayment(writer: ActWriter, order: OrderRecord, payment: Payment): void {
  const { connection } = writer;
  const payable = payableOf(writer, order);
  const { amountMinor, field } = payment;
  if (payable.baseMinor <= 0 || amountMinor > payable.documentMinor) {
    const left = Math.max(0, payable.documentMinor);
    throw new Refusal(
      'not-allowed-from-here',
      `${money(left, order.currency)} is still to pay on ${orderName(connection, order)}, not ${money(amountMinor, order.currency)}. If the bill was higher, correct the order's prices first. Nothing was changed.`,
      {
        field,
        accepted: left === 0 ? 'nothing, as it stands' : `at most ${money(left, order.currency)}`,
        detail: { available: left, asked: amountMinor },
      },
    );
  }
  const whole = amountMinor === payable.documentMinor;
  const booked = whole ? payable.baseMinor : ratio(payable.baseMinor, amountMinor, payable.documentMinor);
  if (booked === 0) {
    throw new Refusal(
      'bad-input',
      `${money(amountMinor, order.currency)} is less than the smallest amount that the workbook books. Nothing was changed.`,
      { field, accepted: 'a larger amount' },
    );
  }
  const foreign = payment.rate.rate !== null;
  const cash =
    payment.rate.rate === null
      ? booked
      : convertDocument(amountMinor, order.currency, readSettings(connection).currency, payment.rate.rate);
  const shares = allocate(
    booked,
    payable.lines.map(({ minor }) => minor),
  );
  const cashShares = allocate(cash, shares);
  const documents = allocate(amountMinor, shares);
  payable.lines.forEach(({ record }, index) => {
    const share = shares[index] ?? 0;
    if (share === 0) return;
    writer.post({
      kind: 'paid',
      on: payment.on,
      build: order.build,
      part: record.part,
      order: order.id,
      line: record.id,
      amountMinor: share,
      ...(payment.note === '' ? {} : { note: payment.note }),
      payload: {
        ...(payment.method === '' ? {} : { method: payment.method }),
        ...(foreign
          ? {
              cashMinor: cashShares[index] ?? share,
              documentMinor: documents[index] ?? 0,
              documentCurrency: order.currency,
              rate: payment.rate.rate,
            }
          : {}),
      },
    });
  });
}

/** One payment to the vendor, in the order's currency at the day's rate. */
export function payOrder(
  writer: ActWriter,
  order: OrderRecord,
  given: {
    readonly on: string;
    readonly amountMinor: number;
    readonly rate?: string | undefined;
    readonly method: string;
    readonly note: string;
  },
): string {
  const { connection } = writer;
  const base = readSettings(connection).currency;
  const rate = dayRate(connection, base, order.currency, given.on, given.rate);
  keepRate(writer, order.currency, rate, `payment of ${orderName(connection, order)}`);
  postPayment(writer, order, { ...given, rate, field: 'amountMinor' });
  return `Payment of ${money(given.amountMinor, order.currency)} for ${orderName(connection, order)}`;
}
