import type { PartRow } from '../../../../core/contract/parts.ts';

/** Units that are here and off the engine, accepted: on the shelf or set aside. */
export const inHandMilli = ({ shelfMilli, allocatedMilli }: PartRow): number => shelfMilli + allocatedMilli;

/** Units on the engine, for trial or for good. */
export const onEngineMilli = ({ trialMilli, fittedMilli, snugMilli, verifiedMilli }: PartRow): number =>
  trialMilli + fittedMilli + snugMilli + verifiedMilli;

/** What about the line is only for the time being; empty for most. */
export function temporaryWords({ trialMilli, borrowedMilli }: PartRow): string {
  return [trialMilli > 0 ? 'on trial' : '', borrowedMilli > 0 ? 'borrowed' : ''].filter(Boolean).join(', ');
}

export const sumOf = (rows: readonly PartRow[], figure: (row: PartRow) => number): number =>
  rows.reduce((sum, row) => sum + figure(row), 0);
