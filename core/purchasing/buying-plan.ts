/**
 * What to order in which week: the needs, the vendors' terms and the money, and what a choice of weeks comes to. Money is
 * counted in whole minor units here, whoever proposed the weeks, so that no plan shown can break the floor.
 * Within a week money comes in before it is spent. A plan is a proposal; nothing is ordered by it.
 */
import { Refusal } from '../refusal.ts';

export interface BuyItem {
  readonly id: string;
  readonly name: string;
  readonly vendor: string;
  /** For the whole need, landed, without what is charged for the order as a whole. */
  readonly priceMinor: number;
  /** Whole weeks from order to accepted receipt, as cautious as the caller likes (P50, P80). */
  readonly leadWeeks: number;
  /** The same in days, for the words only. */
  readonly leadDays?: number;
  /** Whole weeks of work from its arrival to the gate. */
  readonly workWeeks: number;
  /** The higher, the sooner among equals. */
  readonly priority: number;
  /** False for what would be nice: it doesn't hold the gate and is bought when the money allows. True when left out. */
  readonly must?: boolean;
  /** Why it doesn't hold the gate, in words; "nice to have" when left out. */
  readonly niceSays?: string;
  /** A lower price for orders up to and including a week. */
  readonly deal?: { readonly priceMinor: number; readonly lastWeek: number } | null;
  /** Not to be ordered before this week. */
  readonly firstWeek?: number;
  /** Counts towards a price break. */
  readonly quantityMilli?: number;
}

export interface BuyVendor {
  readonly id: string;
  readonly name: string;
  /** Charged once for each week in which something is ordered. */
  readonly shippingMinor: number;
  /** Goods of one order from which shipping is free; null when it never is. */
  readonly freeFromMinor: number | null;
}

/** Lower prices for needs ordered together in one week; a need may be in one break at most. */
export interface PriceBreak {
  readonly fromQuantityMilli: number;
  /** Price of the whole need by its id; used where it is the lower one. */
  readonly priceMinor: Readonly<Record<string, number>>;
}

export interface BuyingInput {
  readonly items: readonly BuyItem[];
  readonly vendors: readonly BuyVendor[];
  readonly priceBreaks?: readonly PriceBreak[];
  readonly openingMinor: number;
  /** Money coming in, less what is already committed, by week number; weeks left out have none. */
  readonly cashMinor: Readonly<Record<number, number>>;
  readonly floorMinor: number;
  /** Orders are placed in weeks 0 to this one. */
  readonly lastWeek: number;
  /** The gate can't come earlier than this, whatever is bought: work without purchases. 0 when left out. */
  readonly gateWeekAtLeast?: number;
}

/** Week of each order by need; a need left out isn't bought. */
export type OrderWeeks = ReadonlyMap<string, number>;

export interface PlanFigures {
  readonly gateWeek: number;
  readonly spendMinor: number;
  /** Cash at the end of each week from 0 to the last. */
  readonly cashMinor: readonly number[];
  /** How far below the floor the plan goes at worst; 0 when it never does. */
  readonly shortMinor: number;
  /** Must-haves left out. */
  readonly missing: number;
  /** Priorities of the nice-to-haves bought, at least 1 each. */
  readonly niceValue: number;
  /** Priority times week, over all that is bought. */
  readonly weightedWeeks: number;
  /** What each need costs in this plan, by id. */
  readonly priceMinor: ReadonlyMap<string, number>;
  /** Shipping charged, by "vendor/week". */
  readonly shippingMinor: ReadonlyMap<string, number>;
}

/**
 * Hands a usable input back.
 * @throws Refusal `bad-input` naming the need, vendor or figure.
 */
export function requireBuyingInput(input: BuyingInput): BuyingInput {
  const whole = (value: number, field: string, least = 0): void => {
    if (!Number.isSafeInteger(value) || value < least) {
      throw refused(
        field,
        `The ${field} ${value} is not a whole number from ${least}.`,
        `a whole number from ${least}`,
      );
    }
  };
  whole(input.lastWeek, 'last week');
  if (input.lastWeek > 520) throw refused('last week', 'The last week lies more than ten years ahead.', '0 to 520');
  whole(input.gateWeekAtLeast ?? 0, 'gate week');
  for (const amount of [input.openingMinor, input.floorMinor, ...Object.values(input.cashMinor)]) {
    whole(amount, 'amount of money', Number.MIN_SAFE_INTEGER);
  }
  const vendors = new Set(input.vendors.map((vendor) => vendor.id));
  for (const vendor of input.vendors) {
    whole(vendor.shippingMinor, `shipping of ${vendor.name}`);
    if (vendor.freeFromMinor !== null) whole(vendor.freeFromMinor, `free shipping limit of ${vendor.name}`);
  }
  const seen = new Set<string>();
  for (const item of input.items) {
    if (seen.has(item.id)) throw refused('need', `The need ${item.id} is listed twice.`, 'each need once');
    seen.add(item.id);
    if (!vendors.has(item.vendor)) {
      throw refused('vendor', `The vendor ${item.vendor} of “${item.name}” is not listed.`, 'a listed vendor');
    }
    whole(item.priceMinor, `price of “${item.name}”`);
    whole(item.leadWeeks, `lead of “${item.name}”`);
    whole(item.workWeeks, `work weeks of “${item.name}”`);
    whole(item.firstWeek ?? 0, `first week of “${item.name}”`);
    if (!(item.priority >= 0)) {
      throw refused('priority', `The priority of “${item.name}” is below zero.`, 'a number from 0 up');
    }
    if (item.deal) whole(item.deal.priceMinor, `deal price of “${item.name}”`);
  }
  const inBreaks = (input.priceBreaks ?? []).flatMap((each) => Object.keys(each.priceMinor));
  const twice = inBreaks.find((id, index) => inBreaks.indexOf(id) !== index || !seen.has(id));
  if (twice !== undefined) {
    throw refused('price break', `The need ${twice} is in two price breaks or not listed.`, 'listed needs, each once');
  }
  return input;
}

