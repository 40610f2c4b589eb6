import {
  CartesianGrid,
  Line,
  LineChart,
  ReferenceDot,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { dateOfDayNumber, dayNumber } from '../../../core/dates/calendar-date.ts';
import { dayWords } from '../../../core/dates/day-words.ts';
import { usePreferences } from '../../app/preferences.ts';
import { monthMarks } from '../../parts/chart-figures.ts';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { dayMarks, type GateMark, type GatePoint, shownDays, thinned } from './gate-points.ts';

interface Pointed {
  readonly active?: boolean | undefined;
  readonly payload?: ReadonlyArray<{ readonly payload?: GatePoint }> | undefined;
}

function Reading({ pointed }: { readonly pointed: Pointed }) {
  const locale = useLocale();
  const point = pointed.payload?.[0]?.payload;
  if (pointed.active !== true || point === undefined || point.on === '') return null;
  return (
    <div className="chart-reading" role="status">
      <strong>by {dateText(point.on, locale)}</strong>
      <span>{Math.round(point.share * 1000) / 10} % of the runs</span>
    </div>
  );
}

interface GateDrawingProps {
  readonly points: readonly GatePoint[];
  readonly marks: readonly GateMark[];
  readonly today: string;
  readonly label: string;
}

/** The rising curve with the days that are named on it. */
export default function GateDrawing({ points, marks, today, label }: GateDrawingProps) {
  const scale = usePreferences().density === 'bench' ? 1.25 : 1;
  const [from, to] = shownDays(points, today);
  const start = { on: '', day: from, runs: 0, share: 0 };
  const shown = [
    start,
    ...thinned(
      points.filter(({ day }) => day <= to),
      120,
    ),
  ];
  return (
    <div className="chart-drawing">
      <ResponsiveContainer width="100%" height="100%">
        <LineChart
          data={shown}
          title={label}
          desc="Left and right arrow keys read the share of runs by each day."
          margin={{ top: 22, right: 24, bottom: 4, left: 4 }}
        >
          <CartesianGrid vertical={false} stroke="var(--line)" />
          <XAxis
            dataKey="day"
            type="number"
            domain={[from, to]}
            allowDataOverflow
            ticks={[...dayMarks(from, to, monthMarks(from, to, 6))]}
            tickFormatter={(day: number) => dayWords(dateOfDayNumber(day))}
            stroke="var(--line-strong)"
            tick={{ fill: 'var(--ink-soft)' }}
            minTickGap={24}
          />
          <YAxis
            width={scale * 54}
            domain={[0, 1]}
            ticks={[0, 0.25, 0.5, 0.75, 1]}
            tickFormatter={(share: number) => `${Math.round(share * 100)} %`}
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
          <ReferenceLine
            x={dayNumber(today)}
            stroke="var(--ink)"
            strokeDasharray="2 2"
            label={{ value: 'today', position: 'top', fill: 'var(--ink)' }}
          />
          <Line
            dataKey="share"
            name="Share of runs"
            type="stepAfter"
            stroke="var(--chart-1)"
            strokeWidth={2}
            dot={false}
            isAnimationActive={false}
          />
          {marks.map(({ name, on, share }) => {
            const day = dayNumber(on);
            // Above the curve there is room at its left, below it at its right.
            const left = share > 0.5 && day - from > (to - from) * 0.3;
            return (
              <ReferenceDot
                key={name}
                x={day}
                y={share}
                r={4}
                fill="var(--ink)"
                stroke="var(--paper)"
                label={{
                  value: `${name} ${dayWords(on)}`,
                  position: left ? 'left' : 'right',
                  fill: 'var(--ink)',
                  // High points lie where the curve is flat: their words stand over it, or under it without room there.
                  dy: left ? -12 : share > 0.5 ? 12 : 0,
                  fontWeight: name === 'P50' ? 700 : 400,
                }}
              />
            );
          })}
        </LineChart>
      </ResponsiveContainer>
    </div>
  );
}
