/**
 * Three-point guesses (lowest, most likely, highest) and what they say of a whole path.
 * Source: Malcolm, Roseboom, Clark & Fazar 1959 for mean and deviation; the beta shapes are the usual textbook ones.
 */
import { Refusal } from '../refusal.ts';
import { normalShare } from './probability.ts';

export interface ThreePoint {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * Hands a usable guess back.
 * @throws Refusal `bad-input` unless 0 <= low <= likely <= high, all finite.
 */
export function requireThreePoint(guess: ThreePoint, field: string): ThreePoint {
  const { low, likely, high } = guess;
  if (!(Number.isFinite(low) && Number.isFinite(high) && low >= 0 && low <= likely && likely <= high)) {
    throw new Refusal(
      'bad-input',
      `The ${field} ${low}, ${likely}, ${high} is not in the order lowest, most likely, highest. Nothing was changed.`,
      { field, accepted: 'three numbers from 0 up, none below the one before it' },
    );
  }
  return guess;
}

/** Classic mean and variance of a guess: (a + 4m + b) / 6 and ((b − a) / 6)². */
export function pertMoments(guess: ThreePoint): { mean: number; variance: number } {
  const { low, likely, high } = requireThreePoint(guess, 'three-point guess');
  return { mean: (low + 4 * likely + high) / 6, variance: ((high - low) / 6) ** 2 };
}

/** Shapes of the beta distribution over low to high; both 1 or more, and adding up to 6. Undefined for low = high. */
export function pertShapes(guess: ThreePoint): { alpha: number; beta: number } {
  const width = guess.high - guess.low;
  return { alpha: 1 + (4 * (guess.likely - guess.low)) / width, beta: 1 + (4 * (guess.high - guess.likely)) / width };
}

export interface PathOutlook {
  readonly mean: number;
  readonly variance: number;
  /** Deviations from the mean to the deadline; null when the path has no spread. */
  readonly z: number | null;
  /** Chance of keeping the deadline on this path alone. */
  readonly chance: number;
}

/**
 * The chance that jobs done one after another keep a deadline. Optimistic wherever paths merge: it looks at one path and
 * takes its jobs as independent. The simulated forecast does not have this fault.
 */
export function pathOutlook(path: readonly ThreePoint[], deadline: number): PathOutlook {
  let mean = 0;
  let variance = 0;
  for (const guess of path) {
    const moments = pertMoments(guess);
    mean += moments.mean;
    variance += moments.variance;
  }
  if (variance === 0) return { mean, variance, z: null, chance: mean <= deadline ? 1 : 0 };
  const z = (deadline - mean) / Math.sqrt(variance);
  return { mean, variance, z, chance: normalShare(z) };
}
