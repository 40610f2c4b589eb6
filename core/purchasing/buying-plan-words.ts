/** Why a need is ordered when it is, in plain sentences. */
import { formatMoney } from '../money/currency.ts';
import {
  type BuyItem,
  type BuyingInput,
  isMust,
  type OrderWeeks,
  type PlanFigures,
  priceInWeek,
  weeksToConsider,
  weighPlan,
} from './buying-plan.ts';
import { weekStart } from './cash-curve.ts';
import { type RunningPlan, runningPlan } from './running-plan.ts';

export interface BuyWords {
  /** ISO 4217 code of all amounts. */
  readonly currency: string;
  /** First day of week 0; null to speak of week numbers. */
  readonly startOn: string | null;
  /** A day as sentences say it; as ISO text when left out. */
  readonly dayText?: (day: string) => string;
}

export type BuyReason = 'holds-gate' | 'waits-for-cash' | 'shares-order' | 'no-hurry' | 'left-out';

export interface BuyLine {
  readonly item: string;
  /** Null when it isn't bought within the weeks planned. */
  readonly week: number | null;
  readonly reason: BuyReason;
  /** Weeks it could be ordered later without moving the gate; null for nice-to-haves. */
  readonly slackWeeks: number | null;
  readonly priceMinor: number | null;
  readonly sentence: string;
}

/** One line for each need: ordered ones by week, then as listed; those left out come last. */
export function explainLines(input: BuyingInput, weeks: OrderWeeks, figures: PlanFigures, words: BuyWords): BuyLine[] {
  const late = Number.POSITIVE_INFINITY;
  const running = runningPlan(input);
  for (const item of input.items) running.move(item, weeks.get(item.id));
  const candidates = weeksToConsider(input);
  return [...input.items]
    .sort((a, b) => (weeks.get(a.id) ?? late) - (weeks.get(b.id) ?? late) || 0)
    .map((item) => explain(input, item, weeks, figures, words, () => earlierWeeks(running, item, candidates)));
}

function explain(
  input: BuyingInput,
  item: BuyItem,
  weeks: OrderWeeks,
  figures: PlanFigures,
  words: BuyWords,
  againstEarlier: () => Earlier,
): BuyLine {
  const week = weeks.get(item.id);
  if (week === undefined) {
    return {
      item: item.id,
      week: null,
      reason: 'left-out',
      slackWeeks: null,
      priceMinor: null,
      sentence: `“${item.name}” can wait: the money of the weeks planned doesn’t pay for it beside what the gate needs.`,
    };
  }
  const slack = isMust(item) ? figures.gateWeek - week - item.leadWeeks - item.workWeeks : null;
  const earlier = againstEarlier();
  const reason: BuyReason =
    slack === 0
      ? 'holds-gate'
      : earlier === 'no-cash'
        ? 'waits-for-cash'
        : earlier === 'dearer'
          ? 'shares-order'
          : 'no-hurry';
  const vendor = input.vendors.find((each) => each.id === item.vendor);
  const lead = item.leadDays === undefined ? owned(item.leadWeeks, 'week') : owned(item.leadDays, 'day');
  const work = isMust(item) && item.workWeeks > 0 ? ` and ${count(item.workWeeks, 'week')} of work after it` : '';
  const parts = [`${lead} lead${work}`];
  if (slack === 0) parts.push('it holds the date');
  if (earlier === 'no-cash') parts.push('the money for it is not there earlier');
  if (earlier === 'dearer') {
    const isFree = figures.shippingMinor.get(`${item.vendor}/${week}`) === 0;
    parts.push(
      `it goes with the order to ${vendor?.name ?? item.vendor}${isFree ? ', which is then shipped free' : ', which saves money'}`,
    );
  }
  if (slack !== null && slack > 0) {
    parts.push(
      words.startOn === null
        ? `${count(slack, 'week')} to spare`
        : `it could wait until ${dayOf(words.startOn, week + slack, words)}`,
    );
  }
  if (!isMust(item)) parts.push(`${item.niceSays ?? 'nice to have'}, paid from what is left`);
  const price = figures.priceMinor.get(item.id) ?? item.priceMinor;
  if (item.deal && week <= item.deal.lastWeek && price < item.priceMinor) {
    parts.push(
      `at ${formatMoney(price, words.currency)} instead of ${formatMoney(item.priceMinor, words.currency)} while the offer lasts`,
    );
  }
  return {
    item: item.id,
    week,
    reason,
    slackWeeks: slack,
    priceMinor: price,
    sentence: `Order “${item.name}” ${when(week, words)}: ${parts.join('; ')}.`,
  };
}

