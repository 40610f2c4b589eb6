import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Entry } from '../../../core/ledger/entry.ts';
import { foldEntries, LedgerFold } from '../../../core/ledger/fold.ts';
import { bare, type Life, live, steps } from './random-life.ts';

/** A life as a store would keep it. */
function entriesOf({ history }: Life): Entry[] {
  return history.map(({ seq, draft, reverses }) => ({
    ...draft,
    ...{ seq, act: seq, recordedAt: '2026-03-02T19:00:00Z' },
    ...(reverses === undefined ? {} : { reverses }),
  }));
}

test('folding all entries anew makes the postings that were stored, reversals among them', () => {
  fc.assert(
    fc.property(steps, (all) => {
      const life = live(all);
      const reversed = new Set(life.history.flatMap((entry) => entry.reverses ?? []));
      const folded = [...foldEntries(entriesOf(life), reversed)];
      expect(folded).toEqual(life.history.map(({ seq, postings }) => ({ seq, postings })));
      const fold = new LedgerFold();
      for (const entry of entriesOf(life)) fold.add(entry);
      expect([...fold.states()].map(bare)).toEqual([bare(life.state)]);
    }),
    { numRuns: 200 },
  );
});

const base = { on: '2026-03-02', build: 1, act: 1, recordedAt: '2026-03-02T19:00:00Z' };

test('folds budgets, contingency and bolts by their subjects', () => {
  const entries: Entry[] = [
    {
      ...base,
      seq: 1,
      kind: 'budgeted',
      subjectKind: 'build',
      subject: 1,
      amountMinor: 900,
      payload: { contingency: true },
    },
    {
      ...base,
      seq: 2,
      kind: 'contingency-drawn',
      subjectKind: 'system',
      subject: 3,
      amountMinor: 400,
      note: 'gaskets',
    },
    { ...base, seq: 3, kind: 'bolts-listed', subjectKind: 'bolt-group', subject: 3, quantityMilli: 10_000 },
    { ...base, seq: 4, kind: 'bolts-final', subjectKind: 'bolt-group', subject: 3, quantityMilli: 10_000 },
    { ...base, seq: 5, kind: 'reversal', reverses: 4 },
    {
      ...base,
      seq: 6,
      kind: 'contingency-drawn',
      subjectKind: 'phase',
      subject: 2,
      amountMinor: 500,
      note: 'machining',
    },
  ];
  const sums = [...foldEntries(entries)].map(({ postings }) =>
    postings.map((one) => `${one.account} ${one.quantityMilli || one.amountMinor}`),
  );
  expect(sums).toEqual([
    ['contingency 900'],
    ['contingency -400', 'budget 400'],
    ['bolts 10000'],
    ['bolts-final 10000'],
    ['bolts-final -10000'],
    ['contingency -500', 'budget 500'],
  ]);
});

test('says which entry makes no sense', () => {
  const lone: Entry = { ...base, seq: 5, kind: 'reversal', reverses: 4 };
  expect(() => [...foldEntries([lone])]).toThrow('Entry 5 reverses 4, which is not there');
});
