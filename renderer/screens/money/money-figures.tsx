import type { Derivation } from '../../../core/contract/journal.ts';
import type { MoneyFigures } from '../../../core/contract/money.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import type { Why } from '../../app/why.tsx';
import { FigureList, type NamedFigure } from '../../parts/asked-figure.tsx';
import { Money } from '../../parts/figures.tsx';
import { counted } from '../../parts/formats.ts';
import { type BudgetChange, contingencyEntries } from './budget-kinds.ts';
import { type Reading, Variance } from './money-words.tsx';

/** Where the contingency left comes from: its own entries are all that is needed. */
function contingencyDerivation(leftMinor: number, changes: readonly BudgetChange[]): Derivation {
  return {
    title: 'Contingency left',
    quantityMilli: null,
    amountMinor: leftMinor,
    text: '',
    formula: 'contingency set aside − contingency drawn into budget lines',
    source: '',
    terms: [],
    entries: contingencyEntries(changes).map(({ seq, on, lineName, kind, reason, countsMinor }) => ({
      seq,
      on,
      text: kind === 'contingency' ? reason : `${lineName}: ${reason}`,
      part: null,
      description: '',
      quantityMilli: 0,
      amountMinor: countsMinor,
      reversed: false,
    })),
    more: 0,
  };
}

/** The figures of the whole build, each with the way to ask why. */
export function BuildFigures({ figures, reading }: { readonly figures: MoneyFigures; readonly reading: Reading }) {
  const changes = useRead(['money', reading.build, reading.asOf ?? null, 'budgetChanges'], () =>
    api.money.budgetChanges(reading),
  );
  const asked = (label: string, figure: WhyOf, amountMinor: number, note?: string): NamedFigure => ({
    label,
    why: { ...reading, figure },
    figure: <Money amountMinor={amountMinor} />,
    ...(note === undefined ? {} : { note }),
  });
  const contingencyWhy: Why | null =
    changes.state === 'ready'
      ? { derivation: contingencyDerivation(figures.contingencyLeftMinor, changes.value) }
      : null;
  const unpriced =
    figures.withoutEstimate === 0
      ? undefined
      : `and ${counted(figures.withoutEstimate, 'line', 'lines')} without estimate`;
  return (
    <FigureList
      figures={[
        asked('Paid', 'paid', figures.paidMinor),
        asked('Still to pay on orders', 'still-to-pay', figures.stillToPayMinor),
        asked('Still to order', 'remaining', figures.remainingMinor, unpriced),
        asked('Estimate at completion', 'forecast', figures.forecastMinor),
        asked('Budget', 'budget', figures.budgetMinor, figures.budgetMinor === 0 ? 'none set yet' : undefined),
        {
          label: 'Variance',
          why: { ...reading, figure: 'variance' },
          figure: <Variance varianceMinor={figures.varianceMinor} hasBudget={figures.budgetMinor !== 0} />,
        },
        {
          label: 'Contingency left',
          why: contingencyWhy,
          figure: <Money amountMinor={figures.contingencyLeftMinor} />,
        },
        asked(
          'Deposits out',
          'deposits',
          figures.depositsMinor,
          figures.depositsMinor === 0 ? undefined : 'come back with the cores',
        ),
        asked('Owed by vendors', 'claims', figures.claimsMinor),
        asked('Lost or scrapped', 'loss', figures.lossMinor),
        ...(figures.exchangeMinor === 0
          ? []
          : [
              asked(
                'Exchange difference',
                'exchange',
                figures.exchangeMinor,
                'paid by rates and rounding, outside the estimate',
              ),
            ]),
      ]}
    />
  );
}

type WhyOf =
  | 'paid'
  | 'still-to-pay'
  | 'remaining'
  | 'forecast'
  | 'budget'
  | 'deposits'
  | 'claims'
  | 'loss'
  | 'exchange';
