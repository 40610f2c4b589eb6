/** Units between shelf, build and engine. None of it costs anything; the engine only takes what it needs. */
import { isOurs, room } from './coverage.ts';
import type { EntryDraft } from './entry.ts';
import { lotOf } from './find-in-state.ts';
import { postScrapped } from './leaving.ts';
import { notFromHere, tooMany } from './limits.ts';
import { chooseLots, type LotPick, postMove } from './lot-choice.ts';
import { moves, type UnitMoveKind } from './moves.ts';
import type { LotState, PartState } from './part-state.ts';
import { payloadChoice, quantityOf, requireReason } from './payloads.ts';
import type { PostingList } from './posting-list.ts';
import type { RemainingRule } from './remaining.ts';
import { postIntoRejected } from './returning.ts';

const destinations = {
  allocated: 'allocated',
  released: 'shelf',
  'trial-fitted': 'trial-fitted',
  fitted: 'fitted',
  snugged: 'snug',
  verified: 'verified',
  lent: 'lent',
  'came-back': 'shelf',
} as const satisfies Partial<Record<UnitMoveKind, string>>;

export type PlainMoveKind = keyof typeof destinations;

export function isPlainMove(kind: string): kind is PlainMoveKind {
  return kind in destinations;
}

/** The draft's units, taken from its lot in the kind's order or from the payload's `from` alone. */
export function pickFromLot(state: PartState, draft: EntryDraft, kind: UnitMoveKind, lot: LotState): LotPick[] {
  const from = payloadChoice(draft, 'from', moves[kind].from);
  return chooseLots(state, kind, quantityOf(draft), { lot: lot.lot, ...(from === undefined ? {} : { from }) });
}

/** Allocated, released, trial-fitted, fitted, snug, verified, lent, came back. */
export function postPlaced(list: PostingList, state: PartState, draft: EntryDraft, kind: PlainMoveKind): RemainingRule {
  const picks = pickFromLot(state, draft, kind, lotOf(state, draft));
  if (kind === 'fitted') requireRoom(state, quantityOf(draft));
  postMove(list, state, picks, destinations[kind]);
  return { by: 'estimate' };
}

/** Fitted, snug and final units together may not be more than the need. */
function requireRoom(state: PartState, asked: number): void {
  const left = Math.max(0, room(state));
  if (asked > left) throw tooMany('need not yet fitted', left, asked);
}

/**
 * Taken off the engine: good units back to the build or the shelf, bad ones to the rejected or scrapped.
 * A fastener tightened past yield is used up once it was finally torqued; the maker's manual says which ones are.
 */
export function postTakenOff(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const lot = lotOf(state, draft);
  const to = payloadChoice(draft, 'to', ['allocated', 'shelf', 'rejected', 'scrapped']) ?? 'allocated';
  const picks = pickFromLot(state, draft, 'taken-off', lot);
  const reused = to === 'allocated' || to === 'shelf';
  if (reused) {
    refuseStretched(state, picks);
  } else {
    requireReason(draft);
    if (!isOurs(lot)) throw notFromHere('A borrowed unit goes back to its owner.', 'to', 'allocated, then given back');
    return to === 'rejected' ? postIntoRejected(list, state, lot, picks) : postScrapped(list, state, lot, picks);
  }
  postMove(list, state, picks, to);
  return { by: 'estimate' };
}

/** Verification withdrawn, with a reason. */
export function postVerificationWithdrawn(list: PostingList, state: PartState, draft: EntryDraft): RemainingRule {
  const lot = lotOf(state, draft);
  requireReason(draft);
  const picks = pickFromLot(state, draft, 'verification-withdrawn', lot);
  refuseStretched(state, picks);
  postMove(list, state, picks, payloadChoice(draft, 'to', ['fitted', 'snug']) ?? 'fitted');
  return { by: 'estimate' };
}

function refuseStretched(state: PartState, picks: readonly LotPick[]): void {
  if (!state.stretchOnce || !picks.some((pick) => pick.from === 'verified')) return;
  throw notFromHere(
    'These fasteners stretch when they are finally torqued and may not be used again; see the maker’s manual.',
    'quantity',
    'taking them off as used up, or reversing the entry if it was never torqued',
  );
}
