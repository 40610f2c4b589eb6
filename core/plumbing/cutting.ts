/** Cut list: pieces out of the lengths at hand and as little as possible bought, with the waste stated. */
import { firstCuts, improveCuts } from './cutting-improve.ts';
import { boughtAtLeast, type CuttingProblem, type Supply, usedOf } from './cutting-problem.ts';

export type { Supply } from './cutting-problem.ts';

import { searchCuts } from './cutting-search.ts';

export interface PieceWanted {
  readonly id: string;
  /** Whole millimetres, with whatever is to spare at its ends. */
  readonly lengthMm: number;
  readonly count: number;
}

export interface StockLength {
  readonly id: string;
  readonly lengthMm: number;
  readonly count: number;
}

export interface CuttingWanted {
  readonly pieces: readonly PieceWanted[];
  readonly stock: readonly StockLength[];
  readonly supply: Supply;
  /** Taken away by each cut. */
  readonly kerfMm?: number;
  /** A rest at least this long goes back on the shelf; a shorter one is waste. */
  readonly keepFromMm?: number;
  /** How long to look for a better plan; a long time when absent. */
  readonly effort?: CutEffort;
}

/** A smaller effort answers sooner and proves less often that nothing is better. */
export interface CutEffort {
  /** Ways tried in the search through all of them. */
  readonly searchSteps: number;
  /** Rounds of improving the first plan. */
  readonly improveRounds: number;
}

export interface CutLength {
  readonly from: 'stock' | 'bought';
  /** Of the stock length; undefined for what is bought. */
  readonly id?: string;
  readonly lengthMm: number;
  readonly cuts: readonly { readonly id: string; readonly lengthMm: number }[];
  readonly usedMm: number;
  readonly restMm: number;
  readonly rest: 'none' | 'keep' | 'waste';
}

export interface CutPlan {
  readonly lengths: readonly CutLength[];
  /** Pieces longer than anything at hand or sold. */
  readonly unplaced: readonly { readonly id: string; readonly lengthMm: number }[];
  readonly boughtMm: number;
  /** No plan buys less than this; where `boughtMm` equals it, nothing is bought in vain. */
  readonly boughtAtLeastMm: number;
  readonly stockUsedMm: number;
  /** Rests too short to keep, with what the cuts took away. */
  readonly wasteMm: number;
  readonly keptMm: number;
  /** Waste as a share of all lengths cut into. */
  readonly wasteShare: number;
  /** Whether no other plan buys less, or buys as much and opens less stock. */
  readonly proven: boolean;
}

const defaultKeepFromMm = 300;
const fullEffort: CutEffort = { searchSteps: 100_000, improveRounds: 400 };
const mostPieces = 1000;

/**
 * Plans the cuts: least bought, then least stock opened, then fewest lengths. All ways are tried where they are few
 * enough; else the best found stands, and `proven` is false.
 * @param wanted whole millimetres above 0; at most 1000 pieces.
 * @throws RangeError for lengths that aren't, which is a bug of the caller.
 */
export function planCuts(wanted: CuttingWanted): CutPlan {
  const { kerfMm = 0, keepFromMm = defaultKeepFromMm, supply, effort = fullEffort } = wanted;
  const { searchSteps, improveRounds } = effort;
  const pieces = wanted.pieces
    .flatMap(({ id, lengthMm, count }) => Array.from({ length: count }, () => ({ id, lengthMm })))
    .sort((one, other) => other.lengthMm - one.lengthMm);
  const stock = wanted.stock
    .flatMap(({ id, lengthMm, count }) => Array.from({ length: count }, () => ({ id, lengthMm })))
    .sort((one, other) => one.lengthMm - other.lengthMm);
  for (const { lengthMm } of [...pieces, ...stock]) {
    if (!Number.isSafeInteger(lengthMm) || lengthMm <= 0) throw new RangeError(`A length of ${lengthMm} mm.`);
  }
  if (pieces.length > mostPieces) throw new RangeError(`${pieces.length} pieces.`);
  const problem: CuttingProblem = {
    pieces: pieces.map(({ lengthMm }) => lengthMm),
    stock: stock.map(({ lengthMm }) => lengthMm),
    supply,
    kerfMm,
  };
  const quick = improveCuts(problem, firstCuts(problem), pieces.length < 3 ? 0 : improveRounds);
  const { solution, proven } = searchCuts(problem, quick, searchSteps);
  const lengths = solution.bins
    .filter((bin) => bin.pieces.length > 0)
    .map((bin): CutLength => {
      const usedMm = usedOf(problem, bin.pieces);
      const restMm = bin.lengthMm - usedMm;
      const id = stock[bin.stockAt]?.id;
      return {
        from: bin.from,
        ...(id === undefined ? {} : { id }),
        lengthMm: bin.lengthMm,
        cuts: bin.pieces.map((at) => pieces[at]).filter((one) => one !== undefined),
        usedMm,
        restMm,
        rest: restMm === 0 ? 'none' : restMm >= keepFromMm ? 'keep' : 'waste',
      };
    });
  const total = (of: (length: CutLength) => number): number => lengths.reduce((sum, one) => sum + of(one), 0);
  const all = total(({ lengthMm }) => lengthMm);
  const wasteMm =
    total(({ rest, restMm }) => (rest === 'waste' ? restMm : 0)) +
    total(({ usedMm, cuts }) => usedMm - cuts.reduce((sum, { lengthMm }) => sum + lengthMm, 0));
  return {
    lengths,
    unplaced: solution.unplaced.map((at) => pieces[at]).filter((one) => one !== undefined),
    boughtMm: total(({ from, lengthMm }) => (from === 'bought' ? lengthMm : 0)),
    boughtAtLeastMm: solution.unplaced.length === 0 ? boughtAtLeast(problem) : 0,
    stockUsedMm: total(({ from, lengthMm }) => (from === 'stock' ? lengthMm : 0)),
    wasteMm,
    keptMm: total(({ rest, restMm }) => (rest === 'keep' ? restMm : 0)),
    wasteShare: all === 0 ? 0 : wasteMm / all,
    proven,
  };
}
