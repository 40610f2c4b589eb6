import { z } from 'zod';
import { rejectReasons } from '../ledger/entry.ts';
import {
  actBase,
  actResult,
  currency,
  day,
  id,
  line,
  milli,
  minor,
  ofBuild,
  optionalLine,
  positiveMilli,
  positiveMinor,
  procedure,
} from './common.ts';

/** Charges of an order in its own currency. Tax is either an amount on the bill or a rate to work out. */
export const charges = z.object({
  discountMinor: minor.min(0),
  shippingMinor: minor.min(0),
  dutyMinor: minor.min(0),
  tax: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('amount'), minor: minor.min(0) }),
    z.object({
      kind: z.literal('rate'),
      /** Percentage in decimal text: "8.25". */
      percent: z.string().regex(/^\d{1,2}(\.\d{1,4})?$/, 'A percentage such as 8.25.'),
      included: z.boolean(),
      base: z.enum(['goods', 'goods+freight', 'all']),
    }),
  ]),
});
export type Charges = z.infer<typeof charges>;

export const orderLineDraft = z.object({
  /** The part line it covers; without one a spare is added to the list with no need. */
  part: id.nullable(),
  description: line(300).optional(),
  quantityMilli: positiveMilli,
  /** Price each in the order's currency, 1/10 000 of a minor unit. */
  eachE4: z.int().min(0).max(Number.MAX_SAFE_INTEGER),
  coreDepositMinor: minor.min(0).optional(),
});

export const orderDraft = z.object({
  build: id,
  vendor: id,
  number: optionalLine(80),
  currency,
  /** Base units for one unit of the currency; needed when it isn't the base currency and no rate is on record. */
  rate: z
    .string()
    .regex(/^\d{1,9}(\.\d{1,10})?$/, 'A rate such as 1.0842.')
    .optional(),
  charges,
  promisedOn: day.nullable(),
  note: optionalLine(2000),
  lines: z.array(orderLineDraft).min(1, 'An order needs at least one line.').max(2000),
});
export type OrderDraft = z.infer<typeof orderDraft>;

export const landedLine = z.object({
  extendedMinor: minor,
  discountMinor: minor,
  shippingMinor: minor,
  dutyMinor: minor,
  taxMinor: minor,
  /** In the order's currency. */
  landedMinor: minor,
  /** In the base currency at the day's rate. */
  landedBaseMinor: minor,
});

/** Label on an order as a whole, from its lines. */
export const orderStandings = [
  'placed',
  'acknowledged',
  'in transit',
  'part received',
  'back-ordered',
  'received',
  'cancelled',
  'to settle',
] as const;

export const orderRow = z.object({
  id,
  build: id,
  number: z.string(),
  vendor: id,
  vendorName: z.string(),
  orderedOn: day,
  currency,
  standing: z.enum(orderStandings),
  lines: z.int(),
  outstandingLines: z.int(),
  /** Earliest day promised for what is outstanding. */
  promisedOn: day.nullable(),
  backOrderedOn: day.nullable(),
  backOrderAgeDays: z.int().nullable(),
  chasedOn: day.nullable(),
  totalMinor: minor,
  totalBaseMinor: minor,
  paidBaseMinor: minor,
  stillToPayMinor: minor,
  claimsMinor: minor,
});
export type OrderRow = z.infer<typeof orderRow>;

export const orderLineRow = z.object({
  id,
  part: id,
  description: z.string(),
  partNumber: z.string(),
  unit: z.string(),
  quantityMilli: milli,
  eachE4: z.int(),
  landed: landedLine,
  orderedMilli: milli,
  replacedMilli: milli,
  cancelledMilli: milli,
  receivedMilli: milli,
  outstandingMilli: milli,
  placedMilli: milli,
  acknowledgedMilli: milli,
  backOrderedMilli: milli,
  inTransitMilli: milli,
  inspectionMilli: milli,
  rejectedMilli: milli,
  returnedUnsettledMilli: milli,
  commitmentMinor: minor,
  costMinor: minor,
  claimsMinor: minor,
  depositsMinor: minor,
  backOrderedOn: day.nullable(),
  /** Every promise with the day it was given, the first first; null = "no date". */
  promises: z.array(z.object({ givenOn: day, promisedOn: day.nullable() })),
});

