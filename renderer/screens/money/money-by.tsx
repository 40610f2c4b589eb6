import { useState } from 'react';
import type { WhyFigure, WhyQuestion } from '../../../core/contract/journal.ts';
import type { MoneyFigures, MoneyRow } from '../../../core/contract/money.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { AskedFigure } from '../../parts/asked-figure.tsx';
import { Money } from '../../parts/figures.tsx';
import { counted } from '../../parts/formats.ts';
import { Tabs } from '../../parts/furniture.tsx';
import { Empty } from '../../parts/notes.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { type Reading, Variance } from './money-words.tsx';

type By = 'system' | 'phase' | 'vendor';

const tabs = [
  { id: 'system', title: 'By system' },
  { id: 'phase', title: 'By phase' },
  { id: 'vendor', title: 'By vendor' },
] as const satisfies readonly { readonly id: By; readonly title: string }[];

/** The question about one cell; lines without a vendor can't be asked about on their own. */
function question(reading: Reading, by: By, id: number | null, figure: WhyFigure): WhyQuestion | null {
  if (by !== 'vendor') return { ...reading, figure, [by]: id };
  return id === null ? null : { ...reading, figure, vendor: id };
}

interface Figure {
  readonly id: string;
  readonly title: string;
  readonly figure: WhyFigure;
  readonly of: (figures: MoneyFigures) => number;
}

const figures: readonly Figure[] = [
  { id: 'budget', title: 'Budget', figure: 'budget', of: ({ budgetMinor }) => budgetMinor },
  { id: 'paid', title: 'Paid', figure: 'paid', of: ({ paidMinor }) => paidMinor },
  { id: 'toPay', title: 'Still to pay', figure: 'still-to-pay', of: ({ stillToPayMinor }) => stillToPayMinor },
  { id: 'toOrder', title: 'Still to order', figure: 'remaining', of: ({ remainingMinor }) => remainingMinor },
  { id: 'forecast', title: 'Estimate', figure: 'forecast', of: ({ forecastMinor }) => forecastMinor },
];

function columnsFor(by: By, reading: Reading, total: MoneyFigures): readonly Column<MoneyRow>[] {
  const shown = figures.filter(({ id }) => by !== 'vendor' || id !== 'budget');
  const hasBudget = total.budgetMinor !== 0;
  const variance: Column<MoneyRow> = {
    id: 'variance',
    title: 'Variance',
    figures: true,
    cell: (row) => (
      <AskedFigure of={`variance, ${row.name}`} why={question(reading, by, row.id, 'variance')}>
        <Variance varianceMinor={row.varianceMinor} hasBudget={hasBudget} />
      </AskedFigure>
    ),
    sortBy: ({ varianceMinor }) => varianceMinor,
    foot: (
      <AskedFigure of="variance of the build" why={{ ...reading, figure: 'variance' }}>
        <Variance varianceMinor={total.varianceMinor} hasBudget={hasBudget} />
      </AskedFigure>
    ),
  };
  return [
    {
      id: 'name',
      title: by.charAt(0).toUpperCase() + by.slice(1),
      rowHeader: true,
      cell: (row) => (
        <>
          {row.name}
          {row.withoutEstimate > 0 && (
            <span className="row-note">{counted(row.withoutEstimate, 'line', 'lines')} without estimate</span>
          )}
        </>
      ),
      sortBy: ({ name }) => name,
      foot: 'All',
    },
    ...shown.map(
      ({ id, title, figure, of }): Column<MoneyRow> => ({
        id,
        title,
        figures: true,
        cell: (row) => (
          <AskedFigure of={`${title.toLowerCase()}, ${row.name}`} why={question(reading, by, row.id, figure)}>
            <Money amountMinor={of(row)} />
          </AskedFigure>
        ),
        sortBy: of,
        foot: (
          <AskedFigure of={`${title.toLowerCase()} of the build`} why={{ ...reading, figure }}>
            <Money amountMinor={of(total)} />
          </AskedFigure>
        ),
      }),
    ),
    ...(by === 'vendor' ? [] : [variance]),
  ];
}

/** The money by system, phase or vendor. */
export function MoneyBy({ total, reading }: { readonly total: MoneyFigures; readonly reading: Reading }) {
  const [by, setBy] = useState<By>('system');
  const rows = useRead(['money', reading.build, reading.asOf ?? null, 'by', by], () =>
    api.money.by({ ...reading, by }),
  );
  return (
    <section className="money-section" aria-labelledby="money-by">
      <h2 id="money-by">Where it goes</h2>
      <Tabs label="Money by" tabs={tabs} shown={by} onShow={setBy}>
        <ReadView read={rows} label={`Reading the money by ${by}`}>
          {(list) =>
            list.length === 0 ? (
              <Empty>The first part line with a {by} starts this table.</Empty>
            ) : (
              <SimpleTable
                key={by}
                caption={`Money by ${by}`}
                captionHidden
                columns={columnsFor(by, reading, total)}
                rows={list}
                rowKey={({ id }) => String(id)}
              />
            )
          }
        </ReadView>
      </Tabs>
    </section>
  );
}
