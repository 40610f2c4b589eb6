import { formatMoney } from '../money/currency.ts';
import { Refusal } from '../refusal.ts';
import { isCountable, isUnit, plainQuantity } from '../units/quantity.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { type Connection, first } from '../workbook/store/connection.ts';
import { type OrderLineRecord, type OrderRecord, orderLinesOf } from '../workbook/store/order-records.ts';
import { listRecords, readRecord } from '../workbook/store/record-tables.ts';

/** What every act on an order needs: names for people, lines that belong to it, refusals that name the field typed. */

export const vendorName = (connection: Connection, vendor: number): string =>
  String(readRecord(connection, 'vendors', vendor)?.['name'] ?? vendor);

/** "order 4711 at Keld Fasteners", or "order at Keld Fasteners" before the vendor gave it a number. */
export function orderName(connection: Connection, order: Pick<OrderRecord, 'number' | 'vendor'>): string {
  return `order${order.number === '' ? '' : ` ${order.number}`} at ${vendorName(connection, order.vendor)}`;
}

export const describe = (connection: Connection, part: number): string =>
  first<{ description: string }>(connection, 'SELECT description FROM parts WHERE id = ?', part)?.description ?? '';

/** Amount with its currency, as a refusal or a label writes it. */
export const money = (minor: number, currency: string): string => formatMoney(minor, currency);

/** Runs `work`; a refusal that names a field of the ledger names the field of the form instead. */
export function atFields<T>(names: Readonly<Record<string, string>>, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const field = error.field === undefined ? undefined : names[error.field];
    if (field === undefined) throw error;
    throw new Refusal(error.code, error.message, {
      field,
      ...(error.accepted === undefined ? {} : { accepted: error.accepted }),
      detail: error.detail,
    });
  }
}

/**
 * The lines that a request names, each once.
 * @throws Refusal `not-found` for a line of another order, `bad-input` for one named twice; both name the field.
 */
export function chosenLines<T extends { readonly line: number }>(
  connection: Connection,
  order: OrderRecord,
  given: readonly T[],
): { readonly item: T; readonly record: OrderLineRecord; readonly field: string }[] {
  const lines = new Map(orderLinesOf(connection, order.id).map((line) => [line.id, line]));
  const seen = new Set<number>();
  return given.map((item, index) => {
    const record = lines.get(item.line);
    const field = `lines.${index}`;
    if (record === undefined) {
      throw new Refusal(
        'not-found',
        `Order line ${item.line} is not on ${orderName(connection, order)}. Nothing was changed.`,
        {
          field: `${field}.line`,
          accepted: 'a line of this order',
        },
      );
    }
    if (seen.has(item.line)) {
      throw new Refusal('bad-input', `Order line ${item.line} is named twice. Nothing was changed.`, {
        field: `${field}.line`,
        accepted: 'every line once',
      });
    }
    seen.add(item.line);
    return { item, record, field };
  });
}

/** Refuses a fraction of things that are counted. */
export function checkWhole(connection: Connection, part: number, quantityMilli: number, field: string): void {
  const unit = String(readRecord(connection, 'parts', part)?.['unit'] ?? '');
  if (!isUnit(unit) || !isCountable(unit) || quantityMilli % 1000 === 0) return;
  throw new Refusal(
    'bad-input',
    `“${describe(connection, part)}” is counted in ${unit}; ${plainQuantity(quantityMilli)} isn't a whole number. Nothing was changed.`,
    { field, accepted: 'a whole number' },
  );
}

/** Refuses an order number that another order at the vendor has in this build, upper and lower case alike. */
export function checkNumber(
  connection: Connection,
  order: Pick<OrderRecord, 'build' | 'vendor' | 'number'>,
  self: number,
  field: string,
): void {
  if (order.number === '') return;
  const [taken] = listRecords(
    connection,
    'orders',
    'build = ? AND vendor = ? AND lower(number) = lower(?) AND id <> ?',
    order.build,
    order.vendor,
    order.number,
    self,
  );
  if (taken === undefined) return;
  throw new Refusal(
    'bad-input',
    `There is already an ${orderName(connection, order)}, of ${String(taken['orderedOn'])}. Nothing was changed.`,
    { field, accepted: 'another number', detail: { existing: taken.id } },
  );
}

/** Numbers an order, with the entry that says so. Nothing when it has that number already. */
export function numberOrder(writer: ActWriter, order: OrderRecord, on: string, number: string | undefined): void {
  if (number === undefined || number === '' || number === order.number) return;
  checkNumber(writer.connection, { ...order, number }, order.id, 'number');
  const edit = writer.change('orders', order.id, { number });
  if (edit === undefined) return;
  writer.post(
    {
      kind: 'record',
      on,
      build: order.build,
      order: order.id,
      payload: { record: 'order', did: 'changed (number)', number },
    },
    [edit],
  );
}

/** A part's order line as its state has it now. @throws Refusal `not-found` when its order was taken back. */
export function lineState(writer: ActWriter, part: number, line: number, field: string) {
  const state = writer.state(part).lines.find((one) => one.line === line);
  if (state !== undefined && state.orderedMilli > 0) return state;
  throw new Refusal('not-found', `Order line ${line} has nothing on order. Nothing was changed.`, {
    field,
    accepted: 'a line that stands',
  });
}
