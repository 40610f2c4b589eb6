import type { WhyFigure } from '../../../core/contract/journal.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useWhy } from '../../app/why.tsx';
import { Money } from '../../parts/figures.tsx';
import { moneyText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Loading } from '../../parts/notes.tsx';
import { WhyButton } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import type { Reading } from './build-start.tsx';

/** Money in three figures, and how it stands against the budget. */
export function MoneyLines({ reading }: { readonly reading: Reading }) {
  const { build, asOf } = reading;
  const locale = useLocale();
  const why = useWhy();
  const summary = useRead(['money', build, asOf, 'summary'], () => api.money.summary(reading));
  const ask = (figure: WhyFigure) => () => why({ figure, ...reading });
  return (
    <section aria-labelledby="start-money">
      <h2 id="start-money">Money</h2>
      {summary.state === 'loading' && <Loading label="Adding up the money" />}
      {summary.state === 'refused' && <RefusalNote refusal={summary.refusal} onRetry={summary.retry} />}
      {summary.state === 'ready' && (
        <>
          <dl className="start-figures">
            <Figure title="Paid" amountMinor={summary.value.paidMinor} onWhy={ask('paid')} />
            <Figure
              title="Still to pay on orders"
              amountMinor={summary.value.stillToPayMinor}
              onWhy={ask('still-to-pay')}
            />
            <Figure title="Still to order" amountMinor={summary.value.remainingMinor} onWhy={ask('remaining')} />
          </dl>
          <p className="start-budget">
            {budgetSentence(summary.value, (minor) => moneyText(minor, locale))}
            {summary.value.budgetMinor !== 0 && <WhyButton of="the budget" onClick={ask('variance')} />}
          </p>
        </>
      )}
    </section>
  );
}

function Figure({ title, amountMinor, onWhy }: { title: string; amountMinor: number; onWhy: () => void }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>
        <Money amountMinor={amountMinor} /> <WhyButton of={title} onClick={onWhy} />
      </dd>
    </div>
  );
}

interface Budgeted {
  readonly budgetMinor: number;
  readonly varianceMinor: number;
  readonly forecastMinor: number;
  readonly withoutEstimate: number;
}

/** How the estimate at completion stands against the budget, and whether the estimate is whole. */
export function budgetSentence(figures: Budgeted, say: (minor: number) => string): string {
  const { budgetMinor, varianceMinor, forecastMinor, withoutEstimate } = figures;
  const all = `In all ${say(forecastMinor)}`;
  const against =
    budgetMinor === 0
      ? `${all}; no budget is set.`
      : varianceMinor < 0
        ? `${all}, which is ${say(-varianceMinor)} over the budget of ${say(budgetMinor)}.`
        : `${all}, which leaves ${say(varianceMinor)} of the budget of ${say(budgetMinor)}.`;
  if (withoutEstimate === 0) return against;
  const lines = withoutEstimate === 1 ? '1 part line counts' : `${withoutEstimate} part lines count`;
  return `${against} It will be more: ${lines} as nothing, for want of an estimate.`;
}
