import { CartesianGrid, Line, LineChart, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { dateOfDayNumber, dayNumber } from '../../core/dates/calendar-date.ts';
import { usePreferences } from '../app/preferences.ts';
import { seriesColour, seriesDash } from '../app/theme.ts';
import { axisFigure, type ChartUnit, chartFigure, monthMarks, type TimeRow, type TimeSeries } from './chart-figures.ts';
import { EndLabels } from './end-labels.tsx';
import { dateText, monthText } from './formats.ts';
import { type LocaleSettings, useLocale } from './locale.tsx';

export interface LinesDrawingProps {
  readonly series: readonly TimeSeries[];
  readonly rows: readonly TimeRow[];
  readonly unit: ChartUnit;
  readonly today: string;
  readonly label: string;
}

interface Pointed {
  readonly active?: boolean | undefined;
  readonly payload?: ReadonlyArray<{ readonly payload?: TimeRow }> | undefined;
}

/** What stands at the date that the pointer or the arrow keys are on. */
function Reading({ pointed, props, locale }: { pointed: Pointed; props: LinesDrawingProps; locale: LocaleSettings }) {
  const row = pointed.payload?.[0]?.payload;
  if (pointed.active !== true || row === undefined) return null;
  return (
    <div className="chart-reading" role="status">
      <strong>{dateText(row.on, locale)}</strong>
      {props.series.map(({ name }, index) => {
        const value = row.values[index] ?? null;
        return value === null ? null : (
          <span key={name}>
            {name}: {chartFigure(value, props.unit, locale)}
          </span>
        );
      })}
    </div>
  );
}

/** Lines over dates, drawn. */
export default function LinesDrawing(props: LinesDrawingProps) {
  const { series, rows, unit, today, label } = props;
  const locale = useLocale();
  const scale = usePreferences().density === 'bench' ? 1.25 : 1;
  const now = dayNumber(today);
  const days = [...rows.map(({ day }) => day), now];
  const [from, to] = [Math.min(...days), Math.max(...days)];
  const longest = Math.max(...series.map(({ name, endLabel }) => (endLabel ?? name).length));
  return (
    <div className="chart-drawing">
      <ResponsiveContainer width="100%" height="100%">
        <LineChart
          data={[...rows]}
          title={label}
          desc="Left and right arrow keys read the values at each date."
          margin={{ top: 22, right: Math.min(240, scale * (longest * 7.6 + 16)), bottom: 4, left: 4 }}
        >
          <CartesianGrid vertical={false} stroke="var(--line)" />
          <XAxis
            dataKey="day"
            type="number"
            domain={[from, to]}
            ticks={[...monthMarks(from, to, 8)]}
            tickFormatter={(day: number) => monthText(dateOfDayNumber(day).slice(0, 7))}
            stroke="var(--line-strong)"
            tick={{ fill: 'var(--ink-soft)' }}
          />
          <YAxis
            width={scale * 76}
            tickFormatter={(value: number) => axisFigure(value, unit, locale)}
            stroke="var(--line-strong)"
            tick={{ fill: 'var(--ink-soft)' }}
            axisLine={false}
            tickLine={false}
          />
          <Tooltip
            isAnimationActive={false}
            cursor={{ stroke: 'var(--ink-soft)' }}
            content={(pointed) => <Reading pointed={pointed as Pointed} props={props} locale={locale} />}
          />
          <ReferenceLine
            x={now}
            stroke="var(--ink)"
            strokeDasharray="2 2"
            label={{ value: 'today', position: 'top', fill: 'var(--ink)' }}
          />
          {series.map(({ name, steps }, index) => (
            <Line
              key={name}
              name={name}
              dataKey={(row: TimeRow) => row.values[index] ?? null}
              type={steps === true ? 'stepAfter' : 'linear'}
              stroke={seriesColour(name)}
              strokeDasharray={seriesDash(name)}
              strokeWidth={2}
              dot={rows.length <= 12 ? { r: 2.5, strokeDasharray: '0' } : false}
              connectNulls
              isAnimationActive={false}
            />
          ))}
          <EndLabels series={series} />
        </LineChart>
      </ResponsiveContainer>
    </div>
  );
}
