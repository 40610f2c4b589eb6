/** Random lives of one part line: drafts that may or may not make sense, as people type them. */
import fc from 'fast-check';
import type { Balance, Posting } from '../../../core/ledger/accounts.ts';
import { outstandingOf, room, unsettledOf } from '../../../core/ledger/coverage.ts';
import type { EntryDraft, EntryKind, EntryPayload } from '../../../core/ledger/entry.ts';
import { isUnitMove, movable, moves, type UnitMoveKind } from '../../../core/ledger/moves.ts';
import {
  emptyPart,
  type LotState,
  lotOfDraft,
  type PartState,
  stateFromBalances,
} from '../../../core/ledger/part-state.ts';
import { postAndApply } from '../../../core/ledger/post.ts';
import { checkReversal, type HistoryEntry } from '../../../core/ledger/reverse.ts';
import { Refusal } from '../../../core/refusal.ts';

export interface Step {
  readonly kind: EntryKind;
  readonly line: number;
  readonly lot: number;
  readonly quantityMilli: number;
  readonly amountMinor: number;
  readonly estimateEachE4: number;
  readonly choice: number;
  /** Which earlier entry a reversal takes back, counted from the last. */
  readonly back: number;
}

const kinds = [
  ...['need-added', 'need-changed', 'need-dropped', 'ordered', 'acknowledged', 'back-ordered', 'shipped', 'repriced'],
  ...['received', 'received', 'over-delivered', 'accepted', 'accepted', 'rejected', 'rejected', 'sent-back'],
  ...['sent-back', 'exchanged', 'exchanged', 'refunded', 'cancelled', 'paid', 'deposit-paid', 'deposit-refunded'],
  ...['deposit-kept', 'came-in', 'allocated', 'released', 'trial-fitted', 'fitted', 'fitted', 'taken-off', 'snugged'],
  ...['verified', 'verification-withdrawn', 'lent', 'came-back', 'given-back', 'lost', 'scrapped', 'consumed'],
  ...['found-again', 'moved', 'quoted', 'reversal', 'reversal'],
] as EntryKind[];

export const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom(...kinds),
  line: fc.integer({ min: 1, max: 2 }),
  lot: fc.integer({ min: 0, max: 5 }),
  quantityMilli: fc.oneof(
    fc.integer({ min: 1, max: 6 }).map((units) => units * 1000),
    fc.integer({ min: 1, max: 5000 }),
  ),
  amountMinor: fc.integer({ min: 0, max: 20_000 }),
  estimateEachE4: fc.integer({ min: 0, max: 30_000_000 }),
  choice: fc.nat(11),
  back: fc.nat(3),
});

/** Lives long enough that units come, go, come back and are taken back. */
export const steps = fc.array(step, { minLength: 10, maxLength: 90, size: 'max' });

export interface Life {
  readonly state: PartState;
  readonly history: readonly (HistoryEntry & { readonly draft: EntryDraft })[];
  readonly refused: number;
}

/** Beginning that lets most later steps make sense: a need, an order, a receipt. */
export const opening: readonly EntryDraft[] = [
  draftOf('need-added', { quantityMilli: 8000, payload: { estimateEachE4: 15_000_000 } }),
  draftOf('ordered', { order: 1, line: 1, quantityMilli: 8000, amountMinor: 11_725 }),
  draftOf('received', { order: 1, line: 1, lot: 100, quantityMilli: 5000 }),
];

/**
 * Plays the opening and the steps. `each` sees every entry that was let in, with the state before and after it.
 */
export function live(
  steps: readonly Step[],
  each: (before: PartState, after: PartState, postings: readonly Posting[], draft: EntryDraft) => void = () => {},
): Life {
  let state: PartState = emptyPart({ part: 1, build: 1 });
  const history: (HistoryEntry & { draft: EntryDraft })[] = [];
  let refused = 0;
  const enter = (draft: EntryDraft): void => {
    const { state: after, postings } = postAndApply(state, draft);
    each(state, after, postings, draft);
    state = after;
    history.push({ seq: history.length + 1, on: draft.on, kind: draft.kind, postings, draft });
  };
  for (const draft of opening) enter(draft);
  steps.forEach((one, index) => {
    const before = JSON.stringify(state);
    try {
      if (one.kind === 'reversal') reverse(one);
      else enter(draftFor(one, state, 200 + index));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (!error.message.endsWith('Nothing was changed.')) throw new Error(`Not said in full: ${error.message}`);
      if (JSON.stringify(state) !== before) throw new Error('A refused act changed the state');
      refused += 1;
    }
  });
  return { state, history, refused };

  function reverse(one: Step): void {
    const target = history[history.length - 1 - one.back];
    if (target === undefined) return;
    const postings = checkReversal(history, target, '2026-03-02', [state]);
    const draft = draftOf('reversal', {});
    const after = foldPostings([...history.flatMap((entry) => entry.postings), ...postings], history);
    each(state, after, postings, draft);
    state = after;
    history.push({ seq: history.length + 1, on: draft.on, kind: 'reversal', reverses: target.seq, postings, draft });
  }
}

