import { expect, test } from 'vitest';
import type { EntryDraft } from '../../../core/ledger/entry.ts';
import { figures } from '../../../core/ledger/figures.ts';
import { applyPostings, type PartState } from '../../../core/ledger/part-state.ts';
import { postAndApply } from '../../../core/ledger/post.ts';
import { checkFloors, checkReversal, floorBreaks, type HistoryEntry } from '../../../core/ledger/reverse.ts';
import { fresh, refusalOf, said } from './playing.ts';

const line = { order: 1, line: 1 };

/** A small journal: entries are numbered, reversals checked as a store does. */
class Journal {
  state: PartState = fresh();
  readonly history: HistoryEntry[] = [];

  enter(...drafts: readonly EntryDraft[]): this {
    for (const draft of drafts) {
      const { state, postings } = postAndApply(this.state, draft);
      this.state = state;
      this.history.push({ seq: this.history.length + 1, on: draft.on, kind: draft.kind, postings });
    }
    return this;
  }

  reverse(seq: number, on = '2026-03-20'): this {
    const entry = this.history.find((one) => one.seq === seq);
    if (entry === undefined) throw new Error(`no entry ${seq}`);
    const postings = checkReversal(this.history, entry, on, [this.state]);
    this.state = applyPostings(this.state, postings);
    this.history.push({ seq: this.history.length + 1, on, kind: 'reversal', reverses: seq, postings });
    return this;
  }
}

test('D18: correction by reversal', () => {
  // Source: derived by hand, recomputed independently. The case numbers its entries from 1; the order comes before.
  const journal = new Journal().enter(said('ordered', { ...line, units: 1, amountMinor: 12_500 }));
  journal.enter(said('paid', { ...line, amountMinor: 12_500 })).reverse(2);
  journal.enter(said('paid', { ...line, amountMinor: 1250 }));
  expect(figures(journal.state).paidMinor).toBe(1250);
  expect(journal.history.length - 1).toBe(3);
  const again = refusalOf(() => journal.reverse(2));
  expect([again.code, again.detail['entry']]).toEqual(['already-reversed', 3]);
  // The reversal is itself reversed: the first payment is back.
  journal.reverse(3);
  expect(figures(journal.state).paidMinor).toBe(13_750);
});

const fittedLife: readonly EntryDraft[] = [
  said('need-added', { units: 2, payload: { estimateEachE4: 10_000_000 }, on: '2026-03-01' }),
  said('ordered', { ...line, units: 2, amountMinor: 2000, on: '2026-03-01' }),
  said('received', { ...line, lot: 1, units: 2, on: '2026-03-05' }),
  said('accepted', { lot: 1, units: 2, on: '2026-03-05' }),
  said('fitted', { lot: 1, units: 2, on: '2026-03-09' }),
];

test('a receipt whose units are fitted is not taken back; the later entries are named, latest first', () => {
  const journal = new Journal().enter(...fittedLife);
  const refusal = refusalOf(() => journal.reverse(3));
  expect(refusal.code).toBe('floor');
  expect(refusal.detail['entries']).toEqual([5, 4]);
  expect(refusal.message).toMatch(
    /Reverse first: fitted on 2026-03-09 \(entry 5\), accepted on 2026-03-05 \(entry 4\)\./,
  );
  expect(refusal.message).toMatch(/Nothing was changed\.$/);
  // In the order named it goes through.
  expect(figures(journal.reverse(5).reverse(4).reverse(3).state).costMinor).toBe(0);
});

test('a reversal dated back may not leave a later day short', () => {
  const journal = new Journal().enter(...fittedLife).reverse(5, '2026-03-12');
  // Units came off the engine on the 12th; on the 10th they were still on it.
  expect(refusalOf(() => journal.reverse(4, '2026-03-10')).detail['on']).toBe('2026-03-10');
  expect(() => journal.reverse(4, '2026-03-12')).not.toThrow();
});

test('a need is not taken back from under fitted units', () => {
  const refusal = refusalOf(() => new Journal().enter(...fittedLife).reverse(1));
  expect(refusal.code).toBe('floor');
  expect(refusal.detail['entries']).toEqual([5, 4, 3, 2]);
});

test('names the first day on which an account falls below zero', () => {
  const journal = new Journal().enter(...fittedLife);
  expect(floorBreaks(journal.history)).toEqual([]);
  // Fitted a day before it was accepted: sound at the end, short on the 4th.
  const early = journal.history.map((entry) => (entry.kind === 'fitted' ? { ...entry, on: '2026-03-04' } : entry));
  expect(floorBreaks(early)).toEqual([
    { account: 'shelf', part: 1, line: 1, lot: 1, on: '2026-03-04', quantityMilli: -2000, amountMinor: 0 },
  ]);
});

test('an order dated before the need was typed in is no break', () => {
  const journal = new Journal().enter(
    said('need-added', { units: 2, payload: { estimateEachE4: 10_000_000 }, on: '2026-03-10' }),
    said('ordered', { ...line, units: 2, amountMinor: 2000, on: '2026-02-01' }),
  );
  expect(floorBreaks(journal.history)).toEqual([]);
});

test('an entry dated back may not leave a later day short', () => {
  const journal = new Journal().enter(...fittedLife.slice(0, 4), said('lent', { lot: 1, units: 2, on: '2026-03-08' }));
  journal.enter(said('came-back', { lot: 1, units: 2, on: '2026-03-15' }));
  const { postings } = postAndApply(journal.state, said('fitted', { lot: 1, units: 1 }));
  const entry = { seq: 7, kind: 'fitted', postings } as const;
  expect(() => checkFloors(journal.history, { ...entry, on: '2026-03-15' })).not.toThrow();
  const refusal = refusalOf(() => checkFloors(journal.history, { ...entry, on: '2026-03-06' }));
  expect([refusal.code, refusal.detail['bucket'], refusal.detail['on']]).toEqual(['floor', 'shelf', '2026-03-08']);
  expect(refusal.message).toBe('On 2026-03-08 shelf would stand below zero. Nothing was changed.');
});
