import type { ActResult } from '../../../core/contract/common.ts';
import type { Charges, OrderDetail, OrderDraft } from '../../../core/contract/orders.ts';
import type { Bench } from './bench.ts';

/** Pieces that the tests of orders share. */

export const noCharges: Charges = {
  discountMinor: 0,
  shippingMinor: 0,
  dutyMinor: 0,
  tax: { kind: 'amount', minor: 0 },
};

export const firstMade = (result: ActResult): number => {
  const [id] = result.made;
  if (id === undefined) throw new Error('The act made nothing');
  return id;
};

export async function addVendor(bench: Bench, name = 'Keld Fasteners'): Promise<number> {
  return firstMade(await bench.client.records.save({ ...bench.act(), kind: 'vendor', values: { name } }));
}

export async function addPart(
  bench: Bench,
  description: string,
  needed: number,
  estimateEachE4: number | null = null,
  unit = 'each',
): Promise<number> {
  return firstMade(
    await bench.client.parts.add({
      ...bench.act(),
      build: bench.build,
      parts: [{ description, needMilli: needed * 1000, estimateEachE4, unit }],
    }),
  );
}

export type DraftLine = OrderDraft['lines'][number];

/** A line of an order by number of units and price each in whole minor units. */
export const draftLine = (part: number, units: number, eachMinor: number): DraftLine => ({
  part,
  quantityMilli: units * 1000,
  eachE4: eachMinor * 10_000,
});

export const draft = (
  bench: Bench,
  vendor: number,
  lines: DraftLine[],
  more: Partial<OrderDraft> = {},
): OrderDraft => ({
  build: bench.build,
  vendor,
  number: '4711',
  currency: 'USD',
  charges: noCharges,
  promisedOn: null,
  note: '',
  lines,
  ...more,
});

/** One box line of good units only. */
export const box = (line: number, good: number) => ({
  line,
  goodMilli: good * 1000,
  bad: [],
  extraMilli: 0,
  restBackOrdered: false,
  restPromisedOn: null as string | null,
});

/** An order of one part line, read back. */
export async function placeOne(
  bench: Bench,
  vendor: number,
  lines: DraftLine[],
  more: Partial<OrderDraft> = {},
): Promise<{ order: number; detail: OrderDetail; line: number }> {
  const order = firstMade(
    await bench.client.orders.place({ ...bench.act(), order: draft(bench, vendor, lines, more) }),
  );
  const detail = await bench.client.orders.detail({ order });
  return { order, detail, line: detail.lines[0]?.id ?? 0 };
}
