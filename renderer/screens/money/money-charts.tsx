import type { MoneyFigures } from '../../../core/contract/money.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { BarsPerMonth, LinesOverTime, Shares } from '../../parts/chart.tsx';
import { moneyText, monthText } from '../../parts/formats.ts';
import type { LocaleSettings } from '../../parts/locale.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import type { Reading } from './money-words.tsx';

interface Point {
  readonly on: string;
  readonly paidMinor: number;
  readonly committedMinor: number;
  readonly forecastMinor: number;
  readonly budgetMinor: number;
}

const isNothing = (point: Point): boolean =>
  point.paidMinor === 0 && point.committedMinor === 0 && point.forecastMinor === 0 && point.budgetMinor === 0;

const unit = { kind: 'money' } as const;

/** The sentence over the curves: where the estimate stands against the budget, by the figures of the page. */
function standing({ budgetMinor, varianceMinor }: MoneyFigures, locale: LocaleSettings): string {
  if (budgetMinor === 0) return 'Paid, committed and estimate at completion; no budget is set';
  return varianceMinor < 0
    ? `The estimate at completion stands ${moneyText(-varianceMinor, locale)} over the budget`
    : `The estimate at completion stands ${moneyText(varianceMinor, locale)} inside the budget`;
}

interface CurvesProps {
  readonly figures: MoneyFigures;
  readonly points: readonly Point[];
  readonly today: string;
}

function Curves({ figures, points, today }: CurvesProps) {
  const locale = useLocale();
  const line = (name: string, of: (point: Point) => number) => ({
    name,
    steps: true,
    points: points.map((point) => ({ on: point.on, value: of(point) })),
  });
  return (
    <LinesOverTime
      title={standing(figures, locale)}
      unit={unit}
      today={today}
      series={[
        line('paid', ({ paidMinor }) => paidMinor),
        line('committed', ({ committedMinor }) => committedMinor),
        line('estimate at completion', ({ forecastMinor }) => forecastMinor),
        ...(points.some(({ budgetMinor }) => budgetMinor !== 0)
          ? [line('budget', ({ budgetMinor }) => budgetMinor)]
          : []),
      ]}
    />
  );
}

/** The money over time, by month and by vendor; each with its figures as a table. */
export function MoneyCharts({ figures, reading }: { readonly figures: MoneyFigures; readonly reading: Reading }) {
  const workspace = useWorkspace();
  const today = reading.asOf ?? workspace.today;
  const key = (name: string) => ['money', reading.build, reading.asOf ?? null, name];
  const curves = useRead(key('overTime'), () => api.money.overTime(reading));
  const months = useRead(key('perMonth'), () => api.money.perMonth(reading));
  const vendors = useRead([...key('by'), 'vendor'], () => api.money.by({ ...reading, by: 'vendor' }));
  return (
    <section className="money-section money-charts" aria-labelledby="money-charts">
      <h2 id="money-charts">Over time</h2>
      <ReadView read={curves} label="Reading the money over time">
        {(points) =>
          points.every(isNothing) ? (
            <p>The curves begin with the first estimate, order or budget.</p>
          ) : (
            <Curves figures={figures} points={points} today={today} />
          )
        }
      </ReadView>
      <ReadView read={months} label="Reading the money by month">
        {(spend) => {
          const running = spend.find(({ partial }) => partial);
          if (spend.length === 0) return null;
          return (
            <BarsPerMonth
              title={`What came in and what was paid, by month${running === undefined ? '' : `; ${monthText(running.month)} is still running`}`}
              unit={unit}
              months={spend.map(({ month }) => month)}
              series={[
                { name: 'cost recognised', values: spend.map(({ costMinor }) => costMinor) },
                { name: 'paid', values: spend.map(({ paidMinor }) => paidMinor) },
              ]}
              today={today}
            />
          );
        }}
      </ReadView>
      <ReadView read={vendors} label="Reading the money by vendor">
        {(rows) => {
          const shares = rows
            .map(({ id, name, paidMinor, stillToPayMinor }) => ({ id, name, value: paidMinor + stillToPayMinor }))
            .filter(({ value }) => value !== 0)
            .sort((a, b) => b.value - a.value);
          if (shares.length === 0) return null;
          return (
            <Shares
              title="Committed by vendor: paid and still to pay on orders"
              unit={unit}
              of="committed"
              rows={shares.map(({ id, name, value }) => ({
                name,
                value,
                ...(id === null ? {} : { onOpen: () => navigate('/lists', { vendor: id }) }),
              }))}
            />
          );
        }}
      </ReadView>
    </section>
  );
}
