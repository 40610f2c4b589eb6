import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { LinesOverTime } from '../../parts/chart.tsx';
import { counted } from '../../parts/formats.ts';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

type Point = { readonly on: string; readonly count: number; readonly costMinor: number };

/** How the list grew shorter or longer, said before it is drawn. */
export function shrinkSentence(points: readonly Point[]): string {
  const now = points.at(-1)?.count ?? 0;
  const most = Math.max(0, ...points.map(({ count }) => count));
  if (most === now) return `${counted(now, 'thing blocks', 'things block')}: as many as ever before`;
  return `${counted(now, 'thing blocks', 'things block')}, down from ${most} at the most`;
}

/** The count and the cost of what blocks, over the weeks. */
export function Shrinking({ reading }: { readonly reading: { readonly build: number; readonly asOf?: string } }) {
  const { today, asOf } = useWorkspace();
  const history = useRead(['gate', reading.build, reading.asOf ?? null, 'history'], () => api.gate.history(reading));
  if (history.state === 'loading') return <Loading label="Looking back over the weeks" />;
  if (history.state === 'refused') return <RefusalNote refusal={history.refusal} onRetry={history.retry} />;
  const points = history.value;
  if (points.length < 2) return <p>A line can be drawn once the check has stood for a second day.</p>;
  const line = (value: (point: Point) => number) => points.map((point) => ({ on: point.on, value: value(point) }));
  return (
    <div className="gate-charts">
      <LinesOverTime
        title={shrinkSentence(points)}
        unit={{ kind: 'count', name: 'things that block' }}
        series={[{ name: 'Blocked', steps: true, endLabel: 'blocking', points: line(({ count }) => count) }]}
        today={asOf ?? today}
      />
      <LinesOverTime
        title="What clearing them still cost"
        unit={{ kind: 'money' }}
        series={[
          { name: 'Committed', steps: true, endLabel: 'still costs', points: line(({ costMinor }) => costMinor) },
        ]}
        today={asOf ?? today}
      />
    </div>
  );
}