/** Price of a need ordered alone in a week: the deal's while it lasts. */
export function priceInWeek(item: BuyItem, week: number): number {
  const { deal } = item;
  return deal && week <= deal.lastWeek ? Math.min(deal.priceMinor, item.priceMinor) : item.priceMinor;
}

export function isMust(item: BuyItem): boolean {
  return item.must !== false;
}

/** What a nice-to-have counts for when the money doesn't pay for all. */
export function niceValue(item: BuyItem): number {
  return isMust(item) ? 0 : Math.max(1, item.priority);
}

/** What a choice of weeks comes to. */
export function weighPlan(input: BuyingInput, weeks: OrderWeeks): PlanFigures {
  const price = new Map<string, number>();
  const bought = input.items.filter((item) => weeks.has(item.id));
  const weekOf = (item: BuyItem): number => weeks.get(item.id) as number;
  for (const item of bought) price.set(item.id, priceInWeek(item, weekOf(item)));
  for (const each of input.priceBreaks ?? []) {
    const inBreak = bought.filter((item) => each.priceMinor[item.id] !== undefined);
    for (const item of inBreak) {
      const together = inBreak
        .filter((other) => weekOf(other) === weekOf(item))
        .reduce((sum, other) => sum + (other.quantityMilli ?? 0), 0);
      if (together >= each.fromQuantityMilli) {
        price.set(item.id, Math.min(price.get(item.id) as number, each.priceMinor[item.id] as number));
      }
    }
  }
  const spendByWeek = new Array<number>(input.lastWeek + 1).fill(0);
  const shipping = new Map<string, number>();
  for (const vendor of input.vendors) {
    const goods = new Map<number, number>();
    for (const item of bought) {
      if (item.vendor !== vendor.id) continue;
      goods.set(weekOf(item), (goods.get(weekOf(item)) ?? 0) + (price.get(item.id) as number));
    }
    for (const [week, sum] of goods) {
      const isFree = vendor.freeFromMinor !== null && sum >= vendor.freeFromMinor;
      const charged = isFree ? 0 : vendor.shippingMinor;
      shipping.set(`${vendor.id}/${week}`, charged);
      spendByWeek[week] = (spendByWeek[week] ?? 0) + sum + charged;
    }
  }
  const cashMinor: number[] = [];
  let cash = input.openingMinor;
  let shortMinor = 0;
  spendByWeek.forEach((spend, week) => {
    cash += (input.cashMinor[week] ?? 0) - spend;
    cashMinor.push(cash);
    shortMinor = Math.max(shortMinor, input.floorMinor - cash);
  });
  const musts = input.items.filter(isMust);
  return {
    gateWeek: Math.max(
      input.gateWeekAtLeast ?? 0,
      ...bought.filter(isMust).map((item) => weekOf(item) + item.leadWeeks + item.workWeeks),
    ),
    spendMinor: spendByWeek.reduce((sum, spend) => sum + spend, 0),
    cashMinor,
    shortMinor,
    missing: musts.filter((item) => !weeks.has(item.id)).length,
    niceValue: bought.reduce((sum, item) => sum + niceValue(item), 0),
    weightedWeeks: bought.reduce((sum, item) => sum + item.priority * weekOf(item), 0),
    priceMinor: price,
    shippingMinor: shipping,
  };
}

/**
 * The only weeks worth ordering in: the first, those in which more comes in than goes out, and first weeks of needs. An
 * order placed between two of them does no worse at the earlier one: the floor is kept, deals last, orders merge.
 */
export function weeksToConsider(input: BuyingInput): number[] {
  const weeks = new Set([0]);
  for (const [week, amount] of Object.entries(input.cashMinor)) if (amount > 0) weeks.add(Number(week));
  for (const item of input.items) weeks.add(item.firstWeek ?? 0);
  return [...weeks].filter((week) => week >= 0 && week <= input.lastWeek).sort((a, b) => a - b);
}

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}
