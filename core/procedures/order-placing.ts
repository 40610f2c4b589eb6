import type { OrderDraft } from '../contract/orders.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { readSettings } from '../workbook/store/connection.ts';
import { needOrder } from '../workbook/store/order-records.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { counted } from './context.ts';
import { checkNumber, checkWhole, describe, money, orderName } from './order-acts.ts';
import { type DespiteFits, orderFits } from './order-fits.ts';
import { dayRate, keepRate, landLines } from './order-landing.ts';
import { postPayment } from './order-paying.ts';
import { addPart, needPart } from './part-writing.ts';
import { checkCurrency } from './record-checks.ts';

function needVendor(writer: ActWriter, vendor: number): void {
  const record = needRecord(writer.connection, 'vendors', vendor, 'vendor');
  if (record.retiredOn === null) return;
  throw new Refusal('retired', `${String(record['name'])} was retired on ${record.retiredOn}. Nothing was changed.`, {
    field: 'vendor',
    accepted: 'a vendor in use; bring this one back first',
  });
}

/** The part line that an order line is for; without one a spare is listed, needed by nothing. */
function partOf(writer: ActWriter, draft: OrderDraft, on: string, index: number): number {
  const line = draft.lines[index];
  if (line === undefined) throw new Error('An order line is missing');
  if (line.part !== null) {
    needPart(writer, line.part, draft.build);
    return line.part;
  }
  if (line.description === undefined) {
    throw new Refusal('bad-input', `Line ${index + 1} names no part and no description. Nothing was changed.`, {
      field: `lines.${index}.description`,
      accepted: 'a part line of the list, or what the thing is called',
    });
  }
  return addPart(writer, draft.build, on, { description: line.description, needMilli: 0, vendor: draft.vendor });
}

/**
 * Places an order: its record, its lines with what each really costs, and one entry a line; with `paid` the payment of
 * all of it too. Answers the label of the act; the order's id is the first that the act made.
 * @throws Refusal naming the vendor, number, rate, charge or line that can't be used; `not-allowed-from-here` naming
 * `despiteFits` for a part that doesn't fit, unless `fits` says why it is ordered all the same.
 */
export function placeOrder(
  writer: ActWriter,
  draft: OrderDraft,
  on: string,
  paid: boolean,
  fits: DespiteFits = { despite: '' },
): string {
  const { connection } = writer;
  const base = readSettings(connection).currency;
  const { build, vendor, number, currency } = draft;
  needRecord(connection, 'builds', build, 'build');
  needVendor(writer, vendor);
  checkNumber(connection, { build, vendor, number }, 0, 'number');
  checkCurrency(currency, 'currency');
  const rate = dayRate(connection, base, currency, on, draft.rate);
  const despite = orderFits(writer, draft, fits);
  const landed = landLines(draft.lines, draft.charges, currency, base, rate.rate);
  const order = writer.make('orders', {
    build,
    vendor,
    number,
    orderedOn: on,
    currency,
    rate: rate.rate,
    charges: draft.charges,
    totalMinor: landed.totalMinor,
    totalBaseMinor: landed.totalBaseMinor,
    note: draft.note,
  });
  writer.made.push(order.id);
  const name = orderName(connection, { number, vendor });
  keepRate(writer, currency, rate, name);
  writer.post(
    {
      kind: 'record',
      on,
      build,
      order: order.id,
      ...(draft.note === '' ? {} : { note: draft.note }),
      payload: { record: 'order', did: 'placed', number },
    },
    [order.edit],
  );
  draft.lines.forEach((line, index) => {
    const part = partOf(writer, draft, on, index);
    checkWhole(connection, part, line.quantityMilli, `lines.${index}.quantityMilli`);
    const shares = landed.lines[index];
    if (shares === undefined) throw new Error('An order line was not landed');
    const made = writer.make('orderLines', {
      build,
      orderId: order.id,
      part,
      sort: index * 10,
      quantityMilli: line.quantityMilli,
      eachE4: line.eachE4,
      landed: shares,
    });
    const deposit = line.coreDepositMinor ?? 0;
    const about = { on, build, part, order: order.id, line: made.id };
    writer.post(
      {
        ...about,
        kind: 'ordered',
        quantityMilli: line.quantityMilli,
        amountMinor: shares.landedBaseMinor,
        currency: base,
        payload: {
          ...(draft.promisedOn === null ? {} : { promisedOn: draft.promisedOn }),
          ...(deposit === 0 ? {} : { coreDepositMinor: deposit }),
          ...(despite.has(part) ? { despiteFits: despite.get(part) ?? '' } : {}),
          ...(rate.rate === null
            ? {}
            : { documentMinor: shares.landedMinor, documentCurrency: currency, rate: rate.rate }),
        },
      },
      [made.edit],
    );
    if (deposit === 0) return;
    if (paid) writer.post({ ...about, kind: 'deposit-paid', amountMinor: deposit });
    else {
      writer.notices.push(
        `The core deposit of ${money(deposit, base)} on “${describe(connection, part)}” counts once it is entered as paid.`,
      );
    }
  });
  if (paid && landed.totalMinor > 0) {
    postPayment(writer, needOrder(connection, order.id), {
      on,
      amountMinor: landed.totalMinor,
      rate,
      method: '',
      note: '',
      field: 'paid',
    });
  }
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}, ${counted(draft.lines.length, 'line')}`;
}
