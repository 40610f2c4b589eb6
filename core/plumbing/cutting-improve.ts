/** A good way to cut, quickly: best fit, longest first; then parts of it taken apart and put together again. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import {
  type Bin,
  type CuttingProblem,
  type CuttingSolution,
  compareCost,
  costOf,
  stepsFor,
  usedOf,
} from './cutting-problem.ts';

/** The same problem gives the same plan on every machine. */
const seed = 1978;

/** The bin with the pieces in it moved to the shortest length that holds them, and with its length set. */
function shrink(problem: CuttingProblem, bin: Bin, freeStock: ReadonlySet<number>): Bin {
  const { stock, supply } = problem;
  const used = usedOf(problem, bin.pieces);
  if (bin.from === 'stock') {
    const shorter = stock.findIndex((length, at) => freeStock.has(at) && length >= used && length < bin.lengthMm);
    return shorter < 0 ? bin : { ...bin, stockAt: shorter, lengthMm: stock[shorter] ?? bin.lengthMm };
  }
  if (supply.kind === 'by-step') return { ...bin, lengthMm: stepsFor(supply, used) };
  if (supply.kind === 'none') return bin;
  const shorter = [...supply.lengthsMm].sort((a, b) => a - b).find((length) => length >= used);
  return { ...bin, lengthMm: shorter ?? bin.lengthMm };
}

/**
 * Puts pieces into lengths that are cut already, else into new ones.
 * @param order which piece first.
 * @param pick which of so many choices, the tightest first: always 0 for best fit.
 */
function fill(
  problem: CuttingProblem,
  kept: readonly Bin[],
  order: readonly number[],
  pick: (choices: number) => number,
): CuttingSolution {
  const { pieces, stock, supply } = problem;
  const bins = kept.map((bin) => ({ ...bin, pieces: [...bin.pieces] }));
  const unplaced: number[] = [];
  const roll = supply.kind === 'by-step';
  const longestSold = supply.kind === 'lengths' ? Math.max(0, ...supply.lengthsMm) : 0;
  for (const at of order) {
    const need = pieces[at] ?? 0;
    const fitting = bins
      .filter((bin) => !(roll && bin.from === 'bought'))
      .map((bin) => ({ bin, left: bin.lengthMm - usedOf(problem, [...bin.pieces, at]) }))
      .filter(({ left }) => left >= 0)
      .sort((one, other) => one.left - other.left);
    const open = fitting[pick(fitting.length)]?.bin;
    if (open !== undefined) {
      open.pieces.push(at);
      continue;
    }
    const taken = new Set(bins.map(({ stockAt }) => stockAt));
    const free = stock
      .map((length, which) => ({ length, which }))
      .filter(({ which, length }) => !taken.has(which) && length >= need);
    const fresh = free[pick(free.length)];
    if (fresh !== undefined) {
      bins.push({ from: 'stock', stockAt: fresh.which, lengthMm: fresh.length, pieces: [at] });
      continue;
    }
    const onRoll = bins.find(({ from }) => roll && from === 'bought');
    if (onRoll !== undefined) onRoll.pieces.push(at);
    else if (roll) bins.push({ from: 'bought', stockAt: -1, lengthMm: need, pieces: [at] });
    // As long as is sold, so that more goes in; it is shortened afterwards.
    else if (longestSold >= need) bins.push({ from: 'bought', stockAt: -1, lengthMm: longestSold, pieces: [at] });
    else unplaced.push(at);
  }
  const used = bins.filter(({ pieces: cut }) => cut.length > 0);
  const freeStock = new Set(stock.keys());
  for (const { stockAt } of used) freeStock.delete(stockAt);
  const tight = used.map((bin) => {
    const shrunk = shrink(problem, bin, freeStock);
    freeStock.delete(shrunk.stockAt);
    if (bin.stockAt >= 0 && shrunk.stockAt !== bin.stockAt) freeStock.add(bin.stockAt);
    return shrunk;
  });
  return { bins: tight, unplaced };
}

/** More than this many sums aren't worth trying for one length. */
const mostSums = 5_000_000;

