import { CartesianGrid, Line, LineChart, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { dateOfDayNumber, dayNumber } from '../../../core/dates/calendar-date.ts';
import { dayWords } from '../../../core/dates/day-words.ts';
import { usePreferences } from '../../app/preferences.ts';
import { seriesColour, seriesDash } from '../../app/theme.ts';
import { monthMarks } from '../../parts/chart-figures.ts';
import { EndLabels } from '../../parts/end-labels.tsx';
import { dayMarks } from './gate-points.ts';
import type { SaidRow } from './history.tsx';

interface Pointed {
  readonly active?: boolean | undefined;
  readonly payload?: ReadonlyArray<{ readonly payload?: SaidRow }> | undefined;
}

function Reading({ pointed }: { readonly pointed: Pointed }) {
  const row = pointed.payload?.[0]?.payload;
  if (pointed.active !== true || row === undefined) return null;
  return (
    <div className="chart-reading" role="status">
      <strong>Said on {dayWords(row.on)}</strong>
      <span>P50: {dayWords(row.p50On)}</span>
      <span>P80: {dayWords(row.p80On)}</span>
    </div>
  );
}

const lines = [
  { name: 'P50', dataKey: (row: SaidRow) => dayNumber(row.p50On) },
  { name: 'P80', dataKey: (row: SaidRow) => dayNumber(row.p80On) },
] as const;

/** The day that was said, by the day on which it was said: a level line is a plan that holds. */
export default function HistoryDrawing({ rows, label }: { readonly rows: readonly SaidRow[]; readonly label: string }) {
  const scale = usePreferences().density === 'bench' ? 1.25 : 1;
  const said = rows.map(({ on }) => dayNumber(on));
  const [from, to] = [Math.min(...said), Math.max(...said)];
  const days = rows.flatMap(({ p50On, p80On }) => [dayNumber(p50On), dayNumber(p80On)]);
  const [low, high] = [Math.min(...days) - 3, Math.max(...days) + 3];
  const word = (day: number): string => dayWords(dateOfDayNumber(Math.round(day)));
  const series = lines.map(({ name, dataKey }) => ({
    name,
    points: rows.map((row) => ({ on: row.on, value: dataKey(row) })),
  }));
  return (
    <div className="chart-drawing">
      <ResponsiveContainer width="100%" height="100%">
        <LineChart
          data={[...rows]}
          title={label}
          desc="Left and right arrow keys read what was said on each day."
          margin={{ top: 16, right: scale * 52, bottom: 4, left: 4 }}
        >
          <CartesianGrid vertical={false} stroke="var(--line)" />
          <XAxis
            dataKey={(row: SaidRow) => dayNumber(row.on)}
            type="number"
            domain={[from, to]}
            ticks={[...dayMarks(from, to, monthMarks(from, to, 6))]}
            tickFormatter={word}
            stroke="var(--line-strong)"
            tick={{ fill: 'var(--ink-soft)' }}
            minTickGap={24}
          />
          <YAxis
            width={scale * 92}
            domain={[low, high]}
            ticks={[...dayMarks(low, high, monthMarks(low, high, 6))]}
            tickFormatter={word}
            stroke="var(--line-strong)"
            tick={{ fill: 'var(--ink-soft)' }}
            axisLine={false}
            tickLine={false}
          />
          <Tooltip
            isAnimationActive={false}
            cursor={{ stroke: 'var(--ink-soft)' }}
            content={(pointed) => <Reading pointed={pointed as Pointed} />}
          />
          {lines.map(({ name, dataKey }) => (
            <Line
              key={name}
              name={name}
              dataKey={dataKey}
              stroke={seriesColour(name)}
              strokeDasharray={seriesDash(name)}
              strokeWidth={2}
              dot={{ r: 3, strokeDasharray: '0' }}
              isAnimationActive={false}
            />
          ))}
          <EndLabels series={series} />
        </LineChart>
      </ResponsiveContainer>
    </div>
  );
}
