/**
 * A plan that is changed one need at a time, with its figures kept up: what `weighPlan` works out anew, in a few steps.
 * Only for trying many plans; what is shown is weighed by `weighPlan`.
 */
import { type BuyItem, type BuyingInput, niceValue, type OrderWeeks, priceInWeek } from './buying-plan.ts';

export interface RunningFigures {
  readonly shortMinor: number;
  readonly niceValue: number;
  readonly spendMinor: number;
  readonly weightedWeeks: number;
}

export interface RunningPlan {
  /** Puts a need into a week, or takes it out. */
  move(item: BuyItem, week: number | undefined): void;
  weekOf(id: string): number | undefined;
  figures(): RunningFigures;
  /** Cash at the end of a week. */
  cashAt(week: number): number;
  weeks(): OrderWeeks;
}

export function runningPlan(input: BuyingInput): RunningPlan {
  const weekCount = input.lastWeek + 1;
  const vendorAt = new Map(input.vendors.map(({ id }, index) => [id, index]));
  const goods = input.vendors.map(() => new Float64Array(weekCount));
  const counts = input.vendors.map(() => new Int32Array(weekCount));
  const spend = new Float64Array(weekCount);
  const inHand = new Float64Array(weekCount);
  let cash = input.openingMinor;
  for (let week = 0; week < weekCount; week += 1) {
    cash += input.cashMinor[week] ?? 0;
    inHand[week] = cash;
  }
  const groupOf = new Map<string, { readonly members: readonly BuyItem[]; readonly index: number }>();
  (input.priceBreaks ?? []).forEach((each, index) => {
    const members = input.items.filter(({ id }) => each.priceMinor[id] !== undefined);
    for (const { id } of members) groupOf.set(id, { members, index });
  });
  const weeks = new Map<string, number>();
  let nice = 0;
  let weighted = 0;
  let total = 0;

  const priceOf = (item: BuyItem, week: number): number => {
    const own = priceInWeek(item, week);
    const group = groupOf.get(item.id);
    const each = group === undefined ? undefined : input.priceBreaks?.[group.index];
    if (group === undefined || each === undefined) return own;
    const together = group.members.reduce(
      (sum, other) => sum + (weeks.get(other.id) === week ? (other.quantityMilli ?? 0) : 0),
      0,
    );
    return together >= each.fromQuantityMilli ? Math.min(own, each.priceMinor[item.id] as number) : own;
  };
  const shipping = (vendor: number, week: number): number => {
    const terms = input.vendors[vendor];
    if (terms === undefined || counts[vendor]?.[week] === 0) return 0;
    return terms.freeFromMinor !== null && (goods[vendor]?.[week] ?? 0) >= terms.freeFromMinor
      ? 0
      : terms.shippingMinor;
  };
  const add = (item: BuyItem, sign: 1 | -1): void => {
    const week = weeks.get(item.id);
    const vendor = vendorAt.get(item.vendor);
    if (week === undefined || vendor === undefined) return;
    const price = priceOf(item, week);
    const [sums, orders] = [goods[vendor], counts[vendor]];
    if (sums === undefined || orders === undefined) return;
    const before = (sums[week] ?? 0) + shipping(vendor, week);
    sums[week] = (sums[week] ?? 0) + sign * price;
    orders[week] = (orders[week] ?? 0) + sign;
    const change = (sums[week] ?? 0) + shipping(vendor, week) - before;
    spend[week] = (spend[week] ?? 0) + change;
    total += change;
    nice += sign * niceValue(item);
    weighted += sign * item.priority * week;
  };
  const cashUpTo = (last: number): { readonly cash: number; readonly least: number } => {
    let spent = 0;
    let least = Number.POSITIVE_INFINITY;
    let now = input.openingMinor;
    for (let week = 0; week <= last; week += 1) {
      spent += spend[week] ?? 0;
      now = (inHand[week] ?? 0) - spent;
      if (now < least) least = now;
    }
    return { cash: now, least };
  };
  return {
    move(item, week) {
      const members = groupOf.get(item.id)?.members ?? [item];
      for (const member of members) add(member, -1);
      if (week === undefined) weeks.delete(item.id);
      else weeks.set(item.id, week);
      for (const member of members) add(member, 1);
    },
    weekOf: (id) => weeks.get(id),
    figures: () => ({
      shortMinor: Math.max(0, input.floorMinor - cashUpTo(input.lastWeek).least),
      niceValue: nice,
      spendMinor: total,
      weightedWeeks: weighted,
    }),
    cashAt: (week) => cashUpTo(week).cash,
    weeks: () => new Map(weeks),
  };
}
