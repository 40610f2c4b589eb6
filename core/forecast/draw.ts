/**
 * Fast draws. A distribution whose quantile takes a search is laid out once as a table whose cells are fine where the
 * quantile bends, so that a draw costs a few steps and is within a thousandth of
 * the range (or of the value) of the exact one.
 */
import { type Distribution, shareUpTo } from './distribution.ts';
import { normalQuantile, normalShare, studentDensity, studentShare } from './probability.ts';
import { pertShapes } from './three-point.ts';

export type Draw = (u: number) => number;

/** Turns the shares in `values[from]` up to but not including `values[to]` into values, none below zero. */
export type ColumnDraw = (values: Float64Array, from: number, to: number) => void;

/** The same draws, many at a time: a loop of its own for the kind that jobs have, which a call each would slow. */
export function columnDrawOf(distribution: Distribution): ColumnDraw {
  if (distribution.kind === 'pert' && distribution.low < distribution.high) {
    const { low, high } = distribution;
    const { alpha, beta } = pertShapes(distribution);
    const { searched, table } = betaTables(alpha, beta);
    const width = high - low;
    return (values, from, to) => {
      for (let at = from; at < to; at += 1) {
        const u = values[at] as number;
        const place = u * betaCells;
        const cell = Math.floor(place);
        const left = table[cell] as number;
        const unit =
          cell < betaEnds || cell >= betaCells - betaEnds
            ? searched(u)
            : left + ((table[cell + 1] as number) - left) * (place - cell);
        values[at] = Math.max(0, low + width * unit);
      }
    };
  }
  const draw = drawOf(distribution);
  return (values, from, to) => {
    for (let at = from; at < to; at += 1) values[at] = Math.max(0, draw(values[at] as number));
  };
}

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

/** Draws of a beta value. */
function betaDraw(alpha: number, beta: number): Draw {
  const { searched, table } = betaTables(alpha, beta);
  return (u) => {
    const place = u * betaCells;
    const cell = Math.floor(place);
    if (cell < betaEnds || cell >= betaCells - betaEnds) return searched(u);
    const from = table[cell] as number;
    return from + ((table[cell + 1] as number) - from) * (place - cell);
  };
}

/**
 * A beta value by its share: its share summed over even cells of its range, and a guide that says where to look; and
 * straight lines over even shares, which do as well between the ends and take no search.
 */
function betaTables(alpha: number, beta: number): { readonly searched: Draw; readonly table: Float64Array } {
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
  const table = Float64Array.from({ length: betaCells + 1 }, (_, cell) =>
    searched(Math.min(cell / betaCells, 1 - 1e-12)),
  );
  return { searched, table };
}

const studentReach = 6;
const studentCells = 32;
const studentTables = new Map<number, Float64Array>();
/** Degrees of freedom are a prior's and a count of arrivals, so that few tables serve everything. */
const mostTables = 64;

/** Student's value against the normal value of the same share is nearly a straight line, and so is well tabled. */
function studentTable(degrees: number): Float64Array {
  const known = studentTables.get(degrees);
  if (known !== undefined) return known;
  const half = studentReach * studentCells;
  const table = new Float64Array(2 * half + 1);
  let value = 0;
  let slope = normalDensity(0) / studentDensity(0, degrees);
  for (let cell = 1; cell <= half; cell += 1) {
    const z = -cell / studentCells;
    const share = normalShare(z);
    value -= slope / studentCells;
    // From the cell before and the slope there a few of Newton's steps do, on the logarithm because the tail is one.
    for (let round = 0; round < 12; round += 1) {
      const here = studentShare(value, degrees);
      const step = (Math.log(here / share) * here) / studentDensity(value, degrees);
      value -= step;
      if (Math.abs(step) < 1e-12 * Math.abs(value)) break;
    }
    slope = normalDensity(z) / studentDensity(value, degrees);
    table[half - cell] = value;
    table[half + cell] = -value;
  }
  if (studentTables.size >= mostTables) studentTables.clear();
  studentTables.set(degrees, table);
  return table;
}

const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) * 0.3989422804014327;

function studentDraw(degrees: number): Draw {
  const table = studentTable(degrees);
  const last = table.length - 1;
  return (u) => {
    const place = (normalQuantile(inside(u)) + studentReach) * studentCells;
    const cell = Math.min(Math.max(Math.floor(place), 0), last - 1);
    const from = table[cell] as number;
    return from + ((table[cell + 1] as number) - from) * (Math.min(place, last) - cell);
  };
}

const shareReach = 8;
const shareCells = 128;
let shareTable: Float64Array | null = null;

/**
 * Chance that a standard normal value is at most `z`, for draws: cubics between exact values and slopes, within 2e-10 of
 * the exact share.
 */
export function drawnShare(z: number): number {
  if (!(z > -shareReach && z < shareReach)) return normalShare(z);
  shareTable ??= Float64Array.from({ length: 2 * (2 * shareReach * shareCells + 1) }, (_, at) => {
    const x = (at >> 1) / shareCells - shareReach;
    return at % 2 === 0 ? normalShare(x) : normalDensity(x) / shareCells;
  });
  const place = (z + shareReach) * shareCells;
  const cell = Math.floor(place);
  const t = place - cell;
  const at = 2 * cell;
  const [left, leftSlope] = [shareTable[at] as number, shareTable[at + 1] as number];
  const [right, rightSlope] = [shareTable[at + 2] as number, shareTable[at + 3] as number];
  const rise = right - left;
  return left + t * (leftSlope + t * (3 * rise - 2 * leftSlope - rightSlope + t * (leftSlope + rightSlope - 2 * rise)));
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
