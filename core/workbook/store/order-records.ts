import type { Charges } from '../../contract/orders.ts';
import type { LandedShares } from '../schema/orders.ts';
import type { Connection } from './connection.ts';
import { listRecords, needRecord, type RecordValuesRow } from './record-tables.ts';

/** An order as it was agreed with the vendor. What came of it is in the ledger. */
export interface OrderRecord {
  readonly id: number;
  readonly build: number;
  readonly revision: number;
  readonly vendor: number;
  readonly number: string;
  readonly orderedOn: string;
  readonly currency: string;
  /** Base units for one of the order's currency; null when the order is in the base currency. */
  readonly rate: string | null;
  readonly charges: Charges;
  readonly totalMinor: number;
  readonly totalBaseMinor: number;
  readonly note: string;
}

export interface OrderLineRecord {
  readonly id: number;
  readonly order: number;
  readonly part: number;
  readonly sort: number;
  readonly quantityMilli: number;
  readonly eachE4: number;
  readonly landed: LandedShares;
}

/** One order that stands. @throws Refusal `not-found` naming the field. */
export function needOrder(connection: Connection, order: number, field = 'order'): OrderRecord {
  return orderOf(needRecord(connection, 'orders', order, field));
}

/** The lines of an order in the order of its document. */
export function orderLinesOf(connection: Connection, order: number): OrderLineRecord[] {
  return listRecords(connection, 'orderLines', 'order_id = ?', order)
    .map(lineOf)
    .sort((a, b) => a.sort - b.sort || a.id - b.id);
}

function orderOf(record: RecordValuesRow): OrderRecord {
  const { id, revision } = record;
  return {
    id,
    revision,
    build: Number(record.build),
    vendor: Number(record['vendor']),
    number: String(record['number']),
    orderedOn: String(record['orderedOn']),
    currency: String(record['currency']),
    rate: record['rate'] === null ? null : String(record['rate']),
    charges: record['charges'] as unknown as Charges,
    totalMinor: Number(record['totalMinor']),
    totalBaseMinor: Number(record['totalBaseMinor']),
    note: String(record['note']),
  };
}

function lineOf(record: RecordValuesRow): OrderLineRecord {
  return {
    id: record.id,
    order: Number(record['orderId']),
    part: Number(record['part']),
    sort: Number(record['sort']),
    quantityMilli: Number(record['quantityMilli']),
    eachE4: Number(record['eachE4']),
    landed: record['landed'] as unknown as LandedShares,
  };
}
