import { memo } from 'react';
import type { PlanBar } from '../../../core/contract/plan.ts';
import type { BarsRow } from './bars-rows.ts';
import { type Scale, spanOf } from './bars-scale.ts';

export interface ArrowsProps {
  readonly base: string;
  readonly rows: readonly BarsRow[];
  readonly scale: Scale;
  readonly rowHeight: number;
  /** The job whose arrows stand out. */
  readonly chosen: number | null;
}

/** From the end of each earlier job to the beginning of the one that waits for it. */
function arrowsOf(rows: readonly BarsRow[], scale: Scale, rowHeight: number) {
  const places = new Map<number, { readonly bar: PlanBar; readonly y: number }>();
  rows.forEach((row, index) => {
    if (row.kind === 'bar') places.set(row.bar.id, { bar: row.bar, y: (index + 0.5) * rowHeight });
  });
  return [...places.values()].flatMap(({ bar, y }) =>
    bar.after.flatMap(({ job }) => {
      const before = places.get(job);
      const [from, to] = [before === undefined ? null : spanOf(scale, before.bar), spanOf(scale, bar)];
      if (before === undefined || from === null || to === null) return [];
      const out = from.x + from.width;
      const turn = Math.max(out + 4, to.x - 6);
      const half = rowHeight / 2;
      const down = y > before.y ? -half : half;
      const path =
        turn <= to.x - 4
          ? `M${out} ${before.y}H${turn}V${y}H${to.x - 1}`
          : `M${out} ${before.y}h4V${y + down}H${to.x - 7}V${y}h6`;
      return [{ key: `${job}-${bar.id}`, path, ends: [job, bar.id] }];
    }),
  );
}

/** What waits for what. */
export const Arrows = memo(function Arrows({ base, rows, scale, rowHeight, chosen }: ArrowsProps) {
  return arrowsOf(rows, scale, rowHeight).map(({ key, path, ends }) => {
    const strong = chosen !== null && ends.includes(chosen);
    return (
      <path
        key={key}
        d={path}
        className="bars-arrow"
        data-strong={strong || undefined}
        markerEnd={`url(#${base}-head)`}
        fill="none"
      />
    );
  });
});
