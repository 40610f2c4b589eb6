/**
 * Distributions as plain data, so that they can be kept, sent to a worker and shown. One draw takes one number from 0 to
 * 1 (the inverse of the distribution), which keeps every element's stream apart.
 */
import { Refusal } from '../refusal.ts';
import { betaQuantile, betaShare, normalQuantile, normalShare, studentQuantile, studentShare } from './probability.ts';
import { pertShapes, requireThreePoint, type ThreePoint } from './three-point.ts';

export type Distribution =
  | { readonly kind: 'constant'; readonly value: number }
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  | ({ readonly kind: 'triangular' } & ThreePoint)
  /** Beta over low to high with its peak at likely. */
  | ({ readonly kind: 'pert' } & ThreePoint)
  /** `deviation` is that of the natural logarithms. */
  | { readonly kind: 'lognormal'; readonly median: number; readonly deviation: number }
  /** The logarithm follows Student's distribution: what few observations allow to say. */
  | { readonly kind: 'log-student'; readonly centre: number; readonly scale: number; readonly degrees: number }
  /** Values seen, sorted upward; each counts as much as its step of `share`, which ends at 1 unless a tail follows. */
  | {
      readonly kind: 'seen';
      readonly values: readonly number[];
      readonly shares: readonly number[];
      readonly tail: Distribution | null;
    }
  /** What is left after waiting: `of`, known to be more than `waited`, less `waited`. */
  | { readonly kind: 'remaining'; readonly of: Distribution; readonly waited: number };

/**
 * Hands a usable distribution back.
 * @throws Refusal `bad-input` naming the field, for figures that are not numbers or out of order, a deviation or scale
 * that is not above zero, or no values seen and no tail.
 */
export function requireDistribution(distribution: Distribution, field: string): Distribution {
  const refuse = (accepted: string): never => {
    throw new Refusal('bad-input', `The ${field} can’t be used as a spread of values. Nothing was changed.`, {
      field,
      accepted,
    });
  };
  switch (distribution.kind) {
    case 'constant':
      if (!Number.isFinite(distribution.value)) refuse('a number');
      return distribution;
    case 'uniform': {
      const { low, high } = distribution;
      if (!(Number.isFinite(low) && Number.isFinite(high) && low <= high)) refuse('two numbers, the lower one first');
      return distribution;
    }
    case 'triangular':
    case 'pert':
      requireThreePoint(distribution, field);
      return distribution;
    case 'lognormal':
      if (!(distribution.median > 0 && distribution.deviation >= 0 && Number.isFinite(distribution.deviation))) {
        refuse('a median above 0 and a deviation of 0 or more');
      }
      return distribution;
    case 'log-student':
      if (!(Number.isFinite(distribution.centre) && distribution.scale > 0 && distribution.degrees > 0)) {
        refuse('a centre, and a scale and degrees above 0');
      }
      return distribution;
    case 'seen': {
      const { values, shares, tail } = distribution;
      if (values.length !== shares.length || (values.length === 0 && tail === null)) refuse('at least one value seen');
      if (!values.every((value, index) => value >= (values[index - 1] ?? value))) refuse('values sorted upward');
      if (tail !== null) requireDistribution(tail, field);
      return distribution;
    }
    case 'remaining':
      if (!Number.isFinite(distribution.waited)) refuse('a number of days waited');
      requireDistribution(distribution.of, field);
      return distribution;
  }
}

/** Chance that a value is at most `x`. */
export function shareUpTo(distribution: Distribution, x: number): number {
  switch (distribution.kind) {
    case 'constant':
      return x >= distribution.value ? 1 : 0;
    case 'uniform': {
      const { low, high } = distribution;
      if (x >= high) return 1;
      return x <= low ? 0 : (x - low) / (high - low);
    }
    case 'triangular': {
      const { low, likely, high } = distribution;
      if (x >= high) return 1;
      if (x <= low) return 0;
      if (x <= likely) return (x - low) ** 2 / ((high - low) * (likely - low));
      return 1 - (high - x) ** 2 / ((high - low) * (high - likely));
    }
    case 'pert': {
      const { low, high } = distribution;
      if (low === high) return x >= low ? 1 : 0;
      const { alpha, beta } = pertShapes(distribution);
      return betaShare((x - low) / (high - low), alpha, beta);
    }
    case 'lognormal':
      if (distribution.deviation === 0) return x >= distribution.median ? 1 : 0;
      return x <= 0 ? 0 : normalShare(Math.log(x / distribution.median) / distribution.deviation);
    case 'log-student':
      return x <= 0 ? 0 : studentShare((Math.log(x) - distribution.centre) / distribution.scale, distribution.degrees);
    case 'seen':
      return seenShare(distribution, x);
    case 'remaining': {
      const before = shareUpTo(distribution.of, distribution.waited);
      if (before >= 1) return x >= 0 ? 1 : 0;
      return Math.max(0, (shareUpTo(distribution.of, distribution.waited + x) - before) / (1 - before));
    }
  }
}

