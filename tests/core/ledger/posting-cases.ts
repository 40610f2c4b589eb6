/** Beginnings that the cases of the posting table share. */
import type { EntryDraft } from '../../../core/ledger/entry.ts';
import { said } from './playing.ts';

export const line = { order: 1, line: 1 };
export const each = 1500_0000;
export const needed = said('need-added', { units: 8, payload: { estimateEachE4: each } });
export const ordered = said('ordered', { ...line, units: 8, amountMinor: 8000 });
export const received = said('received', { ...line, lot: 1, units: 8 });
export const accepted = said('accepted', { lot: 1, units: 8 });
export const onShelf = [needed, ordered, received, accepted];
export const rejected = said('rejected', { lot: 1, units: 2, payload: { reason: 'faulty' } });
export const sentBack = said('sent-back', { lot: 1, units: 2 });
export const fitted = said('fitted', { lot: 1, units: 4 });
export const verified = said('verified', { lot: 1, units: 3 });
export const why = { payload: { reason: 'dropped on the floor' } };
export const loan = { source: 'borrowed', owner: 'a neighbour', dueOn: '2026-05-01' };

/** What an entry must post after others were let in, in short form. */
export interface Case {
  readonly name: string;
  readonly before: readonly EntryDraft[];
  readonly draft: EntryDraft;
  readonly posts: readonly string[];
}

export type Rows = readonly (readonly [number, readonly Case[]])[];
