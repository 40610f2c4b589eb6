import type { Charges } from '../contract/orders.ts';
import type { PayloadValue } from '../ledger/entry.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { readSettings } from '../workbook/store/connection.ts';
import type { Edit } from '../workbook/store/edits.ts';
import { type OrderRecord, orderLinesOf } from '../workbook/store/order-records.ts';
import { checkNumber, chosenLines, orderName } from './order-acts.ts';
import { dayRate, keepRate, landLines } from './order-landing.ts';

export interface RepriceGiven {
  readonly on: string;
  readonly revision: number;
  readonly charges: Charges;
  readonly rate?: string | undefined;
  readonly lines: readonly { readonly line: number; readonly eachE4: number }[];
  readonly number?: string | undefined;
  readonly note?: string | undefined;
}

function needRevision(writer: ActWriter, order: OrderRecord, revision: number): void {
  if (order.revision === revision) return;
  throw new Refusal(
    'conflict',
    `The ${orderName(writer.connection, order)} was changed since you opened it. Nothing was changed; what you typed is kept here.`,
    { field: 'revision', accepted: 'the order as it stands now', detail: { revision: order.revision } },
  );
}

/**
 * New charges, prices or rate of an order: it is landed again, and every line whose worth changed moves by the
 * difference, on the units to come and on those that came.
 * @returns the label of the act.
 * @throws Refusal `conflict` when the order was changed since it was read, `bad-input` when nothing differs.
 */
export function repriceOrder(writer: ActWriter, order: OrderRecord, given: RepriceGiven): string {
  const { connection } = writer;
  needRevision(writer, order, given.revision);
  const base = readSettings(connection).currency;
  const number = given.number ?? order.number;
  if (number !== order.number) checkNumber(connection, { ...order, number }, order.id, 'number');
  const used =
    given.rate === undefined ? undefined : dayRate(connection, base, order.currency, order.orderedOn, given.rate);
  const rate = used === undefined ? order.rate : used.rate;
  const prices = new Map(chosenLines(connection, order, given.lines).map(({ item }) => [item.line, item.eachE4]));
  const lines = orderLinesOf(connection, order.id).map((record) => ({
    record,
    quantityMilli: record.quantityMilli,
    eachE4: prices.get(record.id) ?? record.eachE4,
  }));
  const landed = landLines(lines, given.charges, order.currency, base, rate);
  const orderEdit = writer.change('orders', order.id, {
    number,
    note: given.note ?? order.note,
    rate,
    charges: given.charges as unknown as PayloadValue,
    totalMinor: landed.totalMinor,
    totalBaseMinor: landed.totalBaseMinor,
  });
  const repriced: { part: number; line: number; amountMinor: number; edit: Edit | undefined }[] = [];
  const edits: Edit[] = orderEdit === undefined ? [] : [orderEdit];
  lines.forEach(({ record, eachE4 }, index) => {
    const shares = landed.lines[index];
    if (shares === undefined) throw new Error('An order line was not landed');
    const edit = writer.change('orderLines', record.id, { eachE4, landed: shares as unknown as PayloadValue });
    const { landedBaseMinor } = shares;
    if (landedBaseMinor !== record.landed.landedBaseMinor) {
      repriced.push({ part: record.part, line: record.id, amountMinor: landedBaseMinor, edit });
    } else if (edit !== undefined) edits.push(edit);
  });
  if (edits.length + repriced.length === 0) {
    throw new Refusal('bad-input', 'Prices, charges and rate are what they were. Nothing was changed.', {
      field: 'lines',
      accepted: 'a price, charge or rate that differs',
    });
  }
  const about = {
    on: given.on,
    build: order.build,
    order: order.id,
    ...(given.note === undefined || given.note === '' ? {} : { note: given.note }),
  };
  if (edits.length > 0) {
    const changed = Object.keys(orderEdit?.after ?? {}).join(', ') || 'lines';
    writer.post({ ...about, kind: 'record', payload: { record: 'order', did: `changed (${changed})`, number } }, edits);
  }
  for (const { part, line, amountMinor, edit } of repriced) {
    writer.post({ ...about, kind: 'repriced', part, line, amountMinor }, edit === undefined ? [] : [edit]);
  }
  if (used !== undefined) keepRate(writer, order.currency, used, orderName(connection, order));
  return `Price correction of ${orderName(connection, { ...order, number })}`;
}
