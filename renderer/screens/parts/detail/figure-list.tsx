import type { WhyFigure } from '../../../../core/contract/journal.ts';
import type { PartRow } from '../../../../core/contract/parts.ts';
import { useWhy } from '../../../app/why.tsx';
import { useReading } from '../../../app/workspace.tsx';
import { moneyText, quantityText, unitPriceText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { WhyButton } from '../../../parts/page.tsx';
import { inHandMilli } from '../columns/row-figures.ts';

const quantities: readonly (readonly [title: string, figure: WhyFigure, milli: (row: PartRow) => number])[] = [
  ['Needed', 'need', (row) => row.needMilli],
  ['On order', 'on-order', (row) => row.onOrderMilli],
  ['On back-order', 'back-ordered', (row) => row.backOrderedMilli],
  ['In hand', 'in-hand', inHandMilli],
  ['On trial', 'trial-fitted', (row) => row.trialMilli],
  ['Fitted, snug or final', 'fitted', (row) => row.fittedMilli + row.snugMilli + row.verifiedMilli],
  ['Of these final', 'final', (row) => row.verifiedMilli],
  ['Rejected', 'rejected', (row) => row.rejectedMilli],
];

const amounts: readonly (readonly [title: string, figure: WhyFigure, minor: (row: PartRow) => number])[] = [
  ['Cost so far', 'cost', (row) => row.costMinor],
  ['Committed', 'commitment', (row) => row.commitmentMinor],
  ['Still to buy', 'remaining', (row) => row.remainingMinor],
  ['Forecast', 'forecast', (row) => row.forecastMinor],
  ['Paid', 'paid', (row) => row.paidMinor],
  ['Still to pay', 'still-to-pay', (row) => row.stillToPayMinor],
];

/** The line's quantities and money, each with the way to ask where it comes from. */
export function FigureList({ row }: { readonly row: PartRow }) {
  const locale = useLocale();
  const ask = useWhy();
  const reading = useReading();
  const line = (title: string, figure: WhyFigure, words: string) => (
    <div key={title}>
      <dt>{title}</dt>
      <dd>
        <span className="figure">{words}</span>
        {reading !== null && (
          <WhyButton of={title.toLowerCase()} onClick={() => ask({ ...reading, figure, part: row.id })} />
        )}
      </dd>
    </div>
  );
  const shown = quantities.filter(([title, , milli]) => title === 'Needed' || milli(row) !== 0);
  const owed = amounts.filter(([, figure, minor]) => minor(row) !== 0 || figure === 'forecast' || figure === 'paid');
  return (
    <section aria-label="Figures">
      <h3>Figures</h3>
      <dl className="part-figures">
        {shown.map(([title, figure, milli]) => line(title, figure, quantityText(milli(row), locale, row.unit)))}
        {row.estimateEachE4 !== null && (
          <div>
            <dt>Price each, guessed</dt>
            <dd>
              <span className="figure">{unitPriceText(row.estimateEachE4, locale)}</span>
            </dd>
          </div>
        )}
        {owed.map(([title, figure, minor]) => line(title, figure, moneyText(minor(row), locale)))}
      </dl>
    </section>
  );
}
