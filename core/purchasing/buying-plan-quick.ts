/**
 * Plans without a solver. One is the plain habit of spending money as it comes, kept for comparison; the other places
 * needs by how long they hold the gate and then betters the plan one move at a time. Neither is proven best.
 */
import { type BuyItem, type BuyingInput, isMust, type OrderWeeks, weeksToConsider, weighPlan } from './buying-plan.ts';
import { type RunningFigures, runningPlan } from './running-plan.ts';

/** Every week the needs in order of priority (then as listed), stopping at the first that would break the floor. */
export function buyAsMoneyComes(input: BuyingInput): OrderWeeks {
  const plan = runningPlan(input);
  const order = [...input.items].sort((a, b) => b.priority - a.priority);
  for (let week = 0; week <= input.lastWeek; week += 1) {
    for (const item of order) {
      if (plan.weekOf(item.id) !== undefined || (item.firstWeek ?? 0) > week) continue;
      plan.move(item, week);
      if (plan.cashAt(week) < input.floorMinor) {
        plan.move(item, undefined);
        break;
      }
    }
  }
  return plan.weeks();
}

/** Whether plan `a` is better than `b`: no shortfall, more nice-to-haves, less spent, sooner. */
function isBetter(a: RunningFigures, b: RunningFigures): boolean {
  if (a.shortMinor !== b.shortMinor) return a.shortMinor < b.shortMinor;
  if (a.niceValue !== b.niceValue) return a.niceValue > b.niceValue;
  if (a.spendMinor !== b.spendMinor) return a.spendMinor < b.spendMinor;
  return a.weightedWeeks < b.weightedWeeks;
}

/** Weeks in which a need may be ordered so that the gate is not later than `gateWeek`. */
export function weeksForGate(item: BuyItem, weeks: readonly number[], gateWeek: number): number[] {
  const first = item.firstWeek ?? 0;
  const last = isMust(item) ? gateWeek - item.leadWeeks - item.workWeeks : Number.POSITIVE_INFINITY;
  return weeks.filter((week) => week >= first && week <= last);
}

/** Gates worth trying, earliest first: those that ordering some must-have in some week would give. */
export function gatesToTry(input: BuyingInput): number[] {
  const weeks = weeksToConsider(input);
  const musts = input.items.filter(isMust);
  const least = Math.max(
    input.gateWeekAtLeast ?? 0,
    ...musts.map((item) => (item.firstWeek ?? 0) + item.leadWeeks + item.workWeeks),
  );
  const gates = new Set([least]);
  for (const item of musts) {
    for (const week of weeks) gates.add(Math.max(least, week + item.leadWeeks + item.workWeeks));
  }
  return [...gates].sort((a, b) => a - b);
}

/**
 * Whether a gate is out of reach whatever the weeks: even with every must-have at its latest week, at its lowest price and
 * shipped free, the floor would break. Quick, and a proof; false proves nothing.
 */
export function isOutOfReach(input: BuyingInput, gateWeek: number): boolean {
  const candidates = weeksToConsider(input);
  const weeks = new Map<string, number>();
  const items: BuyItem[] = [];
  for (const item of input.items.filter(isMust)) {
    const last = weeksForGate(item, candidates, gateWeek).at(-1);
    if (last === undefined) return true;
    weeks.set(item.id, last);
    const breaks = (input.priceBreaks ?? []).flatMap((each) => each.priceMinor[item.id] ?? []);
    items.push({ ...item, priceMinor: Math.min(item.priceMinor, item.deal?.priceMinor ?? item.priceMinor, ...breaks) });
  }
  const vendors = input.vendors.map((vendor) => ({ ...vendor, shippingMinor: 0 }));
  return weighPlan({ ...input, items, vendors, priceBreaks: [] }, weeks).shortMinor > 0;
}

/**
 * A plan that keeps `gateWeek`: each need at its latest week, then single needs, and a vendor's needs together, are moved
 * as long as that makes the plan better. Null when none was found that keeps the floor.
 */
export function quickPlanForGate(input: BuyingInput, gateWeek: number): OrderWeeks | null {
  const candidates = weeksToConsider(input);
  const allowed = new Map(input.items.map((item) => [item.id, weeksForGate(item, candidates, gateWeek)]));
  const plan = runningPlan(input);
  for (const item of input.items.filter(isMust)) {
    const last = allowed.get(item.id)?.at(-1);
    if (last === undefined) return null;
    plan.move(item, last);
  }
  let best = plan.figures();
  const tryMove = (items: readonly BuyItem[], week: number | undefined): boolean => {
    const before = items.map(({ id }) => plan.weekOf(id));
    if (before.every((each) => each === week)) return false;
    for (const item of items) plan.move(item, week);
    const figures = plan.figures();
    if (isBetter(figures, best)) {
      best = figures;
      return true;
    }
    items.forEach((item, index) => {
      plan.move(item, before[index]);
    });
    return false;
  };
  const pairs = pairsOf(input);
  const rounds = input.items.length > mostForPairs ? 4 : 50;
  for (let round = 0, moved = true; moved && round < rounds; round += 1) {
    moved = false;
    for (const item of input.items) {
      for (const week of allowed.get(item.id) ?? []) if (tryMove([item], week)) moved = true;
      if (!isMust(item) && best.shortMinor > 0 && tryMove([item], undefined)) moved = true;
    }
    for (const pair of pairs) {
      const other = allowed.get(pair[1].id) ?? [];
      for (const week of allowed.get(pair[0].id) ?? []) if (other.includes(week) && tryMove(pair, week)) moved = true;
    }
  }
  return best.shortMinor === 0 ? plan.weeks() : null;
}

/** Above this many needs, pairs of them are too many to try, and few rounds must do. */
const mostForPairs = 250;

/** Two of a vendor's needs at once: what reaches a threshold only together. Vendors without terms have none. */
function pairsOf(input: BuyingInput): (readonly [BuyItem, BuyItem])[] {
  if (input.items.length > mostForPairs) return [];
  const inBreak = new Set((input.priceBreaks ?? []).flatMap(({ priceMinor }) => Object.keys(priceMinor)));
  const charging = new Set(input.vendors.filter(({ shippingMinor }) => shippingMinor > 0).map(({ id }) => id));
  return input.items.flatMap((item) =>
    input.items
      .filter(
        (other) =>
          other.vendor === item.vendor &&
          other.id > item.id &&
          (charging.has(item.vendor) || (inBreak.has(item.id) && inBreak.has(other.id))),
      )
      .map((other) => [item, other] as const),
  );
}
