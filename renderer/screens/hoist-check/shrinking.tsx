import { useEffect, useState } from 'react';
import { api } from '../../app/client.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { LinesOverTime } from '../../parts/chart.tsx';
import { counted } from '../../parts/formats.ts';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote, type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';

type Point = { readonly on: string; readonly count: number; readonly costMinor: number };

/** How the list grew shorter or longer, said before it is drawn. */
export function shrinkSentence(points: readonly Point[]): string {
  const now = points.at(-1)?.count ?? 0;
  const most = Math.max(0, ...points.map(({ count }) => count));
  if (most === now) return `${counted(now, 'thing blocks', 'things block')}: as many as ever before`;
  return `${counted(now, 'thing blocks', 'things block')}, down from ${most} at the most`;
}

type Reading = { readonly build: number; readonly asOf?: string };
type History =
  | { readonly state: 'loading' }
  | { readonly state: 'refused'; readonly refusal: RefusalWords }
  | { readonly state: 'ready'; readonly value: readonly Point[] };

/**
 * The past weeks take the workbook seconds to count, so no act waits for them: they are read apart from everything
 * else, again whenever `stamp` says that the check has changed. The former line stays until the next is there.
 */
function useHistory({ build, asOf }: Reading, stamp: string) {
  const [history, setHistory] = useState<History>({ state: 'loading' });
  const [attempt, setAttempt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the stamp and the attempt are what asks again
  useEffect(() => {
    let dropped = false;
    const answer = (next: History) => {
      if (!dropped) setHistory(next);
    };
    const soon = setTimeout(() => {
      api.gate.history(asOf === undefined ? { build } : { build, asOf }).then(
        (value) => answer({ state: 'ready', value }),
        (error: unknown) => answer({ state: 'refused', refusal: refusalWords(error) }),
      );
    }, 400);
    return () => {
      dropped = true;
      clearTimeout(soon);
    };
  }, [build, asOf, stamp, attempt]);
  return { history, retry: () => setAttempt((count) => count + 1) };
}

export interface ShrinkingProps {
  readonly reading: Reading;
  /** Changes with what the check says now. */
  readonly stamp: string;
}

/** The count and the cost of what blocks, over the weeks. */
export function Shrinking({ reading, stamp }: ShrinkingProps) {
  const { today, asOf } = useWorkspace();
  const { history, retry } = useHistory(reading, stamp);
  if (history.state === 'loading') return <Loading label="Looking back over the weeks" />;
  if (history.state === 'refused') return <RefusalNote refusal={history.refusal} onRetry={retry} />;
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
