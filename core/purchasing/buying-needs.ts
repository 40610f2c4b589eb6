/**
 * From the needs of a build, in days and with every price known, to the buying plan's weeks. Weeks count from the first
 * day of the plan; lead and work are rounded up together, so that a plan is never earlier than its days allow.
 */
import { daysBetween } from '../dates/calendar-date.ts';
import type { BuyItem, BuyingInput, BuyVendor, PriceBreak } from './buying-plan.ts';
import { type DatedSum, weeklyCash } from './cash-curve.ts';
import { type ChosenPrice, choicePrice, choosePrice, type PriceChoice } from './need-price.ts';

export interface BuyNeed {
  readonly part: number;
  readonly name: string;
  readonly quantityMilli: number;
  /** Needs with the same text (a part number at a maker's) count together towards a price break; empty: alone. */
  readonly sameAs: string;
  readonly must: boolean;
  /** Of a job after the gate: it doesn't hold it. */
  readonly afterGate: boolean;
  /** 1 first to 5 last, as on the part line. */
  readonly priority: number;
  /** From its arrival to the gate. */
  readonly tailDays: number;
  readonly choices: readonly PriceChoice[];
  /** Currencies of prices that couldn't be used for want of a rate. */
  readonly noRateFor: readonly string[];
  /** Whether a vendor is named on the part line. */
  readonly hasVendor: boolean;
}

export interface BuyingFacts {
  readonly currency: string;
  readonly startOn: string;
  readonly lastWeek: number;
  readonly needs: readonly BuyNeed[];
  readonly vendors: readonly BuyVendor[];
  /** Days from an order of a part at a vendor to its arrival. */
  readonly leadDays: (vendor: number, part: number) => number;
  readonly openingMinor: number;
  readonly floorMinor: number;
  readonly movements: readonly DatedSum[];
  /** Days until the gate if nothing more had to be bought. */
  readonly leastDays: number;
}

export interface Lacking {
  readonly part: number;
  readonly name: string;
  readonly must: boolean;
  readonly why: string;
}

export interface PreparedBuying {
  readonly input: BuyingInput;
  readonly prices: ReadonlyMap<string, ChosenPrice>;
  /** Needs that no plan can hold, and what they lack. */
  readonly lacking: readonly Lacking[];
}

export function prepareBuying(facts: BuyingFacts): PreparedBuying {
  const { currency, startOn } = facts;
  const prices = new Map<string, ChosenPrice>();
  const lacking: Lacking[] = [];
  const items: BuyItem[] = [];
  for (const need of facts.needs) {
    const price = choosePrice(need.choices, need.quantityMilli, currency, startOn);
    if (price === null) {
      lacking.push({ part: need.part, name: need.name, must: need.must, why: lackOf(need) });
      continue;
    }
    const id = String(need.part);
    const leadDays = facts.leadDays(price.vendor, need.part);
    const leadWeeks = inWeeks(leadDays);
    prices.set(id, price);
    items.push({
      id,
      name: need.name,
      vendor: String(price.vendor),
      priceMinor: price.priceMinor,
      leadWeeks,
      leadDays: Math.ceil(roundedDays(leadDays)),
      workWeeks: Math.max(0, inWeeks(leadDays + need.tailDays) - leadWeeks),
      priority: 6 - need.priority,
      must: need.must,
      ...(need.afterGate ? { niceSays: 'for a job after the gate' } : {}),
      deal: price.deal === null ? null : { priceMinor: price.deal.priceMinor, lastWeek: lastWeekOf(price.deal.until) },
      quantityMilli: price.orderMilli,
    });
  }
  const used = new Set(items.map(({ vendor }) => vendor));
  return {
    input: {
      items,
      vendors: facts.vendors.filter(({ id }) => used.has(id)),
      priceBreaks: breaksOf(facts, prices),
      openingMinor: facts.openingMinor,
      cashMinor: weeklyCash(facts.movements, startOn, facts.lastWeek),
      floorMinor: facts.floorMinor,
      lastWeek: facts.lastWeek,
      gateWeekAtLeast: inWeeks(facts.leastDays),
    },
    prices,
    lacking,
  };

  /** An order is placed on the first day of its week. */
  function lastWeekOf(until: string): number {
    return Math.floor(daysBetween(startOn, until) / 7);
  }
}

/** A quantile found by halving can miss a whole day by a hair, which must not cost a week. */
const roundedDays = (days: number): number => Math.round(days * 1e6) / 1e6;
const inWeeks = (days: number): number => Math.max(0, Math.ceil(roundedDays(days) / 7));

function lackOf({ choices, noRateFor, hasVendor }: BuyNeed): string {
  if (noRateFor.length > 0) return `no exchange rate for ${noRateFor.join(', ')} is on record`;
  if (choices.length > 0) return 'no price holds any more';
  return hasVendor ? 'no price: no offer, no quote, no estimate' : 'no vendor is chosen';
}

/** The lowest threshold that same needs reach only together, one for each such group at a vendor. */
function breaksOf(facts: BuyingFacts, prices: ReadonlyMap<string, ChosenPrice>): PriceBreak[] {
  const breaks: PriceBreak[] = [];
  const groups = Map.groupBy(
    facts.needs.filter(({ part, sameAs }) => sameAs !== '' && prices.has(String(part))),
    ({ part, sameAs }) => `${prices.get(String(part))?.vendor} ${sameAs}`,
  );
  for (const needs of groups.values()) {
    const members = needs.map((need) => ({ need, price: prices.get(String(need.part)) as ChosenPrice }));
    const together = members.reduce((sum, { price }) => sum + price.orderMilli, 0);
    const offered = members
      .flatMap(({ price }) => price.breaks)
      .filter(({ fromMilli }) => fromMilli <= together)
      .sort((a, b) => a.fromMilli - b.fromMilli);
    const [first] = offered;
    if (first === undefined || members.length < 2) continue;
    breaks.push({
      fromQuantityMilli: first.fromMilli,
      priceMinor: Object.fromEntries(
        members.map(({ need, price }) => [String(need.part), choicePrice(first, price.orderMilli, facts.currency)]),
      ),
    });
  }
  return breaks;
}
