/** The buying plan: the earliest gate that the money allows, the least spent for it, and why each need stands where it does. */
import { type BuyingInput, type OrderWeeks, type PlanFigures, requireBuyingInput, weighPlan } from './buying-plan.ts';
import { solveForGate } from './buying-plan-model.ts';
import { buyAsMoneyComes, gatesToTry, isOutOfReach, quickPlanForGate } from './buying-plan-quick.ts';
import { type BuyLine, type BuyWords, explainLines, explainNone } from './buying-plan-words.ts';

export interface BuyingPlan {
  readonly status: 'plan';
  /** `exact`: gate, nice-to-haves and spending are proven best; `quick`: found by moves, perhaps not the best. */
  readonly method: 'exact' | 'quick';
  readonly weeks: OrderWeeks;
  readonly figures: PlanFigures;
  /** One for each need, in order of weeks; nice-to-haves that aren't bought come last. */
  readonly lines: readonly BuyLine[];
  /** The same list spent as money comes, by priority: null gate when it never buys all must-haves. */
  readonly asMoneyComes: { readonly gateWeek: number | null; readonly spendMinor: number; readonly weeks: OrderWeeks };
}

export interface NoBuyingPlan {
  readonly status: 'none';
  readonly reason: string;
  /** Money missing, as far as it can be said; null when the weeks are too few rather than the money. */
  readonly shortMinor: number | null;
}

export interface BuyingOptions extends BuyWords {
  /** Skip the solver. */
  readonly quick?: boolean;
  /** A plan made with less money or other prices: where it keeps the floor here too, the gate is never later than its. */
  readonly alsoTry?: OrderWeeks;
}

/**
 * Plans the orders.
 * @throws Refusal `bad-input` when a need, vendor or figure can't be used (named).
 */
export function planBuying(input: BuyingInput, options: BuyingOptions): BuyingPlan | NoBuyingPlan {
  requireBuyingInput(input);
  const found = notLater(input, search(input, options.quick === true), options.alsoTry);
  if (found === null) return { status: 'none', ...explainNone(input, options) };
  const figures = weighPlan(input, found.weeks);
  const habit = buyAsMoneyComes(input);
  const habitFigures = weighPlan(input, habit);
  return {
    status: 'plan',
    method: found.method,
    weeks: found.weeks,
    figures,
    lines: explainLines(input, found.weeks, figures, options),
    asMoneyComes: {
      gateWeek: habitFigures.missing === 0 ? habitFigures.gateWeek : null,
      spendMinor: habitFigures.spendMinor,
      weeks: habit,
    },
  };
}

interface Found {
  readonly weeks: OrderWeeks;
  readonly method: 'exact' | 'quick';
}

/** The plan found, or the other one where that reaches the gate sooner. */
function notLater(input: BuyingInput, found: Found | null, other: OrderWeeks | undefined): Found | null {
  if (other === undefined || found?.method === 'exact') return found;
  const needs = new Map(input.items.map((item) => [item.id, item.firstWeek ?? 0]));
  const weeks = new Map(
    [...other].filter(([id, week]) => week <= input.lastWeek && week >= (needs.get(id) ?? Number.POSITIVE_INFINITY)),
  );
  if (!isSound(input, weeks, Number.POSITIVE_INFINITY)) return found;
  const [then, now] = [weighPlan(input, weeks), found === null ? null : weighPlan(input, found.weeks)];
  const sooner = now === null || then.gateWeek < now.gateWeek;
  return sooner ? { weeks, method: 'quick' } : found;
}

/**
 * The earliest gate by halving the list of gates: what keeps a gate keeps every later one. Each is tried by the quick way,
 * and only where that finds nothing, by the solver; the plan of the earliest is then bettered by the solver.
 */
function search(input: BuyingInput, quick: boolean): Found | null {
  if (input.items.length === 0) return { weeks: new Map(), method: 'exact' };
  const gates = gatesToTry(input);
  let proven = !quick;
  let best: { readonly gate: number; readonly weeks: OrderWeeks } | null = null;
  let low = 0;
  let high = gates.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const gate = gates[middle] as number;
    const weeks = tryGate(gate);
    if (weeks === null) {
      low = middle + 1;
    } else {
      best = { gate, weeks };
      high = middle - 1;
    }
  }
  if (best === null) return null;
  if (proven) {
    const answer = solveForGate(input, best.gate, best.weeks);
    if (answer.status === 'solved' && isSound(input, answer.weeks, best.gate)) {
      return { weeks: answer.weeks, method: 'exact' };
    }
    // The solver gave up, but a plan that buys all at the least it can cost needs no solver to be proven.
    if (costsTheLeast(input, best.weeks)) return { weeks: best.weeks, method: 'exact' };
  }
  return { weeks: best.weeks, method: 'quick' };

  function tryGate(gate: number): OrderWeeks | null {
    if (isOutOfReach(input, gate)) return null;
    const found = quickPlanForGate(input, gate);
    if (found !== null || !proven) return found;
    const answer = solveForGate(input, gate, null);
    if (answer.status === 'solved' && isSound(input, answer.weeks, gate)) return answer.weeks;
    // From here on nothing is proven: an earlier gate may have been missed.
    if (answer.status !== 'none') proven = false;
    return null;
  }
}

/** Whether everything is bought, at the lowest prices and with one order a vendor at most that isn't shipped free. */
function costsTheLeast(input: BuyingInput, weeks: OrderWeeks): boolean {
  if (input.items.some(({ id }) => !weeks.has(id))) return false;
  const least = input.vendors.reduce((sum, vendor) => {
    const own = input.items.filter((item) => item.vendor === vendor.id);
    const most = own.reduce((total, { priceMinor }) => total + priceMinor, 0);
    const isFree = own.length === 0 || (vendor.freeFromMinor !== null && most >= vendor.freeFromMinor);
    const lowest = own.map(({ id, priceMinor, deal }) =>
      Math.min(
        priceMinor,
        deal?.priceMinor ?? priceMinor,
        ...(input.priceBreaks ?? []).flatMap((each) => each.priceMinor[id] ?? []),
      ),
    );
    return sum + lowest.reduce((total, price) => total + price, 0) + (isFree ? 0 : vendor.shippingMinor);
  }, 0);
  return weighPlan(input, weeks).spendMinor === least;
}

/** The solver reckons in floating point; whole money has the last word. */
function isSound(input: BuyingInput, weeks: OrderWeeks, gate: number): boolean {
  const figures = weighPlan(input, weeks);
  return figures.missing === 0 && figures.shortMinor === 0 && figures.gateWeek <= gate;
}
