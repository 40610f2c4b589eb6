import type { OrderDraft } from '../contract/orders.ts';
import { plainWords } from '../exchange/clean-text.ts';
import type { ImportedPart } from '../exchange/import-types.ts';
import { formatMoney } from '../money/currency.ts';
import { dayWords, quantityWords } from '../workbook/store/entry-text.ts';
import { orderLinesOf } from '../workbook/store/order-records.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { eachPrice, earlier, type ImportBatch, type LinePlace, later } from './import-batch.ts';
import { placeUnits } from './import-places.ts';
import { wrongFitsOf } from './order-fits.ts';
import { placeOrder } from './order-placing.ts';

/** A row of a parts list that says that its part was ordered. */
export interface ImpliedLine {
  readonly part: number;
  readonly imported: ImportedPart;
  readonly orderedOn: string;
}

export const noCharges: OrderDraft['charges'] = {
  discountMinor: 0,
  shippingMinor: 0,
  dutyMinor: 0,
  tax: { kind: 'amount', minor: 0 },
};

interface PlacedOrder {
  readonly order: number;
  /** In the order of the draft. */
  readonly lines: readonly number[];
  /** What doesn't fit, by part line. */
  readonly wrong: ReadonlyMap<number, readonly string[]>;
}

/** Places an order that a list tells of. */
export function placeBatchOrder(batch: ImportBatch, draft: OrderDraft, on: string): PlacedOrder {
  const { writer } = batch;
  const before = writer.made.length;
  // What was ordered was ordered: a list brought in is history, and a wrong fit in it is only said.
  placeOrder(writer, draft, on, false, 'history');
  const order = writer.made[before];
  if (order === undefined) throw new Error('An order was placed without a record');
  writer.made.length = before;
  return {
    order,
    lines: orderLinesOf(writer.connection, order).map(({ id }) => id),
    wrong: wrongFitsOf(writer.connection, draft),
  };
}

/** The number, or that number with a count behind it where another order of the vendor has it already. */
export function freeNumber(batch: ImportBatch, vendor: number, number: string, self = 0): string {
  const wanted = number.slice(0, 74).trim();
  if (wanted === '') return '';
  const taken = new Set(
    listRecords(
      batch.writer.connection,
      'orders',
      'build = ? AND vendor = ? AND id <> ?',
      batch.build,
      vendor,
      self,
    ).map((order) => String(order['number']).toLowerCase()),
  );
  let own = wanted;
  for (let count = 2; taken.has(own.toLowerCase()); count += 1) own = `${wanted} / ${count}`;
  return own;
}

/** Lines of one vendor, day, currency and number are one order; its lines stand at the list's prices. */
export function placeImpliedOrders(batch: ImportBatch, lines: readonly ImpliedLine[]): void {
  const groups = Map.groupBy(lines, ({ imported, orderedOn }) => {
    const number = plainWords(imported.orderNumber ?? '');
    return [plainWords(imported.vendor ?? ''), imported.currency, number, number === '' ? orderedOn : ''].join('\n');
  });
  for (const group of groups.values()) {
    const [head] = group;
    if (head !== undefined) batch.atRow(head.imported.row, () => placeGroup(batch, group, head));
  }
}

function placeGroup(batch: ImportBatch, group: readonly ImpliedLine[], head: ImpliedLine): void {
  const vendor = batch.vendor(head.imported.vendor);
  const orderedOn = group.reduce((day, line) => earlier(day, line.orderedOn), head.orderedOn);
  const { order, lines, wrong } = placeBatchOrder(
    batch,
    {
      build: batch.build,
      vendor,
      number: freeNumber(batch, vendor, head.imported.orderNumber ?? ''),
      currency: head.imported.currency,
      charges: noCharges,
      promisedOn: null,
      note: '',
      lines: group.map(({ part, imported }) => ({
        part,
        quantityMilli: imported.quantityMilli ?? 0,
        eachE4: eachPrice(imported.quantityMilli ?? 0, imported.unitPriceE4, imported.estimateLineMinor),
        ...(imported.coreDepositMinor === undefined || imported.paid === 'paid'
          ? {}
          : { coreDepositMinor: batch.inBase(imported.coreDepositMinor, imported.currency, orderedOn) }),
      })),
    },
    orderedOn,
  );
  group.forEach((line, index) => {
    const id = lines[index];
    if (id === undefined) throw new Error('An order line is missing');
    const at = { build: batch.build, part: line.part, order, line: id };
    batch.atRow(line.imported.row, () => tellLine(batch, at, line, orderedOn));
    for (const text of wrong.get(line.part) ?? []) batch.say(line.imported.row, text);
  });
}