/** Of the pieces offered, those that fill a weight best; none where that is too much work. */
function bestSubset(weights: readonly number[], offered: readonly number[], capacity: number): readonly number[] {
  if (capacity * offered.length > mostSums) return [];
  // By sum, the piece that first reached it; 0 is reached by none.
  const reachedBy = new Int32Array(capacity + 1).fill(-1);
  for (const [which, at] of offered.entries()) {
    const weight = weights[at] ?? 0;
    for (let total = capacity; total >= weight; total -= 1) {
      const before = total - weight;
      if (reachedBy[total] === -1 && (before === 0 || (reachedBy[before] ?? -1) >= 0)) reachedBy[total] = which;
    }
  }
  let total = reachedBy.findLastIndex((which) => which >= 0);
  const chosen: number[] = [];
  while (total > 0) {
    const at = offered[reachedBy[total] ?? -1] ?? -1;
    chosen.push(at);
    total -= weights[at] ?? total;
  }
  return chosen;
}

/** One length after the other filled as full as can be: those at hand, then those sold, each with the longest piece. */
function fullestCuts(problem: CuttingProblem): CuttingSolution {
  const { pieces, stock, supply, kerfMm } = problem;
  const weights = pieces.map((length) => length + kerfMm);
  let left = [...pieces.keys()];
  const bins: Bin[] = [];
  const take = (bin: Omit<Bin, 'pieces'>, chosen: readonly number[]): void => {
    if (chosen.length === 0) return;
    bins.push({ ...bin, pieces: chosen });
    const gone = new Set(chosen);
    left = left.filter((at) => !gone.has(at));
  };
  for (const [stockAt, lengthMm] of stock.entries()) {
    take({ from: 'stock', stockAt, lengthMm }, bestSubset(weights, left, lengthMm + kerfMm));
  }
  const longest = supply.kind === 'lengths' ? Math.max(0, ...supply.lengthsMm) : 0;
  for (const first of [...left]) {
    if (!left.includes(first) || (pieces[first] ?? 0) > longest) continue;
    const others = left.filter((at) => at !== first);
    const rest = bestSubset(weights, others, longest + kerfMm - (weights[first] ?? 0));
    take({ from: 'bought', stockAt: -1, lengthMm: longest }, [first, ...rest]);
  }
  return fill(problem, bins, left, () => 0);
}

/** The better of best fit, longest piece first, and of filling each length as full as can be. */
export function firstCuts(problem: CuttingProblem): CuttingSolution {
  const bestFit = fill(problem, [], [...problem.pieces.keys()], () => 0);
  const fullest = fullestCuts(problem);
  return compareCost(costOf(fullest), costOf(bestFit)) < 0 ? fullest : bestFit;
}

/**
 * Takes some lengths apart and fills them again, so many times, and keeps what isn't worse.
 * @param rounds 0 or more.
 */
export function improveCuts(problem: CuttingProblem, start: CuttingSolution, rounds: number): CuttingSolution {
  const random = xoroshiro128plus(seed);
  const below = (limit: number): number => (limit <= 1 ? 0 : uniformInt(random, 0, limit - 1));
  let best = start;
  let now = start;
  for (let round = 0; round < rounds; round += 1) {
    const keepEvery = 2 + below(3);
    const kept = now.bins.filter(() => below(keepEvery) > 0);
    const held = new Set(kept.flatMap(({ pieces }) => pieces));
    const out = [...problem.pieces.keys()].filter((at) => !held.has(at));
    // Mostly longest first, now and then in any order.
    const order =
      below(3) === 0
        ? out
            .map((at) => ({ at, key: below(1_000_000) }))
            .sort((a, b) => a.key - b.key)
            .map(({ at }) => at)
        : out;
    const next = fill(problem, kept, order, (choices) => (below(4) === 0 ? below(choices) : 0));
    const change = compareCost(costOf(next), costOf(now));
    if (change <= 0) now = next;
    if (compareCost(costOf(now), costOf(best)) < 0) best = now;
  }
  return best;
}
