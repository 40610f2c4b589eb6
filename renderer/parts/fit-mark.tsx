import {
  IconAlertTriangle,
  IconCircle,
  IconCircleCheck,
  IconCircleX,
  IconHelpCircle,
  IconPencilCheck,
  IconPlug,
} from '@tabler/icons-react';
import type { ConnectionRow, DeclaredRow } from '../../core/contract/fits.ts';
import './state.css';

/** Icon, words and tone of whatever a fit comes to; the icons differ in shape, so that colour only repeats the words. */
export const fitLooks = {
  mates: { icon: IconCircleCheck, words: 'They mate', tone: 'done' },
  adapter: { icon: IconPlug, words: 'Only with an adapter', tone: 'waits' },
  lookalike: { icon: IconAlertTriangle, words: 'Look-alike: do not join', tone: 'blocks' },
  no: { icon: IconCircleX, words: 'They do not fit', tone: 'blocks' },
  unknown: { icon: IconHelpCircle, words: 'Not known yet', tone: 'waits' },
  pass: { icon: IconCircleCheck, words: 'Fits', tone: 'done' },
  fail: { icon: IconCircleX, words: 'Does not fit', tone: 'blocks' },
  'not asked': { icon: IconCircle, words: 'Not asked here', tone: 'quiet' },
  adapted: { icon: IconPlug, words: 'Fits with its adapter', tone: 'done' },
  accepted: { icon: IconPencilCheck, words: 'Accepted with a reason', tone: 'waits' },
} as const;

export type FitLook = keyof typeof fitLooks;

/** What a connection is shown as: its verdict, unless an adapter or a reason that still holds settled it. */
export function lookOf({ fit, stands, adapter, accepted }: ConnectionRow): FitLook {
  if (accepted !== null && !accepted.lapsed && fit.verdict !== 'mates') return 'accepted';
  return stands === 'fits' && adapter !== null && fit.verdict !== 'mates' ? 'adapted' : fit.verdict;
}

export const declaredLookOf = ({ outcome, accepted }: DeclaredRow): FitLook =>
  accepted !== null && !accepted.lapsed && outcome === 'fail' ? 'accepted' : outcome;

export interface FitMarkProps {
  /** A verdict or an outcome; what isn't known here is shown as a misfit, in its own words. */
  readonly look: FitLook | (string & {});
}

/** Icon and words of a fit's verdict. */
export function FitMark({ look }: FitMarkProps) {
  const known = Object.hasOwn(fitLooks, look);
  const { icon: Mark, words, tone } = fitLooks[known ? (look as FitLook) : 'fail'];
  return (
    <span className="state fit-mark" data-tone={tone}>
      <Mark aria-hidden className="state-mark" stroke={1.8} />
      <span>{known ? words : look}</span>
    </span>
  );
}
