/**
 * Plans without a solver. One is the plain habit of spending money as it comes, kept for comparison; the other places
 * needs by how long they hold the gate and then betters the plan one move at a time. Neither is proven best.
 */
import {
  type BuyItem,
  type BuyingInput,
  isMust,
  type OrderWeeks,
  type PlanFigures,
  weeksToConsider,
  weighPlan,
} from './buying-plan.ts';

/** Every week the needs in order of priority (then as listed), stopping at the first that would break the floor. */
export function buyAsMoneyComes(input: BuyingInput): OrderWeeks {
  const weeks = new Map<string, number>();
  const order = [...input.items].sort((a, b) => b.priority - a.priority);
  for (let week = 0; week <= input.lastWeek; week += 1) {
    for (const item of order) {
      if (weeks.has(item.id) || (item.firstWeek ?? 0) > week) continue;
      weeks.set(item.id, week);
      if (cashAt(input, weeks, week) < input.floorMinor) {
        weeks.delete(item.id);
        break;
      }
    }
  }
  return weeks;
}

function cashAt(input: BuyingInput, weeks: OrderWeeks, week: number): number {
  return weighPlan(input, weeks).cashMinor[week] ?? 0;
}

/** Whether plan `a` is better than `b`: no shortfall, more nice-to-haves, less spent, sooner. */
function isBetter(a: PlanFigures, b: PlanFigures): boolean {
  const steps = [
    a.shortMinor - b.shortMinor,
    b.niceValue - a.niceValue,
    a.spendMinor - b.spendMinor,
    a.weightedWeeks - b.weightedWeeks,
  ];
  return (steps.find((step) => step !== 0) ?? 0) < 0;
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
  const weeks = new Map<string, number>();
  for (const item of input.items.filter(isMust)) {
    const last = weeksForGate(item, candidates, gateWeek).at(-1);
    if (last === undefined) return null;
    weeks.set(item.id, last);
  }
  let best = weighPlan(input, weeks);
  const tryWeeks = (change: ReadonlyMap<string, number | undefined>): boolean => {
    const before = new Map([...change.keys()].map((id) => [id, weeks.get(id)]));
    put(weeks, change);
    const figures = weighPlan(input, weeks);
    if (isBetter(figures, best)) {
      best = figures;
      return true;
    }
    put(weeks, before);
    return false;
  };
  for (let round = 0, moved = true; moved && round < 50; round += 1) {
    moved = false;
    for (const item of input.items) {
      const allowed = weeksForGate(item, candidates, gateWeek);
      for (const week of allowed) if (tryWeeks(new Map([[item.id, week]]))) moved = true;
      if (!isMust(item) && best.shortMinor > 0 && tryWeeks(new Map([[item.id, undefined]]))) moved = true;
    }
    // Two of a vendor's needs at once: what reaches a threshold only together.
    for (const item of input.items) {
      for (const other of input.items) {
        if (other.vendor !== item.vendor || other.id <= item.id) continue;
        const allowed = weeksForGate(other, candidates, gateWeek);
        for (const week of weeksForGate(item, candidates, gateWeek)) {
          if (!allowed.includes(week)) continue;
          if (
            tryWeeks(
              new Map([
                [item.id, week],
                [other.id, week],
              ]),
            )
          )
            moved = true;
        }
      }
    }
  }
  return best.shortMinor === 0 ? weeks : null;
}

function put(weeks: Map<string, number>, change: ReadonlyMap<string, number | undefined>): void {
  for (const [id, week] of change) {
    if (week === undefined) weeks.delete(id);
    else weeks.set(id, week);
  }
}