type Earlier = 'no-cash' | 'dearer' | 'nothing' | 'first';

/** What stands against every earlier week, all else as planned. */
function earlierWeeks(running: RunningPlan, item: BuyItem, candidates: readonly number[]): Earlier {
  const week = running.weekOf(item.id) as number;
  const before = candidates.filter((each) => each < week && each >= (item.firstWeek ?? 0));
  if (before.length === 0) return 'first';
  const planned = running.figures();
  let answer: Earlier = 'no-cash';
  for (const each of before) {
    running.move(item, each);
    const moved = running.figures();
    if (moved.shortMinor > 0) continue;
    if (moved.spendMinor <= planned.spendMinor) {
      answer = 'nothing';
      break;
    }
    answer = 'dearer';
  }
  running.move(item, week);
  return answer;
}

function when(week: number, words: BuyWords): string {
  if (week === 0) return 'in the first week';
  return words.startOn === null ? `in week ${week}` : `in the week of ${dayOf(words.startOn, week, words)}`;
}

function dayOf(startOn: string, week: number, { dayText }: BuyWords): string {
  const day = weekStart(startOn, week);
  return dayText === undefined ? day : dayText(day);
}

/** Why there is no plan, and how much money is missing. */
export function explainNone(input: BuyingInput, words: BuyWords): { reason: string; shortMinor: number | null } {
  const say = (minor: number): string => formatMoney(minor, words.currency);
  const bare = weighPlan(input, new Map());
  if (bare.shortMinor > 0) {
    const week = bare.cashMinor.findIndex((cash) => cash < input.floorMinor);
    return {
      reason: `Without a single order cash falls below the floor ${when(week, words)}, by ${say(bare.shortMinor)} at worst.`,
      shortMinor: bare.shortMinor,
    };
  }
  const most = Math.max(...bare.cashMinor) - input.floorMinor;
  const musts = input.items.filter(isMust);
  const costs = musts.map((item) => {
    const price = Math.min(priceInWeek(item, 0), ...breakPrices(input, item));
    const vendor = input.vendors.find((each) => each.id === item.vendor);
    const isFree = vendor === undefined || (vendor.freeFromMinor !== null && price >= vendor.freeFromMinor);
    return { item, alone: price + (isFree ? 0 : vendor.shippingMinor), shipping: !isFree, price };
  });
  const dearest = costs.toSorted((a, b) => b.alone - a.alone)[0];
  if (dearest !== undefined && dearest.alone > most && musts.length === 1) {
    return {
      reason: `The largest cash above the floor within the weeks planned is ${say(most)}; “${dearest.item.name}” costs ${say(dearest.alone)}${dearest.shipping ? ' with shipping' : ''}.`,
      shortMinor: dearest.alone - most,
    };
  }
  const together = cheapestTogether(input, musts);
  if (together > most) {
    return {
      reason: `The largest cash above the floor within the weeks planned is ${say(most)}; the must-haves cost at least ${say(together)}.`,
      shortMinor: together - most,
    };
  }
  return {
    reason: `The must-haves cost at least ${say(together)} and no choice of weeks up to ${words.startOn === null ? `week ${input.lastWeek}` : dayOf(words.startOn, input.lastWeek, words)} keeps the floor.`,
    shortMinor: null,
  };
}

function breakPrices(input: BuyingInput, item: BuyItem): number[] {
  return (input.priceBreaks ?? []).flatMap((each) => each.priceMinor[item.id] ?? []);
}

/** The least all must-haves can cost: lowest prices, one order a vendor. */
function cheapestTogether(input: BuyingInput, musts: readonly BuyItem[]): number {
  let sum = 0;
  for (const vendor of input.vendors) {
    const own = musts.filter((item) => item.vendor === vendor.id);
    const goods = own.reduce((total, item) => total + Math.min(priceInWeek(item, 0), ...breakPrices(input, item)), 0);
    const isFree = own.length === 0 || (vendor.freeFromMinor !== null && goods >= vendor.freeFromMinor);
    sum += goods + (isFree ? 0 : vendor.shippingMinor);
  }
  return sum;
}

/** "1 week’s", "34 days’". */
function owned(number: number, noun: string): string {
  return number === 1 ? `1 ${noun}’s` : `${number} ${noun}s’`;
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
