/** Branch and bound over all ways to cut: the best there is, or the best found until the steps run out. */
import {
  type Bin,
  type Cost,
  type CuttingProblem,
  type CuttingSolution,
  compareCost,
  costOf,
  leastBought,
  stepsFor,
  usedOf,
} from './cutting-problem.ts';

interface OpenBin {
  readonly from: Bin['from'];
  readonly stockAt: number;
  readonly lengthMm: number;
  readonly pieces: number[];
  /** Length left, where every piece is counted with a cut behind it and the length with one cut more. */
  free: number;
}

/** Where hose by the metre and what fits nowhere stand in the order of bins. */
const rollAt = 1_000_000;
const nowhereAt = rollAt + 1;

/**
 * Searches for a solution better than `start`.
 * @param start any solution; what is returned is at least as good.
 * @param steps how many placements to try before giving up.
 * @returns the solution, and whether it is proven that none is better.
 */
export function searchCuts(
  problem: CuttingProblem,
  start: CuttingSolution,
  steps: number,
): { readonly solution: CuttingSolution; readonly proven: boolean } {
  const { pieces, stock, supply, kerfMm } = problem;
  const sold = supply.kind === 'lengths' ? [...supply.lengthsMm].sort((a, b) => a - b) : [];
  const longestSold = sold.at(-1) ?? 0;
  const weights = pieces.map((length) => length + kerfMm);
  const weightFrom = weights.map((_, at) => weights.slice(at).reduce((total, one) => total + one, 0));
  const shortest = weights.at(-1) ?? 0;

  let best = start;
  let bestCost: Cost = costOf(start);
  let left = steps;
  const bins: OpenBin[] = [];
  const roll: number[] = [];
  const nowhere: number[] = [];
  const taken = new Array<boolean>(stock.length).fill(false);
  let rollWeight = 0;
  let boughtMm = 0;
  let openedMm = 0;

  const boughtNow = (extraWeight: number): number =>
    supply.kind === 'by-step'
      ? stepsFor(supply, Math.max(0, rollWeight + extraWeight - kerfMm))
      : boughtMm + leastBought(problem, extraWeight);

  /** No solution from here on costs less than this. */
  const bound = (next: number): Cost => {
    const weight = weightFrom[next] ?? 0;
    let open = 0;
    for (const { free } of bins) if (free >= shortest) open += free;
    let unopened = 0;
    let leastStock = Number.POSITIVE_INFINITY;
    let longest = longestSold;
    for (const [at, length] of stock.entries()) {
      if (taken[at] === true || length + kerfMm < shortest) continue;
      unopened += length + kerfMm;
      leastStock = Math.min(leastStock, length);
      longest = Math.max(longest, length);
    }
    const lacking = weight - open - unopened;
    const bought =
      supply.kind === 'none' || (supply.kind === 'lengths' && sold.length === 0) ? 0 : boughtNow(Math.max(0, lacking));
    // Where nothing more may be bought than the best buys, the rest must come from lengths not opened yet.
    const mayBuy =
      supply.kind === 'by-step'
        ? Math.max(0, bestCost[1] + kerfMm - rollWeight)
        : supply.kind === 'lengths' && sold.length > 0
          ? Math.max(0, bestCost[1] - boughtMm) * (1 + kerfMm / (sold[0] ?? 1))
          : 0;
    const canLeave = nowhereAllowed(next);
    const mustOpen = canLeave ? 0 : weight - open - mayBuy;
    const share = Number.isFinite(leastStock) ? leastStock / (leastStock + kerfMm) : 1;
    const opened = openedMm + (mustOpen > 1e-6 ? Math.ceil(mustOpen * share - 1e-6) : 0);
    // What open lengths can't carry takes new ones, at best the longest; a roll carries any amount.
    const spills = weight - open > 1e-6;
    const onRoll = supply.kind === 'by-step' && roll.length > 0;
    const more =
      canLeave || !spills || onRoll
        ? 0
        : supply.kind === 'by-step'
          ? 1
          : Math.ceil((weight - open) / (longest + kerfMm) - 1e-9);
    return [nowhere.length, canLeave ? boughtNow(0) : bought, opened, bins.length + (onRoll ? 1 : 0) + more];
  };

  /** Whether a piece from here on may fit nowhere, so that nothing has to be bought or opened for it. */
  const nowhereAllowed = (next: number): boolean =>
    supply.kind === 'none' || (supply.kind === 'lengths' && (pieces[next] ?? 0) > longestSold);

  const keep = (): void => {
    const rollLength = stepsFor(supply, usedOf(problem, roll));
    const found: CuttingSolution = {
      bins: [
        ...bins.map(({ from, stockAt, lengthMm, pieces: cut }) => ({ from, stockAt, lengthMm, pieces: [...cut] })),
        ...(roll.length === 0
          ? []
          : [{ from: 'bought' as const, stockAt: -1, lengthMm: rollLength, pieces: [...roll] }]),
      ],
      unplaced: [...nowhere],
    };
    const cost = costOf(found);
    if (compareCost(cost, bestCost) < 0) {
      best = found;
      bestCost = cost;
    }
  };

  const place = (next: number, after: number): void => {
    if (next === pieces.length) {
      keep();
      return;
    }
    if (left <= 0 || compareCost(bound(next), bestCost) >= 0) return;
    left -= 1;
    const weight = weights[next] ?? 0;
    const same = pieces[next + 1] === pieces[next];
    const go = (at: number): void => place(next + 1, same ? at : 0);

    const tried = new Set<string>();
    const order = bins
      .map((bin, at) => ({ bin, at }))
      .filter(({ bin, at }) => at >= after && bin.free >= weight)
      .sort((one, other) => one.bin.free - other.bin.free || one.at - other.at);
    for (const { bin, at } of order) {
      const kind = `${bin.from} ${bin.free}`;
      if (tried.has(kind)) continue;
      tried.add(kind);
      bin.pieces.push(next);
      bin.free -= weight;
      go(at);
      bin.free += weight;
      bin.pieces.pop();
    }
    if (after < rollAt) {
      let before = -1;
      for (const [at, length] of stock.entries()) {
        if (taken[at] === true || length === before || length + kerfMm < weight) continue;
        before = length;
        taken[at] = true;
        openedMm += length;
        bins.push({ from: 'stock', stockAt: at, lengthMm: length, pieces: [next], free: length + kerfMm - weight });
        go(bins.length - 1);
        bins.pop();
        openedMm -= length;
        taken[at] = false;
      }
      for (const length of sold) {
        if (length + kerfMm < weight) continue;
        boughtMm += length;
        bins.push({ from: 'bought', stockAt: -1, lengthMm: length, pieces: [next], free: length + kerfMm - weight });
        go(bins.length - 1);
        bins.pop();
        boughtMm -= length;
      }
    }
    if (supply.kind === 'by-step' && after <= rollAt) {
      roll.push(next);
      rollWeight += weight;
      go(rollAt);
      rollWeight -= weight;
      roll.pop();
    }
    if (nowhereAllowed(next)) {
      nowhere.push(next);
      go(nowhereAt);
      nowhere.pop();
    }
  };

  place(0, 0);
  return { solution: best, proven: left > 0 };
}
