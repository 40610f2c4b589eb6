import {
  IconAlertTriangle,
  IconCircleCheck,
  IconCircleDashed,
  IconCircleX,
  IconHelpCircle,
  IconTools,
} from '@tabler/icons-react';
import type { LineRow } from '../../../core/contract/plumbing.ts';
import '../../parts/state.css';

const looks = {
  pass: { icon: IconCircleCheck, tone: 'done' },
  caution: { icon: IconAlertTriangle, tone: 'waits' },
  fail: { icon: IconCircleX, tone: 'blocks' },
  unknown: { icon: IconHelpCircle, tone: 'waits' },
} as const;

type Verdict = LineRow['verdict'];

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

const standings = {
  made: { icon: IconCircleCheck, tone: 'done' },
  unfit: { icon: IconCircleX, tone: 'blocks' },
  'not made': { icon: IconCircleDashed, tone: 'waits' },
} as const;

/** How far the line is made, as icon and words. */
export function MadeMark({ row }: { readonly row: Pick<LineRow, 'standing' | 'stepsDone' | 'stepsTotal'> }) {
  const { stepsDone: done, stepsTotal: total, standing } = row;
  const begun = standing === 'not made' && done > 0;
  const { icon, tone } = standings[standing];
  const Mark = begun ? IconTools : icon;
  return (
    <span className="state" data-tone={begun ? 'moves' : tone}>
      <Mark aria-hidden className="state-mark" stroke={1.8} />
      <span>{begun ? 'begun' : standing}</span>
      {total > 0 && (
        <span className="figure">
          {done} of {total}
        </span>
      )}
    </span>
  );
}

const order: readonly Verdict[] = ['fail', 'unknown', 'caution', 'pass'];

/** What wants a hand first: fail, unknown, caution, pass; in each as they came. */
export const worstFirst = <Row extends { readonly verdict: Verdict }>(rows: readonly Row[]): readonly Row[] =>
  rows.toSorted((one, other) => order.indexOf(one.verdict) - order.indexOf(other.verdict));