export const orderDetail = z.object({
  row: orderRow,
  charges,
  rate: z.string().nullable(),
  note: z.string(),
  revision: z.int(),
  lines: z.array(orderLineRow),
  payments: z.array(
    z.object({
      seq: z.int(),
      on: day,
      amountMinor: minor,
      currency,
      baseMinor: minor,
      note: z.string(),
      reversed: z.boolean(),
    }),
  ),
  chases: z.array(z.object({ on: day, note: z.string() })),
});
export type OrderDetail = z.infer<typeof orderDetail>;

/** One line of a box checked against its order. Quantities that are left out are zero. */
export const boxLine = z.object({
  line: id,
  /** Arrived good: counted and accepted to the shelf (or left for inspection). */
  goodMilli: z.int().min(0),
  bad: z
    .array(z.object({ quantityMilli: positiveMilli, reason: z.enum(rejectReasons), note: optionalLine(400) }))
    .max(20),
  /** More than the order: kept as an over-delivery outside the order. */
  extraMilli: z.int().min(0),
  /** The rest is on back-order, with the promise given, or simply still outstanding. */
  restBackOrdered: z.boolean(),
  restPromisedOn: day.nullable(),
});

/** One thing that is due or late, oldest promise first. */
export const dueRow = z.object({
  order: id,
  line: id,
  part: id,
  description: z.string(),
  unit: z.string(),
  vendor: id,
  vendorName: z.string(),
  orderNumber: z.string(),
  orderedOn: day,
  outstandingMilli: milli,
  backOrderedMilli: milli,
  backOrderedOn: day.nullable(),
  ageDays: z.int().nullable(),
  band: z.enum(['0-14', '15-30', '31-60', 'over 60']).nullable(),
  promisedOn: day.nullable(),
  promiseChanges: z.int(),
  pastPromiseDays: z.int().nullable(),
  chasedOn: day.nullable(),
  commitmentMinor: minor,
});
export type DueRow = z.infer<typeof dueRow>;

/** A vendor's record, always with its counts; shares only from five judged lines on. */
export const vendorCard = z.object({
  vendor: id,
  name: z.string(),
  orders: z.int(),
  openLines: z.int(),
  judgedLines: z.int(),
  onTimeLines: z.int(),
  onTimeShare: z.number().nullable(),
  receivedMilli: milli,
  wrongMilli: milli,
  wrongShare: z.number().nullable(),
  /** Days from order to arrival, over `arrivedLines` lines. */
  medianLeadDays: z.number().nullable(),
  arrivedLines: z.int(),
  committedMinor: minor,
  costMinor: minor,
  paidMinor: minor,
  stillToPayMinor: minor,
});
export type VendorCard = z.infer<typeof vendorCard>;

/** A vendor to write to today. */
export const chaseRow = z.object({
  vendor: id,
  vendorName: z.string(),
  contact: z.string(),
  /** One sentence: what it is about, and when they were last asked. */
  why: z.string(),
  /** The longest wait among what is asked about, in days. */
  waitedDays: z.int(),
  chasedOn: day.nullable(),
  orders: z.array(
    z.object({
      order: id,
      number: z.string(),
      lines: z.array(z.object({ part: id, description: z.string(), why: z.string() })),
    }),
  ),
  claimsMinor: minor,
  /** The text to send. */
  text: z.string(),
});
export type ChaseRow = z.infer<typeof chaseRow>;

const onOrder = actBase.extend({ order: id });
const lineQuantities = z
  .array(z.object({ line: id, quantityMilli: positiveMilli.optional() }))
  .min(1)
  .max(2000);

