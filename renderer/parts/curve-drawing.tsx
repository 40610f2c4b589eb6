import {
  CartesianGrid,
  Line,
  LineChart,
  ReferenceArea,
  ReferenceDot,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { usePreferences } from '../app/preferences.ts';
import type { CurvePoint, CurveProps } from './curve.tsx';
import { useLocale } from './locale.tsx';

interface Pointed {
  readonly active?: boolean | undefined;
  readonly payload?: ReadonlyArray<{ readonly payload?: CurvePoint }> | undefined;
}

function Reading({ pointed, props }: { readonly pointed: Pointed; readonly props: CurveProps }) {
  const point = pointed.payload?.[0]?.payload;
  if (pointed.active !== true || point === undefined || point.y === null) return null;
  return (
    <div className="chart-reading" role="status">
      <span>
        {props.xName}: {props.xText(point.x)}
      </span>
      <strong>{props.yText(point.y)}</strong>
      {point.remark !== '' && <span className="chart-remark">{point.remark}</span>}
    </div>
  );
}

const zoneWords = { none: '', warning: 'warns', grave: 'danger', refused: 'no result' } as const;
const zoneColour = {
  none: 'none',
  warning: 'var(--warn)',
  grave: 'var(--blocks)',
  refused: 'var(--ink-soft)',
} as const;

/** A line over numbers, drawn, with the stretches in which it warns and a mark where things stand. */
export default function CurveDrawing(props: CurveProps) {
  const { title, points, stretches, present, xName, yName } = props;
  const { language } = useLocale();
  const scale = usePreferences().density === 'bench' ? 1.25 : 1;
  const short = new Intl.NumberFormat(language, { maximumSignificantDigits: 4 });
  const [from, to] = [points[0]?.x ?? 0, points.at(-1)?.x ?? 1];
  // The words stand on the side of the line that it doesn't run to.
  const right = present === null || present.x <= (from + to) / 2;
  const ends = points.filter(({ y }) => y !== null);
  const rising = (ends.at(-1)?.y ?? 0) > (ends[0]?.y ?? 0);
  const inside = present !== null && present.x >= from && present.x <= to;
  return (
    <div className="chart-drawing">
      <ResponsiveContainer width="100%" height="100%">
        <LineChart
          data={[...points]}
          title={title}
          desc="Left and right arrow keys read the values at each point."
          margin={{ top: 24, right: 24, bottom: 22, left: 4 }}
        >
          <CartesianGrid vertical={false} stroke="var(--line)" />
          {stretches.map((stretch) => (
            <ReferenceArea
              key={`${stretch.from} ${stretch.level}`}
              x1={stretch.from}
              x2={stretch.to}
              fill={zoneColour[stretch.level]}
              fillOpacity={0.12}
              strokeOpacity={0}
              label={
                // A narrow stretch has no room for its word; the table and the reading say it.
                stretch.to - stretch.from < (to - from) / 6
                  ? ''
                  : { value: zoneWords[stretch.level], position: 'insideTop', fill: 'var(--ink)' }
              }
            />
          ))}
          <XAxis
            dataKey="x"
            type="number"
            domain={[from, to]}
            tickCount={6}
            tickFormatter={(value: number) => short.format(value)}
            stroke="var(--line-strong)"
            tick={{ fill: 'var(--ink-soft)' }}
            label={{ value: xName, position: 'insideBottom', offset: -14, fill: 'var(--ink-soft)' }}
          />
          <YAxis
            width={scale * 66}
            domain={['auto', 'auto']}
            tickFormatter={(value: number) => short.format(value)}
            stroke="var(--line-strong)"
            tick={{ fill: 'var(--ink-soft)' }}
            axisLine={false}
            tickLine={false}
            label={{
              value: yName,
              position: 'top',
              offset: 10,
              fill: 'var(--ink-soft)',
              textAnchor: 'start',
              dx: -scale * 33,
            }}
          />
          <Tooltip
            isAnimationActive={false}
            cursor={{ stroke: 'var(--ink-soft)' }}
            content={(pointed) => <Reading pointed={pointed as Pointed} props={props} />}
          />
          <Line
            dataKey="y"
            name={yName}
            stroke="var(--chart-1)"
            strokeWidth={2}
            dot={false}
            isAnimationActive={false}
          />
          {inside && <ReferenceLine x={present.x} stroke="var(--ink)" strokeDasharray="2 2" />}
          {inside && (
            <ReferenceDot
              x={present.x}
              y={present.y}
              r={5}
              fill="var(--ink)"
              stroke="var(--paper)"
              label={{
                value: `now ${props.yText(present.y)}`,
                position: right ? 'right' : 'left',
                dy: right === rising ? 12 : -12,
                fill: 'var(--ink)',
              }}
            />
          )}
        </LineChart>
      </ResponsiveContainer>
    </div>
  );
}
