/** Percentiles of a list by nearest rank. Source: Hyndman & Fan 1996, type 1. */
import { Refusal } from '../refusal.ts';

/**
 * The value at rank ceil(n p) of a list sorted upward; p = 0 gives the smallest.
 * @throws Refusal `bad-input` for an empty list or a share outside 0 to 1.
 */
export function nearestRank(sorted: ArrayLike<number>, p: number): number {
  if (sorted.length === 0 || !(p >= 0 && p <= 1)) {
    throw new Refusal('bad-input', 'A percentile needs values and a share from 0 to 1. Nothing was changed.', {
      field: 'share',
      accepted: 'a share from 0 to 1 and at least one value',
    });
  }
  return sorted[rank(sorted.length, p)] as number;
}

/** Place from 0 in the sorted list. A product such as 10 × 0.7 may come out a hair above 7; it still means rank 7. */
function rank(length: number, p: number): number {
  return Math.min(length - 1, Math.max(0, Math.ceil(length * p - 1e-9) - 1));
}

/** Values between which the true percentile lies with 95 % confidence, by order statistics (normal approximation). */
export function percentileBand(sorted: ArrayLike<number>, p: number): readonly [number, number] {
  const half = 1.959964 * Math.sqrt(sorted.length * p * (1 - p));
  const at = (place: number): number => sorted[Math.min(sorted.length - 1, Math.max(0, place))] as number;
  return [at(Math.floor(sorted.length * p - half) - 1), at(Math.ceil(sorted.length * p + half))];
}
