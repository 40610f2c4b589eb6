/** Plays drafts against one part line, the way a store would. */
import type { Posting } from '../../../core/ledger/accounts.ts';
import type { EntryDraft, EntryKind, EntryPayload } from '../../../core/ledger/entry.ts';
import { emptyPart, type PartFacts, type PartState } from '../../../core/ledger/part-state.ts';
import { postAndApply } from '../../../core/ledger/post.ts';
import { Refusal } from '../../../core/refusal.ts';

export type Said = Omit<EntryDraft, 'kind' | 'on' | 'build' | 'payload' | 'quantityMilli'> & {
  readonly on?: string;
  /** Whole units. */
  readonly units?: number;
  readonly quantityMilli?: number;
  readonly payload?: EntryPayload;
};

/** A draft about part 1 of build 1; order 1, line 1 and lot 1 are written out where they are meant. */
export function said(kind: EntryKind, { units, on = '2026-03-02', ...rest }: Said = {}): EntryDraft {
  return { kind, on, build: 1, part: 1, ...(units === undefined ? {} : { quantityMilli: units * 1000 }), ...rest };
}

export function fresh(facts: Partial<PartFacts> = {}): PartState {
  return emptyPart({ part: 1, build: 1, ...facts });
}

/** The state after drafts that must all be let in. */
export function play(drafts: readonly EntryDraft[], from: PartState = fresh()): PartState {
  return drafts.reduce((state, draft) => postAndApply(state, draft).state, from);
}

/** Postings of the last draft after the others were let in. */
export function postingsOf(before: readonly EntryDraft[], draft: EntryDraft, from = fresh()): Posting[] {
  return postAndApply(play(before, from), draft).postings;
}

/** The refusal that a draft meets. */
export function refusalOf(act: () => unknown): Refusal {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('It was let in.');
}

/** Postings as a short list: "account quantity amount", quantities in whole units. */
export function inShort(postings: readonly Posting[]): string[] {
  return postings.map((posting) => {
    const quantity = posting.quantityMilli === 0 ? '' : ` ${posting.quantityMilli / 1000} units`;
    const amount = posting.amountMinor === 0 ? '' : ` ${posting.amountMinor}`;
    return `${posting.account}${quantity}${amount}`;
  });
}
