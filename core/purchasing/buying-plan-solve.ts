/** The buying plan: the earliest gate that the money allows, the least spent for it, and why each need stands where it does. */
import {
  type BuyingInput,
  isMust,
  type OrderWeeks,
  type PlanFigures,
  requireBuyingInput,
  weighPlan,
} from './buying-plan.ts';
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
}

/**
 * Plans the orders.
 * @throws Refusal `bad-input` when a need, vendor or figure can't be used (named).
 */
export function planBuying(input: BuyingInput, options: BuyingOptions): BuyingPlan | NoBuyingPlan {
  requireBuyingInput(input);
  const found = search(input, options.quick === true);
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

function search(input: BuyingInput, quick: boolean): { weeks: OrderWeeks; method: 'exact' | 'quick' } | null {
  if (input.items.every((item) => !isMust(item)) && input.items.length === 0)
    return { weeks: new Map(), method: 'exact' };
  let proven = !quick;
  for (const gate of gatesToTry(input)) {
    if (isOutOfReach(input, gate)) continue;
    const found = quickPlanForGate(input, gate);
    if (proven) {
      const answer = solveForGate(input, gate, found);
      if (answer.status === 'solved' && isSound(input, answer.weeks, gate)) {
        return { weeks: answer.weeks, method: 'exact' };
      }
      if (answer.status === 'none' && found === null) continue;
    }
    // From here on nothing is proven: an earlier gate, or a cheaper plan, may have been missed.
    proven = false;
    if (found !== null) return { weeks: found, method: 'quick' };
  }
  return null;
}

/** The solver reckons in floating point; whole money has the last word. */
function isSound(input: BuyingInput, weeks: OrderWeeks, gate: number): boolean {
  const figures = weighPlan(input, weeks);
  return figures.missing === 0 && figures.shortMinor === 0 && figures.gateWeek <= gate;
}
