import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Charges } from '../../contract/orders.ts';
import { json, recordColumns } from './common.ts';

/** An order at a vendor. What of it came, was paid or cancelled is in the ledger. */
export const orders = sqliteTable(
  'orders',
  {
    ...recordColumns,
    vendor: integer('vendor').notNull(),
    number: text('number').notNull().default(''),
    orderedOn: text('ordered_on').notNull(),
    currency: text('currency').notNull(),
    /** Base units for one of the order's currency on the day; null when the order is in the base currency. */
    rate: text('rate'),
    charges: json<Charges>('charges').notNull(),
    /** Landed total in the order's currency and in the base currency. */
    totalMinor: integer('total_minor').notNull(),
    totalBaseMinor: integer('total_base_minor').notNull(),
    note: text('note').notNull().default(''),
  },
  (t) => [index('orders_by_build').on(t.build), index('orders_by_vendor').on(t.vendor)],
);

export interface LandedShares {
  readonly extendedMinor: number;
  readonly discountMinor: number;
  readonly shippingMinor: number;
  readonly dutyMinor: number;
  readonly taxMinor: number;
  readonly landedMinor: number;
  readonly landedBaseMinor: number;
}

export const orderLines = sqliteTable(
  'order_lines',
  {
    ...recordColumns,
    orderId: integer('order_id').notNull(),
    part: integer('part').notNull(),
    sort: integer('sort').notNull().default(0),
    quantityMilli: integer('quantity_milli').notNull(),
    eachE4: integer('each_e4').notNull(),
    landed: json<LandedShares>('landed').notNull(),
    importKey: text('import_key'),
  },
  (t) => [index('order_lines_by_order').on(t.orderId), index('order_lines_by_part').on(t.part)],
);
