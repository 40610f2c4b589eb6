import type { BuyingView, PlanLine, PlanWeek } from '../contract/buying.ts';
import { addDays } from '../dates/calendar-date.ts';
import { formatMoney } from '../money/currency.ts';
import type { BuyNeed, PreparedBuying } from '../purchasing/buying-needs.ts';
import type { BuyingPlan } from '../purchasing/buying-plan-solve.ts';
import type { ChosenPrice } from '../purchasing/need-price.ts';
import type { LeadAnswer } from '../workbook/store/buying-facts.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { dayWords, quantityWords } from '../workbook/store/entry-text.ts';
import { readRecord } from '../workbook/store/record-tables.ts';

const dayOfWeek = (startOn: string, week: number): string => addDays(startOn, week * 7);
const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0);

type Totals = Required<
  Pick<BuyingView, 'gateOn' | 'spendMinor' | 'shippingMinor' | 'shippingSavedMinor' | 'asMoneyComes'>
> & {
  readonly gateOn: string;
  readonly spendMinor: number;
  readonly asMoneyComes: NonNullable<BuyingView['asMoneyComes']>;
};

/** The plan's day and money, and how they compare with buying by priority as money comes. */
export function totalsOf({ input }: PreparedBuying, plan: BuyingPlan, startOn: string, currency: string): Totals {
  const { figures, asMoneyComes: habit } = plan;
  const shippingMinor = sum(figures.shippingMinor.values());
  const alone = sum(
    [...figures.priceMinor].map(([id, price]) => {
      const vendorId = input.items.find((item) => item.id === id)?.vendor;
      const vendor = input.vendors.find((each) => each.id === vendorId);
      const isFree = vendor === undefined || (vendor.freeFromMinor !== null && price >= vendor.freeFromMinor);
      return isFree ? 0 : vendor.shippingMinor;
    }),
  );
  const habitOn = habit.gateWeek === null ? null : dayOfWeek(startOn, habit.gateWeek);
  const daysWon = habit.gateWeek === null ? null : (habit.gateWeek - figures.gateWeek) * 7;
  const spent = formatMoney(habit.spendMinor, currency);
  const says =
    daysWon === null || habitOn === null
      ? 'Bought by priority as money comes, the must-haves would not all be bought within these weeks.'
      : daysWon > 0
        ? `Bought by priority as money comes it would be the week of ${dayWords(habitOn)}, for ${spent}: ${daysWon} days later.`
        : daysWon === 0
          ? `Bought by priority as money comes it would be the same week, for ${spent}.`
          : `Bought by priority as money comes it would be the week of ${dayWords(habitOn)}, for ${spent}, which doesn’t look ahead at what is owed.`;
  return {
    gateOn: dayOfWeek(startOn, figures.gateWeek),
    spendMinor: figures.spendMinor,
    shippingMinor,
    shippingSavedMinor: Math.max(0, alone - shippingMinor),
    asMoneyComes: { gateOn: habitOn, spendMinor: habit.spendMinor, daysWon, says },
  };
}

/** The orders of each week that has any. */
export function weeksOf({ input }: PreparedBuying, plan: BuyingPlan, startOn: string): PlanWeek[] {
  const { figures } = plan;
  const byWeek = Map.groupBy([...plan.weeks], ([, week]) => week);
  return [...byWeek]
    .sort(([a], [b]) => a - b)
    .map(([week, bought]) => {
      const ids = new Set(bought.map(([id]) => id));
      const byVendor = Map.groupBy(
        input.items.filter(({ id }) => ids.has(id)),
        ({ vendor }) => vendor,
      );
      const orders = [...byVendor].map(([vendor, items]) => ({
        vendor: Number(vendor),
        vendorName: input.vendors.find(({ id }) => id === vendor)?.name ?? '',
        goodsMinor: sum(items.map(({ id }) => figures.priceMinor.get(id) ?? 0)),
        shippingMinor: figures.shippingMinor.get(`${vendor}/${week}`) ?? 0,
        parts: items.map(({ id }) => Number(id)),
      }));
      return {
        week,
        on: dayOfWeek(startOn, week),
        orders,
        spendMinor: sum(orders.map(({ goodsMinor, shippingMinor }) => goodsMinor + shippingMinor)),
        cashAfterMinor: figures.cashMinor[week] ?? 0,
      };
    });
}

export interface LineFacts {
  readonly startOn: string;
  readonly needs: readonly BuyNeed[];
  readonly leads: (vendor: number) => LeadAnswer;
  readonly safe: boolean;
  readonly connection: Connection;
}

/** One line for each need of the plan, with where its price and its wait come from. */
export function linesOf(prepared: PreparedBuying, plan: BuyingPlan, facts: LineFacts): PlanLine[] {
  const { startOn, leads, safe, connection } = facts;
  const needs = new Map(facts.needs.map((need) => [String(need.part), need]));
  return plan.lines.flatMap((line): PlanLine[] => {
    const need = needs.get(line.item);
    const price = prepared.prices.get(line.item);
    if (need === undefined || price === undefined) return [];
    const lead = leads(price.vendor);
    const unit = String(readRecord(connection, 'parts', need.part)?.['unit'] ?? 'each');
    return [
      {
        part: need.part,
        description: need.name,
        must: need.must,
        week: line.week,
        on: line.week === null ? null : dayOfWeek(startOn, line.week),
        vendor: price.vendor,
        vendorName: prepared.input.vendors.find(({ id }) => id === String(price.vendor))?.name ?? '',
        orderMilli: price.orderMilli,
        unit,
        priceMinor: line.priceMinor,
        priceFrom: price.from,
        priceSays: priceSaid(price, need, unit),
        leadDays: Math.ceil(Math.round((safe ? lead.p80Days : lead.p50Days) * 1e6) / 1e6),
        leadSays: lead.says,
        tailDays: Math.ceil(Math.round(need.tailDays * 1e6) / 1e6),
        reason: line.reason,
        slackWeeks: line.slackWeeks,
        sentence: line.sentence,
      },
    ];
  });
}

const sources = { offer: 'the vendor’s offer', quote: 'the latest quotes', estimate: 'the estimate on the part line' };

function priceSaid(price: ChosenPrice, need: BuyNeed, unit: string): string {
  const until = price.deal?.until ?? price.unknownAfter;
  const more = price.orderMilli - need.quantityMilli;
  return [
    `From ${sources[price.from]}`,
    ...(until === null || until === undefined ? [] : [`until ${dayWords(until)}`]),
    ...(price.unknownAfter === null ? [] : ['counted the same afterwards, for nothing says what it costs then']),
    ...(more > 0
      ? [
          `${quantityWords(price.orderMilli, unit)} are ordered, ${quantityWords(more, unit)} more than needed, for that is where the price begins`,
        ]
      : []),
  ].join('; ');
}
