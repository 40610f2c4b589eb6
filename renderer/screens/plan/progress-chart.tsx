import type { z } from 'zod';
import type { progressPoint } from '../../../core/contract/plan.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { LinesOverTime } from '../../parts/chart.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import type { Reading } from './reading.ts';

type Point = z.infer<typeof progressPoint>;

/** A share in percent, cut to a tenth: only what is all reads as 100. */
export const percent = (share: number): number => Math.floor(share * 1000 + 1e-9) / 10;

function line(points: readonly Point[], name: string, endLabel: string, of: (point: Point) => number | null) {
  return {
    name,
    endLabel,
    steps: true,
    points: points.flatMap((point) => {
      const share = of(point);
      return share === null ? [] : [{ on: point.on, value: percent(share) }];
    }),
  };
}

/** How jobs and parts came along, day by day. */
export function ProgressChart({ reading }: { readonly reading: Reading }) {
  const workspace = useWorkspace();
  const progress = useRead(['plan', reading.build, reading.asOf ?? null, 'progress'], () => api.plan.progress(reading));
  return (
    <section className="plan-measures" aria-labelledby="progress">
      <h2 id="progress">How it came along</h2>
      <ReadView read={progress} label="Reading the progress">
        {(points) => {
          const series = [
            line(points, 'jobs by count', 'jobs by count', ({ jobsByCount }) => jobsByCount),
            line(points, 'jobs by weight', 'jobs by weight', ({ jobsByWeight }) => jobsByWeight),
            line(points, 'received', 'parts received', ({ receivedByLine }) => receivedByLine),
            line(points, 'fitted', 'parts fitted', ({ fittedByLine }) => fittedByLine),
          ].filter((one) => one.points.length > 0);
          if (series.length === 0) return <p>The curves begin with the first part or job.</p>;
          return (
            <LinesOverTime
              title="Jobs done, by count and by weight of work; part lines received and fitted"
              unit={{ kind: 'count', name: '% of all', decimals: 1 }}
              series={series}
              today={reading.asOf ?? workspace.today}
            />
          );
        }}
      </ReadView>
    </section>
  );
}