export const ordersContract = {
  list: procedure.input(ofBuild).output(z.array(orderRow)),
  detail: procedure.input(z.object({ order: id, asOf: day.optional() })).output(orderDetail),
  /** Lines of the list that a vendor could be asked for: uncovered needs, that vendor's first. */
  needsOf: procedure.input(z.object({ build: id, vendor: id.nullable() })).output(
    z.array(
      z.object({
        part: id,
        description: z.string(),
        partNumber: z.string(),
        unit: z.string(),
        vendor: id.nullable(),
        uncoveredMilli: milli,
        estimateEachE4: z.int().nullable(),
        priority: z.int(),
        neededBy: day.nullable(),
      }),
    ),
  ),
  /** What the order would cost, line by line, without placing it. */
  land: procedure.input(orderDraft.extend({ on: day })).output(
    z.object({
      lines: z.array(landedLine),
      totalMinor: minor,
      totalBaseMinor: minor,
      rate: z.string().nullable(),
      rateOn: day.nullable(),
      notices: z.array(z.string()),
    }),
  ),
  /** A part with a wrong fit stops it (`fits.stops`), unless `despiteFits` says why it is ordered all the same. */
  place: procedure
    .input(
      actBase.extend({
        order: orderDraft,
        paid: z.boolean().optional(),
        despiteFits: optionalLine(400).optional(),
      }),
    )
    .output(actResult),
  acknowledge: procedure
    .input(onOrder.extend({ lines: lineQuantities, promisedOn: day.nullable(), number: optionalLine(80).optional() }))
    .output(actResult),
  backOrder: procedure
    .input(onOrder.extend({ lines: lineQuantities, promisedOn: day.nullable(), note: optionalLine(2000) }))
    .output(actResult),
  promise: procedure
    .input(
      onOrder.extend({ lines: z.array(id).min(1).max(2000), promisedOn: day.nullable(), note: optionalLine(2000) }),
    )
    .output(actResult),
  ship: procedure
    .input(onOrder.extend({ lines: lineQuantities, tracking: optionalLine(200), expectedOn: day.nullable() }))
    .output(actResult),
  chase: procedure.input(onOrder.extend({ note: optionalLine(2000) })).output(actResult),
  receiveBox: procedure
    .input(
      onOrder.extend({
        lines: z.array(boxLine).min(1).max(2000),
        bin: id.nullable(),
        leaveForInspection: z.boolean(),
        note: optionalLine(2000),
      }),
    )
    .output(actResult),
  /** Receives all that is outstanding on the part lines given, whatever their orders. */
  receiveParts: procedure
    .input(actBase.extend({ build: id, parts: z.array(id).min(1).max(20_000), bin: id.nullable() }))
    .output(actResult),
  /** New charges or prices: value moves by what changed, on the part not received and on the part received. */
  reprice: procedure
    .input(
      onOrder.extend({
        revision: z.int(),
        charges,
        rate: z.string().optional(),
        lines: z.array(z.object({ line: id, eachE4: z.int().min(0) })),
        number: optionalLine(80).optional(),
        note: optionalLine(2000).optional(),
      }),
    )
    .output(actResult),
  cancel: procedure.input(onOrder.extend({ lines: lineQuantities, reason: optionalLine(400) })).output(actResult),
  pay: procedure
    .input(
      onOrder.extend({
        amountMinor: positiveMinor,
        rate: z.string().optional(),
        method: optionalLine(80),
        note: optionalLine(2000),
      }),
    )
    .output(actResult),
  /** Money back for what was sent back or cancelled; the rest of the claim is the vendor's fee. */
  refund: procedure
    .input(
      onOrder.extend({
        line: id,
        amountMinor: minor.min(0),
        feeMinor: minor.min(0),
        settlesMilli: z.int().min(0),
        note: optionalLine(2000),
      }),
    )
    .output(actResult),
  deposit: procedure
    .input(
      onOrder.extend({
        line: id,
        what: z.enum(['paid', 'old unit sent', 'refunded', 'kept by vendor']),
        amountMinor: minor.min(0),
        dueOn: day.nullable(),
        reason: optionalLine(400),
      }),
    )
    .output(actResult),
  due: procedure.input(ofBuild).output(z.array(dueRow)),
  /** Whom to write to today and why, the longest wait first; nobody who was asked within a week. */
  chasing: procedure.input(ofBuild).output(z.object({ answer: z.string(), rows: z.array(chaseRow) })),
  /** Notes that a vendor was asked about several orders at once. */
  chaseAll: procedure
    .input(actBase.extend({ orders: z.array(id).min(1).max(500), note: optionalLine(2000) }))
    .output(actResult),
  vendorCards: procedure.input(ofBuild).output(z.array(vendorCard)),
};
