import { z } from 'zod';
import { currency, day, id, milli, minor, ofBuild, procedure } from './common.ts';

const cashPoint = z.object({
  on: day,
  likelyMinor: minor,
  safeMinor: minor,
  /** What moved that day. */
  names: z.array(z.string()),
});

/** Money that is owed on an order, and the day that it is counted on. */
const commitment = z.object({
  order: id,
  number: z.string(),
  vendorName: z.string(),
  dueOn: day,
  amountMinor: minor,
  /** Why that day. */
  says: z.string(),
});

export const cashView = z.object({
  /** The page's first sentence: how far the money goes. */
  answer: z.string(),
  currency,
  /** The count that it starts from; null when nobody has counted. */
  count: z.object({ id, on: day, cashMinor: minor, floorMinor: minor }).nullable(),
  floorMinor: minor,
  /** Cash today by the count, the incomes and the payments since. */
  nowMinor: minor.nullable(),
  points: z.array(cashPoint),
  lowestLikelyMinor: minor.nullable(),
  lowestSafeMinor: minor.nullable(),
  likelyBelowOn: day.nullable(),
  safeBelowOn: day.nullable(),
  committed: z.array(commitment),
  assumes: z.array(z.string()),
});
export type CashView = z.infer<typeof cashView>;

const planLine = z.object({
  part: id,
  description: z.string(),
  must: z.boolean(),
  /** Null when the money of the weeks planned doesn't pay for it. */
  week: z.int().nullable(),
  on: day.nullable(),
  vendor: id,
  vendorName: z.string(),
  orderMilli: milli,
  unit: z.string(),
  priceMinor: minor.nullable(),
  priceFrom: z.enum(['offer', 'quote', 'estimate']),
  /** Where the price was read. */
  priceSays: z.string(),
  leadDays: z.int(),
  leadSays: z.string(),
  /** Days of work from its arrival to the gate. */
  tailDays: z.int(),
  reason: z.enum(['holds-gate', 'waits-for-cash', 'shares-order', 'no-hurry', 'left-out']),
  /** Weeks that it could be ordered later; null for what is nice to have. */
  slackWeeks: z.int().nullable(),
  sentence: z.string(),
});
export type PlanLine = z.infer<typeof planLine>;

const planOrder = z.object({
  vendor: id,
  vendorName: z.string(),
  goodsMinor: minor,
  shippingMinor: minor,
  parts: z.array(id),
});

const planWeek = z.object({
  week: z.int(),
  on: day,
  orders: z.array(planOrder),
  spendMinor: minor,
  cashAfterMinor: minor,
});
export type PlanWeek = z.infer<typeof planWeek>;

export const buyingView = z.object({
  answer: z.string(),
  currency,
  gateName: z.string(),
  /** `plan`; `none`: the money doesn't pay for it; `nothing`: nothing is left to buy; `no-count`: cash was never counted. */
  status: z.enum(['plan', 'none', 'nothing', 'no-count']),
  /** `exact`: proven best; `quick`: found by moves, perhaps not the best. Null without a plan. */
  method: z.enum(['exact', 'quick']).nullable(),
  /** P80 waits and certain income only, or P50 waits and all income. */
  safe: z.boolean(),
  startOn: day,
  /** Last day of the weeks that orders may be placed in. */
  lastOn: day,
  gateOn: day.nullable(),
  spendMinor: minor.nullable(),
  shippingMinor: minor.nullable(),
  /** Shipping if every part were ordered by itself, less that of the plan. */
  shippingSavedMinor: minor.nullable(),
  /** Money missing, as far as it can be said. */
  shortMinor: minor.nullable(),
  weeks: z.array(planWeek),
  /** Ordered lines by week; what isn't bought comes last. */
  lines: z.array(planLine),
  /** Cash at the end of each week with the plan's orders. */
  cash: z.array(z.object({ on: day, cashMinor: minor })),
  /** Needs that lack a price, a vendor or a rate. */
  lacking: z.array(z.object({ part: id, description: z.string(), must: z.boolean(), why: z.string() })),
  /** The same list bought by priority as money comes; null without a plan. */
  asMoneyComes: z
    .object({
      /** Null when it doesn't buy all must-haves within the weeks. */
      gateOn: day.nullable(),
      spendMinor: minor,
      /** Days by which the plan is earlier; null when the other way never gets there. */
      daysWon: z.int().nullable(),
      says: z.string(),
    })
    .nullable(),
  assumes: z.array(z.string()),
});
export type BuyingView = z.infer<typeof buyingView>;

export const buyingContract = {
  /** Money over time: what is in hand, what comes in, what is owed with its days. */
  cash: procedure.input(ofBuild.extend({ weeks: z.int().min(1).max(104).default(26) })).output(cashView),
  /** What to order when. A proposal: it writes nothing. */
  plan: procedure
    .input(
      ofBuild.extend({
        /** Judge by P80 waits and by certain income only. */
        safe: z.boolean().default(false),
        /** Weeks ahead in which orders may be placed. */
        weeks: z.int().min(1, 'From 1 to 104 weeks.').max(104, 'From 1 to 104 weeks.').default(52),
        /** Skip the search for a proven best. */
        quick: z.boolean().default(false),
      }),
    )
    .output(buyingView),
};
