import { IconAlertTriangle } from '@tabler/icons-react';
import { moneyText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import type { BudgetKind } from './budget-kinds.ts';

/** A build and the day that it is shown at. */
export interface Reading {
  readonly build: number;
  readonly asOf?: string;
}

export interface VarianceProps {
  readonly varianceMinor: number;
  /** Whether there is a budget to compare with. */
  readonly hasBudget: boolean;
}

/** Budget less estimate in words: over stands in red with its mark, so that colour alone never says it. */
export function Variance({ varianceMinor, hasBudget }: VarianceProps) {
  const locale = useLocale();
  if (!hasBudget) return <span className="variance-none">no budget</span>;
  if (varianceMinor >= 0) return <>{moneyText(varianceMinor, locale)} inside</>;
  return (
    <span className="variance-over">
      <IconAlertTriangle aria-hidden size="1em" /> {moneyText(-varianceMinor, locale)} over
    </span>
  );
}

/** What each kind of budget entry is called in the list of changes. */
export const kindWords: Readonly<Record<BudgetKind, string>> = {
  change: 'budget',
  contingency: 'contingency',
  'contingency drawn': 'drawn from contingency',
};
