import type { BarState, BarsView, PlanBar } from '../../../core/contract/plan.ts';

/** Which jobs the bars show. */
export type BarsShown = 'open' | 'all';

export type BarsRow =
  | { readonly kind: 'phase'; readonly key: string; readonly name: string }
  | { readonly kind: 'bar'; readonly key: string; readonly bar: PlanBar };

/** The rows of the drawing: each phase, then its jobs by beginning. */
export function rowsOf(view: Pick<BarsView, 'phases' | 'bars'>, shown: BarsShown): BarsRow[] {
  const known = new Set(view.phases.map(({ id }) => id));
  const seen = view.bars.filter(({ state }) => shown === 'all' || state !== 'done');
  return view.phases.flatMap(({ id, name }): BarsRow[] => {
    const own = seen.filter(({ phase }) => (id === null ? phase === null || !known.has(phase) : phase === id));
    if (own.length === 0) return [];
    const sorted = own.toSorted((a, b) =>
      (a.startOn ?? '9999') < (b.startOn ?? '9999') ? -1 : a.startOn === b.startOn ? 0 : 1,
    );
    return [
      { kind: 'phase', key: `phase ${id}`, name },
      ...sorted.map((bar): BarsRow => ({ kind: 'bar', key: `job ${bar.id}`, bar })),
    ];
  });
}

/** The state as a bar says it. */
export const stateWords: Readonly<Record<BarState, string>> = {
  done: 'done',
  'in hand': 'in hand',
  'waiting for parts': 'waits for parts',
  'waiting for a tool': 'waits for a tool',
  'waiting for another job': 'waits for a job',
  free: 'free',
};