/**
 * The value that the share `p` (0 to 1) lies at or below. Never infinite: for a distribution without an upper end, `p` is
 * held just under 1.
 */
export function quantile(distribution: Distribution, p: number): number {
  switch (distribution.kind) {
    case 'constant':
      return distribution.value;
    case 'uniform':
      return distribution.low + (distribution.high - distribution.low) * p;
    case 'triangular': {
      const { low, likely, high } = distribution;
      const width = high - low;
      if (p * width < likely - low) return low + Math.sqrt(p * width * (likely - low));
      return high - Math.sqrt((1 - p) * width * (high - likely));
    }
    case 'pert': {
      const { low, high } = distribution;
      if (low === high) return low;
      const { alpha, beta } = pertShapes(distribution);
      return low + (high - low) * betaQuantile(p, alpha, beta);
    }
    case 'lognormal':
      return distribution.median * Math.exp(distribution.deviation * normalQuantile(short(p)));
    case 'log-student': {
      const { centre, scale, degrees } = distribution;
      return Math.exp(centre + scale * studentQuantile(short(p), degrees));
    }
    case 'seen':
      return seenQuantile(distribution, p);
    case 'remaining': {
      const before = shareUpTo(distribution.of, distribution.waited);
      if (before >= 1) return 0;
      return Math.max(0, quantile(distribution.of, before + p * (1 - before)) - distribution.waited);
    }
  }
}

/** A share just inside 0 to 1, so that no draw is infinite. */
function short(p: number): number {
  return Math.min(Math.max(p, 1e-12), 1 - 1e-12);
}

type Seen = Extract<Distribution, { kind: 'seen' }>;

function seenShare(seen: Seen, x: number): number {
  const last = seen.values.at(-1);
  const covered = seen.shares.at(-1) ?? 0;
  if (seen.tail !== null && (last === undefined || x > last)) {
    const before = last === undefined ? 0 : shareUpTo(seen.tail, last);
    const after = shareUpTo(seen.tail, x);
    return before >= 1 ? 1 : covered + ((1 - covered) * (after - before)) / (1 - before);
  }
  let share = 0;
  seen.values.forEach((value, index) => {
    if (value <= x) share = seen.shares[index] ?? share;
  });
  return share;
}

function seenQuantile(seen: Seen, p: number): number {
  // A share that is a hair over its step by rounding belongs to that step.
  const index = seen.shares.findIndex((share) => share >= p - 1e-12);
  if (index >= 0) return seen.values[index] ?? 0;
  const last = seen.values.at(-1) ?? 0;
  const covered = seen.shares.at(-1) ?? 0;
  if (seen.tail === null) return last;
  const before = shareUpTo(seen.tail, last);
  return before >= 1
    ? last
    : Math.max(last, quantile(seen.tail, before + ((p - covered) / (1 - covered)) * (1 - before)));
}

/** A list of values, each counting the same; must not be empty. */
export function seenValues(values: readonly number[]): Distribution {
  const sorted = [...values].sort((a, b) => a - b);
  return {
    kind: 'seen',
    values: sorted,
    shares: sorted.map((_, index) => (index + 1) / sorted.length),
    tail: null,
  };
}

/**
 * Mean and variance by closed form; null where none is used here (seen values with a tail, remaining waits, Student).
 */
export function moments(distribution: Distribution): { mean: number; variance: number } | null {
  switch (distribution.kind) {
    case 'constant':
      return { mean: distribution.value, variance: 0 };
    case 'uniform': {
      const { low, high } = distribution;
      return { mean: (low + high) / 2, variance: (high - low) ** 2 / 12 };
    }
    case 'triangular': {
      const { low: a, likely: m, high: b } = requireThreePoint(distribution, 'three-point guess');
      return { mean: (a + m + b) / 3, variance: (a * a + m * m + b * b - a * m - a * b - m * b) / 18 };
    }
    case 'pert': {
      const { low, likely, high } = requireThreePoint(distribution, 'three-point guess');
      const mean = (low + 4 * likely + high) / 6;
      return { mean, variance: ((mean - low) * (high - mean)) / 7 };
    }
    case 'lognormal': {
      const square = distribution.deviation ** 2;
      const mean = distribution.median * Math.exp(square / 2);
      return { mean, variance: mean * mean * Math.expm1(square) };
    }
    default:
      return null;
  }
}
