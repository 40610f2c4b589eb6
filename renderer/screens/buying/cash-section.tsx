import type { BuyingView, CashView } from '../../../core/contract/buying.ts';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { LinesOverTime } from '../../parts/chart.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { moneyText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { Counts } from './counts.tsx';
import { Incomes } from './incomes.tsx';
import type { Reading } from './reading.ts';

export interface CashSectionProps {
  readonly cash: CashView;
  /** The plan whose orders are drawn too; null while it is on its way. */
  readonly plan: BuyingView | null;
  readonly reading: Reading;
}

/** Money ahead: the curve, what it comes from and what is owed. */
export function CashSection({ cash, plan, reading }: CashSectionProps) {
  return (
    <>
      {cash.count !== null && <Curve cash={cash} plan={plan} asOf={reading.asOf ?? null} />}
      <Counts cash={cash} reading={reading} />
      <Incomes reading={reading} />
      {cash.committed.length > 0 && (
        <section className="buying-section" aria-labelledby="buying-owed">
          <h2 id="buying-owed">Owed on orders</h2>
          <SimpleTable
            caption="Owed on orders"
            captionHidden
            columns={[
              {
                id: 'order',
                title: 'Order',
                rowHeader: true,
                cell: ({ order, vendorName, number }) => (
                  <Link to="/orders" params={{ order }}>
                    {vendorName} {number}
                  </Link>
                ),
              },
              {
                id: 'due',
                title: 'Counted on',
                cell: ({ dueOn }) => <DateText date={dueOn} />,
                sortBy: ({ dueOn }) => dueOn,
              },
              {
                id: 'amount',
                title: 'Amount',
                figures: true,
                cell: ({ amountMinor }) => <Money amountMinor={amountMinor} />,
                foot: <Money amountMinor={cash.committed.reduce((sum, { amountMinor }) => sum + amountMinor, 0)} />,
              },
              { id: 'why', title: 'Why that day', sentences: true, cell: ({ says }) => says },
            ]}
            rows={cash.committed}
            rowKey={({ order }) => String(order)}
          />
        </section>
      )}
      <details className="buying-assumes">
        <summary>What the curve goes by</summary>
        <ul>
          {cash.assumes.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Curve({ cash, plan, asOf }: { cash: CashView; plan: BuyingView | null; asOf: string | null }) {
  const locale = useLocale();
  const workspace = useWorkspace();
  const today = asOf ?? workspace.today;
  const first = cash.points[0]?.on ?? today;
  const last = [today, ...cash.points.map(({ on }) => on)].sort().at(-1) ?? today;
  const line = (name: string, of: (point: CashView['points'][number]) => number) => ({
    name,
    steps: true,
    points: cash.points.map((point) => ({ on: point.on, value: of(point) })),
  });
  const differs = cash.points.some(({ likelyMinor, safeMinor }) => likelyMinor !== safeMinor);
  const planned = plan?.status === 'plan' ? plan.cash.filter(({ on }) => on <= last) : [];
  return (
    <LinesOverTime
      title={
        cash.lowestLikelyMinor === null
          ? 'Cash ahead'
          : `With nothing more ordered cash is never below ${moneyText(cash.lowestLikelyMinor, locale)}`
      }
      unit={{ kind: 'money' }}
      today={today}
      series={[
        line(differs ? 'likely' : 'likely and safe', ({ likelyMinor }) => likelyMinor),
        ...(differs ? [line('safe', ({ safeMinor }) => safeMinor)] : []),
        ...(planned.length === 0
          ? []
          : [
              {
                name: 'with the plan',
                steps: true,
                points: planned.map(({ on, cashMinor }) => ({ on, value: cashMinor })),
              },
            ]),
        {
          name: 'floor',
          points: [
            { on: first, value: cash.floorMinor },
            { on: last, value: cash.floorMinor },
          ],
        },
      ]}
    />
  );
}
