import type { z } from 'zod';
import type { budgetChange } from '../../../core/contract/money.ts';

export type BudgetChange = z.infer<typeof budgetChange>;
export type BudgetKind = BudgetChange['kind'];

/** What a line's budget is made of: its changes and the contingency drawn into it, those taken back left out. */
export const amountOfLine = (changes: readonly BudgetChange[], line: number): number =>
  changes
    .filter((change) => change.line === line && !change.reversed)
    .reduce((sum, { amountMinor }) => sum + amountMinor, 0);

/** The entries that the contingency left is the sum of: what was set aside, less what was drawn. */
export function contingencyEntries(
  changes: readonly BudgetChange[],
): readonly (BudgetChange & { readonly countsMinor: number })[] {
  return changes
    .filter(({ kind, reversed }) => kind !== 'change' && !reversed)
    .map((change) => ({
      ...change,
      countsMinor: change.kind === 'contingency' ? change.amountMinor : -change.amountMinor,
    }));
}
