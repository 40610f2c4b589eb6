import { useId } from 'react';
import { Bar, BarChart, CartesianGrid, LabelList, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { usePreferences } from '../app/preferences.ts';
import { seriesColour } from '../app/theme.ts';
import { axisFigure, type ChartUnit, chartFigure, type MonthRow, type MonthSeries } from './chart-figures.ts';
import { monthText } from './formats.ts';
import { useLocale } from './locale.tsx';

export interface BarsDrawingProps {
  readonly series: readonly MonthSeries[];
  readonly rows: readonly MonthRow[];
  readonly unit: ChartUnit;
  readonly today: string;
  readonly stacked: boolean;
  readonly label: string;
}

interface Pointed {
  readonly active?: boolean | undefined;
  readonly payload?: ReadonlyArray<{ readonly payload?: MonthRow }> | undefined;
}

const hatches = ['', 'rotate(45)', 'rotate(-45)', 'rotate(90)'] as const;

interface MonthMarkProps {
  readonly x: number | string;
  readonly y: number | string;
  readonly payload: { readonly value: string };
  readonly thisMonth: string;
}

/** A month below its bars; the present one says so. */
function MonthMark({ x, y, payload, thisMonth }: MonthMarkProps) {
  const now = payload.value === thisMonth;
  return (
    <text x={x} y={y} textAnchor="middle" fill={now ? 'var(--ink)' : 'var(--ink-soft)'} fontWeight={now ? 620 : 400}>
      <tspan x={x} dy="0.9em">
        {monthText(payload.value)}
      </tspan>
      {now && (
        <tspan x={x} dy="1.25em">
          today
        </tspan>
      )}
    </text>
  );
}

/** Bars by month, drawn. Series differ by hatching as well as by colour. */
export default function BarsDrawing({ series, rows, unit, today, stacked, label }: BarsDrawingProps) {
  const locale = useLocale();
  const scale = usePreferences().density === 'bench' ? 1.25 : 1;
  const base = useId();
  const fillOf = (name: string, index: number) => (index === 0 ? seriesColour(name) : `url(#${base}-${index})`);
  const thisMonth = today.slice(0, 7);
  const reading = (pointed: Pointed) => {
    const row = pointed.payload?.[0]?.payload;
    if (pointed.active !== true || row === undefined) return null;
    return (
      <div className="chart-reading" role="status">
        <strong>{monthText(row.month)}</strong>
        {series.map(({ name }, index) => (
          <span key={name}>
            {name}: {chartFigure(row.values[index] ?? 0, unit, locale)}
          </span>
        ))}
      </div>
    );
  };
  return (
    <>
      {series.length > 1 && (
        <ul className="chart-key">
          {series.map(({ name }, index) => (
            <li key={name}>
              <svg width="22" height="12" aria-hidden="true">
                <rect width="22" height="12" fill={fillOf(name, index)} stroke={seriesColour(name)} />
              </svg>
              {name}
            </li>
          ))}
        </ul>
      )}
      <div className="chart-drawing">
        <ResponsiveContainer width="100%" height="100%">
          <BarChart
            data={[...rows]}
            title={label}
            desc="Left and right arrow keys read the values of each month."
            margin={{ top: 18, right: 8, bottom: 4, left: 4 }}
          >
            <defs>
              {series.map(({ name }, index) => (
                <pattern
                  key={name}
                  id={`${base}-${index}`}
                  width="6"
                  height="6"
                  patternUnits="userSpaceOnUse"
                  patternTransform={hatches[index % hatches.length] ?? ''}
                >
                  <rect width="6" height="6" fill="var(--paper)" />
                  <rect width="3" height="6" fill={seriesColour(name)} />
                </pattern>
              ))}
            </defs>
            <CartesianGrid vertical={false} stroke="var(--line)" />
            <XAxis
              dataKey="month"
              height={scale * 40}
              interval="preserveStartEnd"
              stroke="var(--line-strong)"
              tick={(mark) => <MonthMark {...mark} thisMonth={thisMonth} />}
            />
            <YAxis
              width={scale * 76}
              tickFormatter={(value: number) => axisFigure(value, unit, locale)}
              tick={{ fill: 'var(--ink-soft)' }}
              axisLine={false}
              tickLine={false}
            />
            <Tooltip
              isAnimationActive={false}
              cursor={{ fill: 'var(--link-soft)' }}
              content={(pointed) => reading(pointed as Pointed)}
            />
            {series.map(({ name }, index) => (
              <Bar
                key={name}
                name={name}
                dataKey={(row: MonthRow) => row.values[index] ?? 0}
                fill={fillOf(name, index)}
                stroke={seriesColour(name)}
                isAnimationActive={false}
                {...(stacked ? { stackId: 'sum' } : {})}
              >
                {series.length === 1 && rows.length <= 14 && (
                  <LabelList
                    position="top"
                    fill="var(--ink)"
                    formatter={(value) => (Number(value) === 0 ? '' : axisFigure(Number(value), unit, locale))}
                  />
                )}
              </Bar>
            ))}
          </BarChart>
        </ResponsiveContainer>
      </div>
    </>
  );
}
