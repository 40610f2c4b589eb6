/** The cuts of all lines, one plan for each kind of hose. */
import { trimMm } from './bill.ts';
import { type CutEffort, type CutPlan, planCuts, type StockLength, type Supply } from './cutting.ts';
import { metreStepMilli } from './needs.ts';

export interface HoseCut {
  /** As `Hose.label`. */
  readonly hose: string;
  readonly line: string;
  readonly cutMm: number;
  readonly count: number;
}

export interface HoseStock extends StockLength {
  readonly hose: string;
}

export interface CutListOptions {
  /** How hose is bought; without it by the metre, in tenths. */
  readonly supply?: Supply;
  readonly kerfMm?: number;
  readonly keepFromMm?: number;
  readonly effort?: CutEffort;
}

export interface HosePlan extends CutPlan {
  readonly hose: string;
}

/** What a cut takes from a length: itself, and hose to spare for cutting an end square once more. */
export const takenMm = (cutMm: number): number => Math.ceil(cutMm) + trimMm;

/** Plans each kind of hose by itself, in the order in which the lines name them. */
export function cutListOf(
  cuts: readonly HoseCut[],
  stock: readonly HoseStock[],
  options: CutListOptions = {},
): readonly HosePlan[] {
  const { supply = { kind: 'by-step', stepMm: metreStepMilli }, ...more } = options;
  return [...new Set(cuts.map(({ hose }) => hose))].map((hose) => ({
    hose,
    ...planCuts({
      pieces: cuts
        .filter((cut) => cut.hose === hose)
        .map(({ line, cutMm, count }) => ({ id: line, lengthMm: takenMm(cutMm), count })),
      stock: stock.filter((length) => length.hose === hose),
      supply,
      ...more,
    }),
  }));
}