/** What the list says of one ordered line: promised, waiting, arrived, wrong, gone back, paid. */
function tellLine(batch: ImportBatch, at: LinePlace, { imported }: ImpliedLine, orderedOn: string): void {
  const { writer } = batch;
  const { row, promisedOn, state } = imported;
  const quantity = imported.quantityMilli ?? 0;
  const about = { ...at, on: orderedOn };
  batch.say(row, `ordered ${dayWords(orderedOn)} from ${imported.vendor ?? 'a vendor that is not named'}`);
  if (imported.paid === 'paid') {
    if (batch.payRest(at, orderedOn)) batch.say(row, 'paid');
    if (imported.coreDepositMinor !== undefined && imported.coreDepositMinor > 0) {
      const amountMinor = batch.inBase(imported.coreDepositMinor, imported.currency, orderedOn);
      writer.post({ ...about, kind: 'deposit-paid', amountMinor });
      batch.say(row, `core deposit of ${formatMoney(amountMinor, batch.base)} paid`);
    }
  }
  const payload = { promisedOn: promisedOn ?? null };
  if (state === 'back-ordered') {
    writer.post({ ...about, kind: 'back-ordered', quantityMilli: quantity, payload });
    batch.say(row, `on back-order${promisedOn === undefined ? ', no date' : ''}; its age counts from the order`);
  } else if (promisedOn !== undefined) writer.post({ ...about, kind: 'promised', payload });
  if (promisedOn !== undefined) batch.say(row, `promised for ${dayWords(promisedOn)}`);
  if (state === 'acknowledged') writer.post({ ...about, kind: 'acknowledged', quantityMilli: quantity });
  if (state === 'in-transit') writer.post({ ...about, kind: 'shipped', quantityMilli: quantity });
  tellArrival(batch, at, imported, orderedOn);
}

function tellArrival(batch: ImportBatch, at: LinePlace, imported: ImportedPart, orderedOn: string): void {
  const { writer } = batch;
  const { row, state } = imported;
  // One thing that came in part is here and still to be looked at; of several, nobody knows how many are.
  const inPart = state === 'partly-received' && imported.arrivedOn !== undefined && imported.quantityMilli === 1000;
  const came = imported.borrowed
    ? 0
    : inPart
      ? 1000
      : Math.min(imported.arrivedMilli ?? 0, imported.quantityMilli ?? 0);
  if (came <= 0) return;
  const on = later(imported.arrivedOn ?? batch.on, orderedOn);
  const wrong = state === 'wrong-part' || state === 'sent-back';
  const lot = batch.receive(at, on, came, !wrong && !inPart);
  const whole = came === imported.quantityMilli ? '' : `${quantityWords(came, imported.unit)} `;
  batch.say(
    row,
    `${whole}received ${dayWords(on)}${imported.arrivedOn === undefined ? ', because the list gives no day' : ''}`,
  );
  if (inPart) batch.say(row, 'left for inspection');
  if (wrong) {
    const units = { build: at.build, part: at.part, lot, quantityMilli: came };
    writer.post({ ...units, kind: 'rejected', on, payload: { from: 'inspection', reason: 'wrong part' } });
    batch.say(row, 'rejected as the wrong part');
    if (state === 'sent-back') {
      writer.post({ ...units, kind: 'sent-back', on: later(on, batch.on) });
      batch.say(row, 'sent back');
    }
    return;
  }
  placeUnits(batch, at.part, lot, came, imported, later(on, batch.on));
}
