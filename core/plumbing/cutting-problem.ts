/** One-dimensional cutting: which piece is cut from which length. Whole millimetres. */

/** Hose sold by the metre comes as one length, in full steps; hose sold in lengths comes in those alone. */
export type Supply =
  | { readonly kind: 'by-step'; readonly stepMm: number }
  | { readonly kind: 'lengths'; readonly lengthsMm: readonly number[] }
  | { readonly kind: 'none' };

export interface CuttingProblem {
  /** Longest first. */
  readonly pieces: readonly number[];
  /** Lengths at hand, one entry each, shortest first. */
  readonly stock: readonly number[];
  readonly supply: Supply;
  /** What each cut takes away; the last piece of a length that it ends needs none. */
  readonly kerfMm: number;
}

/** One length and the pieces cut from it, as indices into the problem's lists. */
export interface Bin {
  readonly from: 'stock' | 'bought';
  /** Index into `stock`; -1 for what is bought. */
  readonly stockAt: number;
  readonly lengthMm: number;
  readonly pieces: readonly number[];
}

export interface CuttingSolution {
  readonly bins: readonly Bin[];
  /** Pieces that no length at hand or sold is long enough for. */
  readonly unplaced: readonly number[];
}

/** What a solution costs, the first figure first: pieces left over, mm bought, mm of stock opened, lengths cut into. */
export type Cost = readonly [number, number, number, number];

const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);

/** The length that pieces take out of one length, with the cuts between them. */
export function usedOf({ pieces, kerfMm }: CuttingProblem, chosen: readonly number[]): number {
  return chosen.length === 0 ? 0 : sum(chosen.map((at) => pieces[at] ?? 0)) + kerfMm * (chosen.length - 1);
}

export function costOf({ bins, unplaced }: CuttingSolution): Cost {
  const used = bins.filter(({ pieces }) => pieces.length > 0);
  const of = (from: Bin['from']): number =>
    sum(used.filter((bin) => bin.from === from).map(({ lengthMm }) => lengthMm));
  return [unplaced.length, of('bought'), of('stock'), used.length];
}

/** Negative where the first is better. */
export function compareCost(one: Cost, other: Cost): number {
  for (const [at, value] of one.entries()) {
    const difference = value - (other[at] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** The length to buy by the metre for so many millimetres. */
export function stepsFor(supply: Supply, usedMm: number): number {
  return supply.kind === 'by-step' && usedMm > 0 ? Math.ceil(usedMm / supply.stepMm) * supply.stepMm : usedMm;
}

const greatestCommonDivisor = (a: number, b: number): number => (b === 0 ? a : greatestCommonDivisor(b, a % b));

/**
 * Least that must be bought, in mm, to carry a weight: pieces with a cut behind each. No plan buys less.
 * @param weight 0 or more; what the lengths at hand can't carry.
 */
export function leastBought({ supply, kerfMm }: CuttingProblem, weight: number): number {
  if (weight <= 0 || supply.kind === 'none') return 0;
  if (supply.kind === 'by-step') return stepsFor(supply, weight - kerfMm);
  const least = Math.min(...supply.lengthsMm);
  const unit = supply.lengthsMm.reduce(greatestCommonDivisor, 0);
  // A length carries itself and one cut more; the share of that is largest in the shortest length.
  return Math.ceil(Math.max(least, weight * (least / (least + kerfMm)) - 1e-6) / unit) * unit;
}

/** Least that any plan for the whole problem buys, in mm, where every piece must be cut. */
export function boughtAtLeast(problem: CuttingProblem): number {
  const { pieces, stock, kerfMm } = problem;
  const shortest = pieces.at(-1) ?? 0;
  const usable = stock.filter((length) => length >= shortest);
  return leastBought(problem, sum(pieces) + kerfMm * pieces.length - sum(usable) - kerfMm * usable.length);
}
