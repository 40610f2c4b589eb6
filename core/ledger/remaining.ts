/**
 * The rule for E, the remaining estimate: it follows the units that are neither in hand nor on the way. When they
 * become fewer E falls in proportion, so it reaches 0 with them; when they become more it rises by the estimate, or by
 * what refused units cost, or is set anew when the estimate itself changed.
 */
import { uncovered } from './coverage.ts';
import type { PartState } from './part-state.ts';
import { atEstimate, shareOf } from './unit-costs.ts';

export type RemainingRule =
  | { readonly by: 'estimate' }
  /** Refused units must be bought again at what they cost. */
  | { readonly by: 'cost'; readonly costMinor: number; readonly quantityMilli: number }
  | { readonly by: 'new estimate' };

/**
 * Change of E in minor units.
 * @param before the state before the entry; its estimate values newly uncovered units.
 * @param after the state with the entry's other postings applied.
 */
export function remainingChange(before: PartState, after: PartState, rule: RemainingRule): number {
  const was = uncovered(before);
  const is = uncovered(after);
  if (rule.by === 'new estimate') return atEstimate(is, after.estimateEachE4) - before.remainingMinor;
  if (is < was) return -shareOf(before.remainingMinor, was - is, was);
  if (is === was) return 0;
  if (rule.by === 'cost') return shareOf(rule.costMinor, is - was, rule.quantityMilli);
  return atEstimate(is - was, before.estimateEachE4);
}