/** The state from sums of postings by key, as a table of balances holds them. */
export function foldPostings(
  postings: readonly Posting[],
  history: readonly { readonly draft: EntryDraft }[],
): PartState {
  const sums = new Map<string, Balance>();
  const orders = new Map<number, number>();
  for (const posting of postings) {
    const { account, part, line, lot } = posting;
    if (line !== 0) orders.set(line, Math.max(posting.order, orders.get(line) ?? 0));
    const key = `${account}|${line}|${lot}`;
    const before = sums.get(key) ?? { quantityMilli: 0, amountMinor: 0 };
    sums.set(key, {
      ...{ account, part, line, lot },
      quantityMilli: before.quantityMilli + posting.quantityMilli,
      amountMinor: before.amountMinor + posting.amountMinor,
    });
  }
  const lots = history.flatMap(({ draft }) => lotOfDraft(draft) ?? []);
  const lines = [...orders].map(([line, order]) => ({ line, order }));
  return stateFromBalances({ part: 1, build: 1, lines, lots }, sums.values());
}

/** A state without lots and lines that hold nothing, so that two of them can be compared. */
export function bare(state: PartState): unknown {
  return {
    ...state,
    lines: state.lines.filter((line) => line.orderedMilli !== 0),
    lots: state.lots.filter((lot) => lot.cameInMilli !== 0),
  };
}

function draftOf(kind: EntryKind, rest: Partial<EntryDraft>): EntryDraft {
  return { kind, on: '2026-03-02', build: 1, part: 1, ...rest };
}

/**
 * A draft for the step. Most are bent towards what is there (a lot that holds what the kind takes, no more than that,
 * no more than the claim or deposit); the rest stay as they fell, so that refusals are met too.
 */
function draftFor(one: Step, state: PartState, newLot: number): EntryDraft {
  const { kind, line, amountMinor, quantityMilli } = one;
  const brings = kind === 'received' || kind === 'over-delivered' || kind === 'came-in';
  const plain = draftOf(kind, {
    ...{ order: line, line, quantityMilli, amountMinor, payload: payloadFor(one, amountMinor) },
    lot: brings ? newLot : (state.lots[one.lot % Math.max(1, state.lots.length)]?.lot ?? 1),
  });
  if (one.choice === 11) return plain;
  if (isUnitMove(kind)) return bentToLots(plain, kind, state, one);
  const of = state.lines.find((other) => other.line === line);
  if (of === undefined) return plain;
  if (kind.startsWith('deposit-')) return { ...plain, amountMinor: Math.min(amountMinor, of.depositsMinor || 500) };
  if (kind === 'refunded') return { ...plain, amountMinor: Math.max(0, Math.min(amountMinor, of.claimsMinor) - 10) };
  if (kind === 'exchanged') {
    const lot = state.lots.find((other) => other.line === line && other.source === 'bought' && unsettledOf(other) > 0);
    return lot === undefined
      ? plain
      : { ...plain, lot: lot.lot, quantityMilli: Math.min(quantityMilli, unsettledOf(lot)) };
  }
  const outstanding = outstandingOf(of);
  const takes = kind === 'received' || kind === 'cancelled' || kind === 'shipped' || kind === 'back-ordered';
  return takes && outstanding > 0 ? { ...plain, quantityMilli: Math.min(quantityMilli, outstanding) } : plain;
}

function bentToLots(plain: EntryDraft, kind: UnitMoveKind, state: PartState, one: Step): EntryDraft {
  const held = (lot: LotState): number => moves[kind].from.reduce((sum, bucket) => sum + movable(lot, kind, bucket), 0);
  const able = state.lots.filter((lot) => held(lot) > 0);
  const lot = able[one.lot % Math.max(1, able.length)];
  if (lot === undefined) return plain;
  const most = kind === 'fitted' ? Math.min(held(lot), Math.max(1, room(state))) : held(lot);
  return { ...plain, lot: lot.lot, quantityMilli: one.choice % 4 === 0 ? most : Math.min(one.quantityMilli, most) };
}

function payloadFor(one: Step, amountMinor: number): EntryPayload {
  const pick = <T>(...of: readonly T[]): T => of[one.choice % of.length] as T;
  switch (one.kind) {
    case 'need-added':
    case 'need-changed':
      return pick<EntryPayload>(
        { estimateEachE4: one.estimateEachE4 },
        { needMilli: one.quantityMilli },
        { needMilli: one.quantityMilli * 2, estimateEachE4: one.estimateEachE4 },
        { estimateEachE4: null },
      );
    case 'accepted':
      return { to: pick('shelf', 'allocated') };
    case 'rejected':
      return { reason: pick('wrong part', 'faulty', 'transit damage', 'wrong quantity') };
    case 'taken-off':
      return { to: pick('allocated', 'shelf', 'rejected', 'scrapped'), reason: 'faulty' };
    case 'came-in':
      return one.choice % 5 === 0
        ? { source: 'borrowed', owner: 'a neighbour', dueOn: '2026-05-01' }
        : { source: pick('owned', 'donor', 'found', 'made'), to: pick('shelf', 'allocated') };
    case 'refunded':
      return pick<EntryPayload>({}, { feeMinor: 10 }, { closesMilli: one.quantityMilli, claimMinor: amountMinor });
    case 'paid':
      return pick<EntryPayload>({}, { cashMinor: amountMinor + 7 }, { roundingMinor: -2 });
    default:
      return { reason: 'because' };
  }
}
