import { usePlotArea, useXAxisScale, useYAxisScale } from 'recharts';
import { dayNumber } from '../../core/dates/calendar-date.ts';
import { seriesColour } from '../app/theme.ts';
import { spreadLabels, type TimeSeries } from './chart-figures.ts';

/** The name of each line where it ends, in its colour, kept apart from its neighbours. */
export function EndLabels({ series }: { readonly series: readonly TimeSeries[] }) {
  const xScale = useXAxisScale();
  const yScale = useYAxisScale();
  const plot = usePlotArea();
  if (xScale === undefined || yScale === undefined || plot === undefined) return null;
  const ends = series.flatMap(({ name, endLabel, points }) => {
    const last = points.at(-1);
    const x = last === undefined ? undefined : xScale(dayNumber(last.on));
    const y = last === undefined ? undefined : yScale(last.value);
    return typeof x === 'number' && typeof y === 'number' ? [{ name, text: endLabel ?? name, x, y }] : [];
  });
  const heights = spreadLabels(
    ends.map(({ y }) => y),
    16,
    plot.y + plot.height,
  );
  const right = plot.x + plot.width;
  return (
    <g>
      {ends.map(({ name, text, x, y }, index) => {
        const height = heights[index] ?? y;
        const away = right - x > 4 || Math.abs(height - y) > 4;
        return (
          <g key={name}>
            {away && (
              <path
                d={`M${x + 3} ${y}L${right + 6} ${height}`}
                stroke={seriesColour(name)}
                strokeOpacity={0.45}
                fill="none"
              />
            )}
            <text x={right + 9} y={height} dominantBaseline="central" fill={seriesColour(name)} fontWeight={560}>
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
}
