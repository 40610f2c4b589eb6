import { expect, test } from 'vitest';
import type { EntryDraft } from '../../../core/ledger/entry.ts';
import { chooseLots } from '../../../core/ledger/lot-choice.ts';
import { available, most } from '../../../core/ledger/moves.ts';
import { fresh, play, postingsOf, refusalOf, said } from './playing.ts';

const line = { order: 1, line: 1 };
const why = { payload: { reason: 'faulty' } };

/** Case D17: ordered 4, received 2, cancelled 1, one on the shelf, one fitted. */
const halfway: readonly EntryDraft[] = [
  said('need-added', { units: 4 }),
  said('ordered', { ...line, units: 4, amountMinor: 4000 }),
  said('received', { ...line, lot: 1, units: 2 }),
  said('cancelled', { ...line, units: 1 }),
  said('accepted', { lot: 1, units: 2 }),
  said('fitted', { lot: 1, units: 1 }),
];

test('D17: refused transitions name the limiting bucket and what it holds', () => {
  // Source: derived by hand, recomputed independently. Each is tried on the given state, not in sequence.
  const state = play(halfway);
  const limit = (act: () => unknown): unknown => {
    const { code, detail } = refusalOf(act);
    expect(code).toBe('not-allowed-from-here');
    return [detail['bucket'], detail['available']];
  };
  const outstanding = ['outstanding', 1000];
  expect(limit(() => play([said('received', { ...line, lot: 2, units: 2 })], state))).toEqual(outstanding);
  expect(limit(() => play([said('cancelled', { ...line, units: 2 })], state))).toEqual(outstanding);
  const inHand = ['trial-fitted + allocated + shelf', 1000];
  expect(limit(() => chooseLots(state, 'fitted', 2000))).toEqual(inHand);
  expect(limit(() => play([said('fitted', { lot: 1, units: 2 })], state))).toEqual(inHand);
  expect(limit(() => chooseLots(state, 'verified', 2000))).toEqual(['snug + fitted', 1000]);
  expect(limit(() => chooseLots(state, 'sent-back', 1000))).toEqual(['rejected (of units that came from a vendor)', 0]);
  expect(() => play([said('allocated', { lot: 1, units: 1 })], state)).not.toThrow();
});

test('says in words how many there are', () => {
  const refusal = refusalOf(() => play([said('received', { ...line, lot: 2, units: 2 })], play(halfway)));
  expect(refusal.message).toBe('The quantity asked for is 2, but outstanding is 1. Nothing was changed.');
  expect(refusal.accepted).toBe('at most 1');
  expect(refusal.field).toBe('quantity');
});

const twoLots: readonly EntryDraft[] = [
  said('need-added', { units: 8 }),
  said('ordered', { ...line, units: 8, amountMinor: 800 }),
  said('received', { ...line, lot: 5, units: 3 }),
  said('received', { ...line, lot: 7, units: 3 }),
  said('accepted', { lot: 5, units: 3 }),
  said('accepted', { lot: 7, units: 3 }),
  said('allocated', { lot: 7, units: 1 }),
];

test('chooses the bucket to take from, then the oldest lot', () => {
  const state = play(twoLots);
  expect(chooseLots(state, 'fitted', 5000)).toEqual([
    { lot: 7, from: 'allocated', quantityMilli: 1000 },
    { lot: 5, from: 'shelf', quantityMilli: 3000 },
    { lot: 7, from: 'shelf', quantityMilli: 1000 },
  ]);
  expect(chooseLots(state, 'fitted', 1000, { from: 'shelf', preferLot: 7 })).toEqual([
    { lot: 7, from: 'shelf', quantityMilli: 1000 },
  ]);
  expect(available(state, 'fitted')).toBe(6000);
  expect(refusalOf(() => chooseLots(state, 'fitted', 7000)).detail).toMatchObject({ available: 6000, asked: 7000 });
  expect(refusalOf(() => chooseLots(state, 'fitted', 4000, { lot: 7 })).detail).toMatchObject({ available: 3000 });
});

test('a fastener tightened past yield is not used again', () => {
  // Common practice: such fasteners are replaced once they were finally torqued; the maker's manual names them.
  const stretched = play(
    [...twoLots, said('fitted', { lot: 5, units: 3 }), said('verified', { lot: 5, units: 2 })],
    fresh({ stretchOnce: true }),
  );
  const off = (payload: Record<string, string>) => said('taken-off', { lot: 5, units: 1, payload });
  for (const to of ['allocated', 'shelf']) {
    const refusal = refusalOf(() => play([off({ from: 'verified', to })], stretched));
    expect(refusal.code).toBe('not-allowed-from-here');
    expect(refusal.message).toMatch(/maker’s manual\. Nothing was changed\.$/);
  }
  expect(refusalOf(() => play([said('verification-withdrawn', { lot: 5, units: 1, ...why })], stretched)).code).toBe(
    'not-allowed-from-here',
  );
  expect(() => play([off({ from: 'fitted' })], stretched)).not.toThrow();
  const usedUp = said('consumed', { lot: 5, units: 2, payload: { from: 'verified', reason: 'stretched' } });
  const after = play([usedUp], stretched);
  expect(after.lots[0]?.exits.consumed).toBe(2000);
});

test('the most that an act can move is bounded by the room on the engine', () => {
  const state = play([...twoLots, said('need-changed', { payload: { needMilli: 2000 } })]);
  expect([most(state, 'fitted'), available(state, 'fitted'), most(state, 'lent')]).toEqual([2000, 6000, 5000]);
});

test('refuses amounts that could not be held exactly', () => {
  const huge = { order: 1, units: 1, amountMinor: Number.MAX_SAFE_INTEGER };
  const once = play([said('ordered', { ...huge, line: 1 }), said('received', { ...line, lot: 1, units: 1 })]);
  const twice = play([said('ordered', { ...huge, line: 2 })], once);
  const refusal = refusalOf(() => play([said('received', { order: 1, line: 2, lot: 2, units: 1 })], twice));
  expect(refusal.code).toBe('bad-input');
  expect(refusal.message).toMatch(/larger than the workbook can hold exactly\. Nothing was changed\.$/);
  const estimate = said('need-added', { units: 1_000_000, payload: { estimateEachE4: Number.MAX_SAFE_INTEGER } });
  expect(refusalOf(() => play([estimate])).code).toBe('bad-input');
});

test('a borrowed unit may be lost, with a reason, and costs nothing', () => {
  const loan = { source: 'borrowed', owner: 'a neighbour', dueOn: '2026-05-01' };
  const borrowed = [said('need-added', { units: 1 }), said('came-in', { lot: 1, units: 1, payload: loan })];
  const postings = postingsOf(borrowed, said('lost', { lot: 1, units: 1, ...why }));
  expect(postings.map((one) => one.account)).toEqual(['allocated', 'lost']);
});

test('a refused unit that is lost gives up its claim', () => {
  const before = [...twoLots, said('rejected', { lot: 5, units: 2, ...why })];
  const state = play([said('lost', { lot: 5, units: 1, payload: { from: 'rejected', reason: 'gone' } })], play(before));
  expect([state.money.claims, state.money.loss, state.lots[0]?.exits.lost]).toEqual([100, 100, 1000]);
});
