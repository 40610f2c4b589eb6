/**
 * The posting table: what every kind of entry about a part line moves, and what it refuses. One function per kind
 * lives in the file of its subject; this file only says which, and adds the change of the remaining estimate.
 */
import type { Posting } from './accounts.ts';
import { postCameIn } from './coming-in.ts';
import { covered } from './coverage.ts';
import { postDepositClosed, postDepositPaid } from './deposits.ts';
import type { EntryDraft, EntryKind } from './entry.ts';
import { isLeaving, postFoundAgain, postLeaving } from './leaving.ts';
import { postNeedAdded, postNeedChanged, postNeedDropped } from './needs.ts';
import { postCancelled, postOrdered, postRelabelled } from './ordering.ts';
import { applyPostings, lotOfDraft, type PartState } from './part-state.ts';
import { postPaid } from './paying.ts';
import { badInput } from './payloads.ts';
import { isPlainMove, postPlaced, postTakenOff, postVerificationWithdrawn } from './placing.ts';
import { PostingList } from './posting-list.ts';
import { postAccepted, postOverDelivered, postReceived } from './receiving.ts';
import { type RemainingRule, remainingChange } from './remaining.ts';
import { postRepriced } from './repricing.ts';
import { postExchanged, postRefunded, postRejected, postSentBack } from './returning.ts';

/** Kinds that say something about a part line and move nothing. */
export const silentPartKinds = ['quoted', 'promised', 'chased', 'put-in-bin', 'old-unit-sent'] as const;

type Poster = (list: PostingList, state: PartState, draft: EntryDraft) => RemainingRule;

const nothing: Poster = () => ({ by: 'estimate' });

const posters: Partial<Record<EntryKind, Poster>> = {
  ...Object.fromEntries(silentPartKinds.map((kind) => [kind, nothing])),
  'need-added': postNeedAdded,
  'need-changed': postNeedChanged,
  'need-dropped': postNeedDropped,
  ordered: postOrdered,
  acknowledged: (list, state, draft) => postRelabelled(list, state, draft, 'acknowledged'),
  'back-ordered': (list, state, draft) => postRelabelled(list, state, draft, 'back-ordered'),
  shipped: (list, state, draft) => postRelabelled(list, state, draft, 'shipped'),
  repriced: postRepriced,
  received: postReceived,
  'over-delivered': postOverDelivered,
  accepted: postAccepted,
  rejected: postRejected,
  'sent-back': postSentBack,
  exchanged: postExchanged,
  refunded: postRefunded,
  cancelled: postCancelled,
  paid: postPaid,
  'deposit-paid': postDepositPaid,
  'deposit-refunded': (list, state, draft) => postDepositClosed(list, state, draft, 'deposit-refunded'),
  'deposit-kept': (list, state, draft) => postDepositClosed(list, state, draft, 'deposit-kept'),
  'came-in': postCameIn,
  'taken-off': postTakenOff,
  'verification-withdrawn': postVerificationWithdrawn,
  'found-again': postFoundAgain,
};

function posterOf(kind: EntryKind): Poster | undefined {
  if (isPlainMove(kind)) return (list, state, draft) => postPlaced(list, state, draft, kind);
  if (isLeaving(kind)) return (list, state, draft) => postLeaving(list, state, draft, kind);
  return posters[kind];
}

/** Whether a kind is about a part line, so that `post` takes it. */
export function isPartKind(kind: EntryKind): boolean {
  return posterOf(kind) !== undefined;
}

/**
 * What an entry moves on the part line as it stands. Pure: nothing is changed but by applying the postings.
 * The columns and payload that each kind needs are listed in payloads.ts.
 * @throws Refusal `not-allowed-from-here` when the buckets don't hold that many (detail: bucket, available, asked),
 * `needs-reason`, `not-found` for an unknown line or lot, `bad-input` for anything missing or out of range.
 * @throws Error for a kind that isn't about a part line, or another part's draft: a mistake of the program.
 */
export function post(state: PartState, draft: EntryDraft): Posting[] {
  const poster = posterOf(draft.kind);
  if (poster === undefined) throw new Error(`post: “${draft.kind}” is not about a part line`);
  if ((draft.part ?? state.part) !== state.part) throw new Error('post: the draft is about another part line');
  const list = new PostingList(state);
  const rule = poster(list, state, draft);
  if (list.postings.length === 0) return [];
  const lot = lotOfDraft(draft);
  const after = applyPostings(state, list.postings, lot === undefined ? [] : [lot]);
  list.part('remaining', { amountMinor: remainingChange(state, after, rule) });
  requireExact(list.postings, after);
  return list.postings;
}

/** Past 2^53 sums would no longer be exact; nobody builds an engine for that much. */
function requireExact(postings: readonly Posting[], after: PartState): void {
  const amounts = [...postings.flatMap((one) => [one.amountMinor, one.quantityMilli]), ...Object.values(after.money)];
  const units = [after.needMilli, covered(after), ...after.lines.map((line) => line.commitmentMinor)];
  if ([...amounts, ...units].every(Number.isSafeInteger)) return;
  throw badInput('amount or quantity', 'is larger than the workbook can hold exactly', 'a smaller one');
}

/** An entry's postings and the state that they lead to. @throws as `post`. */
export function postAndApply(state: PartState, draft: EntryDraft): { state: PartState; postings: Posting[] } {
  const postings = post(state, draft);
  const lot = lotOfDraft(draft);
  return { postings, state: applyPostings(state, postings, lot === undefined ? [] : [lot]) };
}
