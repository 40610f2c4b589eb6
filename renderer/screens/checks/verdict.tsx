import { IconAlertTriangle, IconCircleCheck, IconCircleX, IconHelpCircle } from '@tabler/icons-react';
import type { CheckRow, Verdict } from '../../../core/contract/checks.ts';
import '../../parts/state.css';

const looks = {
  holds: { icon: IconCircleCheck, tone: 'done' },
  close: { icon: IconAlertTriangle, tone: 'waits' },
  fails: { icon: IconCircleX, tone: 'blocks' },
  'lacks data': { icon: IconHelpCircle, tone: 'blocks' },
} as const;

/** Icon and word of a verdict; the colour only repeats them. */
export function VerdictMark({ verdict }: { readonly verdict: Verdict }) {
  const { icon: Mark, tone } = looks[verdict];
  return (
    <span className="state" data-tone={tone}>
      <Mark aria-hidden className="state-mark" stroke={1.8} />
      <span>{verdict}</span>
    </span>
  );
}

const order: readonly Verdict[] = ['fails', 'lacks data', 'close', 'holds'];

/** What wants a hand first: fails, lacks data, close, holds; in each by title. */
export const worstFirst = (checks: readonly CheckRow[]): readonly CheckRow[] =>
  checks.toSorted(
    (a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict) || a.title.localeCompare(b.title, 'en'),
  );
