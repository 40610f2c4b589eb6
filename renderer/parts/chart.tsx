import { Button } from '@mantine/core';
import { IconChartLine, IconTable } from '@tabler/icons-react';
import { lazy, type ReactNode, Suspense, useId, useState } from 'react';
import { seriesColour } from '../app/theme.ts';
import {
  axisName,
  type ChartUnit,
  chartFigure,
  endsOf,
  heldUntil,
  type MonthSeries,
  monthRows,
  type TimeSeries,
  timeRows,
} from './chart-figures.ts';
import { dateText, monthText } from './formats.ts';
import { useLocale } from './locale.tsx';
import { Loading } from './notes.tsx';
import { type Column, SimpleTable } from './simple-table.tsx';
import './chart.css';

// The drawing library is larger than a first screen may be, so it comes with the first chart that is drawn.
const LinesDrawing = lazy(() => import('./lines-drawing.tsx'));
const BarsDrawing = lazy(() => import('./bars-drawing.tsx'));

interface ChartFrameProps {
  /** The sentence that says what the chart shows: "Paid so far stands 1,240 above the plan". */
  readonly title: string;
  readonly unit: ChartUnit;
  readonly drawing: ReactNode;
  readonly table: ReactNode;
}

/** Around every chart: the sentence, the drawing, and the same figures as a table on request. */
export function ChartFrame({ title, unit, drawing, table }: ChartFrameProps) {
  const locale = useLocale();
  const [asTable, setAsTable] = useState(false);
  const id = useId();
  return (
    <figure className="chart" aria-labelledby={id}>
      <figcaption>
        <span id={id}>{title}</span> <span className="chart-unit">{axisName(unit, locale)}</span>
      </figcaption>
      {asTable ? table : <Suspense fallback={<Loading label="Drawing the chart" />}>{drawing}</Suspense>}
      <Button
        className="not-printed"
        variant="subtle"
        size="compact"
        aria-expanded={asTable}
        leftSection={asTable ? <IconChartLine aria-hidden size="1.1em" /> : <IconTable aria-hidden size="1.1em" />}
        onClick={() => setAsTable(!asTable)}
      >
        {asTable ? 'Show the chart' : 'Show the table'}
      </Button>
    </figure>
  );
}

export interface LinesOverTimeProps {
  readonly title: string;
  readonly unit: ChartUnit;
  readonly series: readonly TimeSeries[];
  /** Where today's line stands. */
  readonly today: string;
}

/** How something grew: one line a series, its name at its end. Positions that hold until the next entry are steps. */
export function LinesOverTime({ title, unit, series: given, today }: LinesOverTimeProps) {
  const locale = useLocale();
  const series = heldUntil(given, today);
  const rows = timeRows(series);
  const columns: readonly Column<(typeof rows)[number]>[] = [
    { id: 'on', title: 'Date', rowHeader: true, cell: ({ on }) => dateText(on, locale), sortBy: ({ on }) => on },
    ...series.map(({ name }, index) => ({
      id: name,
      title: name,
      figures: true,
      cell: (row: (typeof rows)[number]) => chartFigure(row.values[index] ?? null, unit, locale),
    })),
  ];
  return (
    <ChartFrame
      title={title}
      unit={unit}
      drawing={<LinesDrawing series={series} rows={rows} unit={unit} today={today} label={title} />}
      table={<SimpleTable caption={title} captionHidden columns={columns} rows={rows} rowKey={({ on }) => on} />}
    />
  );
}

export interface BarsPerMonthProps {
  readonly title: string;
  readonly unit: ChartUnit;
  /** Calendar months, YYYY-MM, in order. */
  readonly months: readonly string[];
  /** One value a month for each series. */
  readonly series: readonly MonthSeries[];
  /** The month of this day is marked. */
  readonly today: string;
  /** Series stand on each other, because they are parts of one sum. */
  readonly stacked?: boolean;
}

/** Amounts by calendar month. */
export function BarsPerMonth({ title, unit, months, series, today, stacked = false }: BarsPerMonthProps) {
  const locale = useLocale();
  const rows = monthRows(months, series);
  const columns: readonly Column<(typeof rows)[number]>[] = [
    {
      id: 'month',
      title: 'Month',
      rowHeader: true,
      cell: ({ month }) => monthText(month),
      sortBy: ({ month }) => month,
    },
    ...series.map(({ name }, index) => ({
      id: name,
      title: name,
      figures: true,
      cell: (row: (typeof rows)[number]) => chartFigure(row.values[index] ?? null, unit, locale),
    })),
  ];
  return (
    <ChartFrame
      title={title}
      unit={unit}
      drawing={<BarsDrawing series={series} rows={rows} unit={unit} today={today} stacked={stacked} label={title} />}
      table={<SimpleTable caption={title} captionHidden columns={columns} rows={rows} rowKey={({ month }) => month} />}
    />
  );
}

export interface SharesProps {
  readonly title: string;
  readonly unit: ChartUnit;
  readonly rows: readonly { readonly name: string; readonly value: number; readonly onOpen?: () => void }[];
  /** All bars in the colour of one charted thing, such as `committed`; else each row has its own. */
  readonly of?: string;
}

/** Parts of a whole as bars beside their figures: a table already, so that nothing has to be toggled. */
export function Shares({ title, unit, rows, of }: SharesProps) {
  const locale = useLocale();
  const { largest, total } = endsOf(rows.map(({ value }) => value));
  return (
    <table className="shares">
      <caption>{title}</caption>
      <thead className="only-heard">
        <tr>
          <th scope="col">What</th>
          <th scope="col">Amount</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, value, onOpen }) => (
          <tr key={name}>
            <th scope="row">
              {onOpen === undefined ? (
                name
              ) : (
                <button type="button" className="row-button" onClick={onOpen}>
                  {name}
                </button>
              )}
            </th>
            <td className="shares-figure">{chartFigure(value, unit, locale)}</td>
            <td className="shares-bar">
              <span
                aria-hidden
                style={{
                  width: `calc((100% - 4em) * ${Math.max(value, 0) / largest})`,
                  background: seriesColour(of ?? name),
                }}
              />
              <span className="shares-part">{total === 0 ? '' : `${Math.round((value / total) * 100)} %`}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
