import type { OrderDetail, OrderRow } from '../../core/contract/orders.ts';

/** An order of an invented vendor, placed and not paid. */
export const row = (part: Partial<OrderRow> = {}): OrderRow => ({
  id: 12,
  build: 1,
  number: 'K-204',
  vendor: 3,
  vendorName: 'Keld Fasteners',
  orderedOn: '2026-02-20',
  currency: 'USD',
  standing: 'placed',
  lines: 1,
  outstandingLines: 1,
  promisedOn: null,
  backOrderedOn: null,
  backOrderAgeDays: null,
  chasedOn: null,
  totalMinor: 12_000,
  totalBaseMinor: 12_000,
  paidBaseMinor: 0,
  stillToPayMinor: 12_000,
  claimsMinor: 0,
  ...part,
});

type Line = OrderDetail['lines'][number];

const nothing = {
  orderedMilli: 0,
  replacedMilli: 0,
  cancelledMilli: 0,
  receivedMilli: 0,
  placedMilli: 0,
  acknowledgedMilli: 0,
  backOrderedMilli: 0,
  inTransitMilli: 0,
  inspectionMilli: 0,
  rejectedMilli: 0,
  returnedUnsettledMilli: 0,
  commitmentMinor: 0,
  costMinor: 0,
  claimsMinor: 0,
  depositsMinor: 0,
};

/** A line with everything still as it was placed. */
export const line = (index: number, part: Partial<Line> & Pick<Line, 'description' | 'outstandingMilli'>): Line => ({
  ...nothing,
  id: 100 + index,
  part: 200 + index,
  partNumber: '',
  unit: 'each',
  quantityMilli: part.outstandingMilli,
  eachE4: 100_000,
  landed: {
    extendedMinor: 0,
    discountMinor: 0,
    shippingMinor: 0,
    dutyMinor: 0,
    taxMinor: 0,
    landedMinor: 0,
    landedBaseMinor: 0,
  },
  placedMilli: part.outstandingMilli,
  backOrderedOn: null,
  promises: [],
  ...part,
});

/** The order with these lines. */
export function orderWith(
  lines: readonly (Partial<Line> & Pick<Line, 'description' | 'outstandingMilli'>)[],
  about: Partial<OrderRow> = {},
): OrderDetail {
  return {
    row: row({ lines: lines.length, outstandingLines: lines.length, ...about }),
    charges: { discountMinor: 0, shippingMinor: 0, dutyMinor: 0, tax: { kind: 'amount', minor: 0 } },
    rate: null,
    note: '',
    revision: 1,
    lines: lines.map((given, index) => line(index, given)),
    payments: [],
    chases: [],
  };
}
