/**
 * Fast draws. A distribution whose quantile takes a search is laid out once as a table whose cells are fine where the
 * quantile bends, so that a draw costs a few steps and is within a thousandth of
 * the range (or of the value) of the exact one.
 */
import { type Distribution, shareUpTo } from './distribution.ts';
import { normalQuantile, normalShare, studentQuantile } from './probability.ts';
import { pertShapes } from './three-point.ts';

export type Draw = (u: number) => number;

/** A function from u (0 up to 1) to a value of the distribution. */
export function drawOf(distribution: Distribution): Draw {
  switch (distribution.kind) {
    case 'constant': {
      const { value } = distribution;
      return () => value;
    }
    case 'uniform': {
      const { low, high } = distribution;
      return (u) => low + (high - low) * u;
    }
    case 'triangular': {
      const { low, likely, high } = distribution;
      const width = high - low;
      const rise = width * (likely - low);
      const fall = width * (high - likely);
      return (u) => (u * width < likely - low ? low + Math.sqrt(u * rise) : high - Math.sqrt((1 - u) * fall));
    }
    case 'pert': {
      const { low, high } = distribution;
      if (low === high) return () => low;
      const { alpha, beta } = pertShapes(distribution);
      const unit = betaDraw(alpha, beta);
      return (u) => low + (high - low) * unit(u);
    }
    case 'lognormal': {
      const { median, deviation } = distribution;
      return (u) => median * Math.exp(deviation * normalQuantile(inside(u)));
    }
    case 'log-student': {
      const { centre, scale } = distribution;
      const standard = studentDraw(distribution.degrees);
      return (u) => Math.exp(centre + scale * standard(u));
    }
    case 'seen':
      return seenDraw(distribution);
    case 'remaining': {
      const { waited } = distribution;
      const before = shareUpTo(distribution.of, waited);
      if (before >= 1) return () => 0;
      const whole = drawOf(distribution.of);
      return (u) => Math.max(0, whole(before + u * (1 - before)) - waited);
    }
  }
}

/** A share just inside 0 to 1, so that no draw is infinite. */
function inside(u: number): number {
  return Math.min(Math.max(u, 1e-12), 1 - 1e-12);
}

const betaCells = 128;
/** Cells at either end in which the quantile bends too much for straight lines. */
const betaEnds = 4;

/** Draws of a beta value: its share summed over even cells of its range, and a guide that says where to look. */
function betaDraw(alpha: number, beta: number): Draw {
  const density = (x: number): number => x ** (alpha - 1) * (1 - x) ** (beta - 1);
  const shares = new Float64Array(betaCells + 1);
  const width = 1 / betaCells;
  for (let cell = 0; cell < betaCells; cell += 1) {
    const from = cell * width;
    // Simpson's rule; every shape here is 1 or more, so the density has no infinite end.
    const area = density(from) + 4 * density(from + width / 2) + density(from + width);
    shares[cell + 1] = (shares[cell] as number) + area;
  }
  const whole = shares[betaCells] as number;
  for (let cell = 1; cell <= betaCells; cell += 1) shares[cell] = (shares[cell] as number) / whole;
  const guide = new Uint16Array(betaCells + 1);
  for (let cell = 0, at = 0; at <= betaCells; at += 1) {
    while (cell < betaCells - 1 && (shares[cell + 1] as number) < at / betaCells) cell += 1;
    guide[at] = cell;
  }
  const firstShare = shares[1] as number;
  const lastShare = 1 - (shares[betaCells - 1] as number);
  const searched: Draw = (u) => {
    let cell = guide[Math.floor(u * betaCells)] as number;
    while (cell < betaCells - 1 && (shares[cell + 1] as number) < u) cell += 1;
    // In the outermost cells the share grows as a power, and a straight line would not do.
    if (cell === 0) return width * (u / firstShare) ** (1 / alpha);
    if (cell === betaCells - 1) return 1 - width * ((1 - u) / lastShare) ** (1 / beta);
    const from = shares[cell] as number;
    const step = (shares[cell + 1] as number) - from;
    return (cell + (step > 0 ? (u - from) / step : 0)) * width;
  };
  // In between, straight lines over even shares do as well and take no search.
  const table = Float64Array.from({ length: betaCells + 1 }, (_, cell) =>
    searched(Math.min(cell / betaCells, 1 - 1e-12)),
  );
  return (u) => {
    const place = u * betaCells;
    const cell = Math.floor(place);
    if (cell < betaEnds || cell >= betaCells - betaEnds) return searched(u);
    const from = table[cell] as number;
    return from + ((table[cell + 1] as number) - from) * (place - cell);
  };
}

const studentReach = 6;
const studentCells = 32;

/** Student's value against the normal value of the same share is nearly a straight line, and so is well tabled. */
function studentDraw(degrees: number): Draw {
  const last = 2 * studentReach * studentCells;
  const table = new Float64Array(last + 1);
  for (let cell = 0; cell <= last; cell += 1) {
    table[cell] = studentQuantile(normalShare(cell / studentCells - studentReach), degrees);
  }
  return (u) => {
    const place = (normalQuantile(inside(u)) + studentReach) * studentCells;
    const cell = Math.min(Math.max(Math.floor(place), 0), last - 1);
    const from = table[cell] as number;
    return from + ((table[cell + 1] as number) - from) * (Math.min(place, last) - cell);
  };
}

function seenDraw(seen: Extract<Distribution, { kind: 'seen' }>): Draw {
  const { values, shares } = seen;
  const last = values.at(-1) ?? 0;
  const covered = shares.at(-1) ?? 0;
  const before = seen.tail === null ? 1 : shareUpTo(seen.tail, last);
  const tail = seen.tail === null || before >= 1 ? null : drawOf(seen.tail);
  return (u) => {
    if (u > covered && tail !== null) {
      return Math.max(last, tail(before + ((u - covered) / (1 - covered)) * (1 - before)));
    }
    let from = 0;
    let to = values.length - 1;
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((shares[middle] as number) >= u) to = middle;
      else from = middle + 1;
    }
    return values[from] ?? last;
  };
}
