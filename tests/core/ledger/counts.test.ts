/** Jobs, tools, decisions, bolts, budgets, waivers. Source: the product's own rules; no published source. */
import { expect, test } from 'vitest';
import { boltStates } from '../../../core/ledger/bolts.ts';
import { isCountKind, postCount } from '../../../core/ledger/counts.ts';
import { type EntryDraft, type EntryKind, entryKinds } from '../../../core/ledger/entry.ts';
import { isPartKind } from '../../../core/ledger/post.ts';
import type { SubjectBalances } from '../../../core/ledger/subject-posting.ts';
import { refusalOf } from './playing.ts';

const build = 1;

function about(
  subjectKind: NonNullable<EntryDraft['subjectKind']>,
  kind: EntryKind,
  rest: Partial<EntryDraft> = {},
): EntryDraft {
  return { kind, on: '2026-03-02', build, subjectKind, subject: 4, ...rest };
}

/** Balances after drafts about one subject, the build's contingency among them. */
function after(drafts: readonly EntryDraft[]): SubjectBalances {
  const current: { -readonly [A in keyof SubjectBalances]: SubjectBalances[A] } = {};
  for (const draft of drafts) {
    for (const { account, quantityMilli, amountMinor } of postCount(draft, current)) {
      const before = current[account] ?? { quantityMilli: 0, amountMinor: 0 };
      current[account] = {
        quantityMilli: before.quantityMilli + quantityMilli,
        amountMinor: before.amountMinor + amountMinor,
      };
    }
  }
  return current;
}

test('every kind is about a part line, a count, or the taking back of another', () => {
  const neither = entryKinds.filter((kind) => isPartKind(kind) === isCountKind(kind));
  expect(neither).toEqual(['reversal']);
});

test.each([
  ['job', ['job-planned', 'job-done', 'job-reopened', 'job-dropped']],
  ['tool', ['tool-listed', 'tool-at-hand', 'tool-away', 'tool-at-hand', 'tool-dropped']],
  ['decision', ['decision-listed', 'decision-made', 'decision-reopened', 'decision-dropped']],
] as const)('a %s goes through its states and leaves nothing behind', (subject, kinds) => {
  const left = after(kinds.map((kind) => about(subject, kind)));
  expect(Object.values(left).every((one) => one.quantityMilli === 0)).toBe(true);
});

test.each([
  ['job', 'job-done', []],
  ['job', 'job-done', ['job-planned', 'job-done']],
  ['job', 'job-reopened', ['job-planned']],
  ['job', 'job-dropped', ['job-planned', 'job-done']],
  ['tool', 'tool-at-hand', []],
  ['tool', 'tool-away', ['tool-listed']],
  ['decision', 'decision-made', []],
  ['build', 'gate-passed', ['gate-passed']],
  ['job', 'waiver-ended', []],
] as const)('%s: refuses %s after %j', (subject, kind, before) => {
  const current = after(before.map((one) => about(subject, one)));
  const refusal = refusalOf(() => postCount(about(subject, kind), current));
  expect(refusal.code).toBe('not-allowed-from-here');
  expect(refusal.message).toMatch(/Nothing was changed\.$/);
});

const bolts = (kind: EntryKind, units?: number, from?: string): EntryDraft =>
  about('bolt-group', kind, {
    ...(units === undefined ? {} : { quantityMilli: units * 1000 }),
    ...(from === undefined ? {} : { payload: { from } }),
  });

test('bolts turn from straight to snug to final and back', () => {
  const listed = [bolts('bolts-listed', 10), bolts('bolts-snugged', 6)];
  expect(boltStates(after(listed))).toEqual({ straight: 4000, snug: 6000, final: 0 });
  const final = [...listed, bolts('bolts-final', 8)];
  expect(boltStates(after(final))).toEqual({ straight: 2000, snug: 0, final: 8000 });
  const loosened = [...final, bolts('bolts-loosened', 3)];
  expect(boltStates(after(loosened))).toEqual({ straight: 5000, snug: 0, final: 5000 });
  expect(boltStates(after([...listed, bolts('bolts-final', 2, 'straight')]))).toEqual({
    straight: 2000,
    snug: 6000,
    final: 2000,
  });
  expect(boltStates(after([...final, bolts('bolts-dropped')]))).toEqual({ straight: 0, snug: 0, final: 0 });
});

test('refuses more bolts than the group has', () => {
  const current = after([bolts('bolts-listed', 10), bolts('bolts-final', 8)]);
  const detail = (draft: EntryDraft): unknown => refusalOf(() => postCount(draft, current)).detail;
  expect(detail(bolts('bolts-final', 3))).toEqual({ bucket: 'snug + straight', available: 2000, asked: 3000 });
  expect(detail(bolts('bolts-snugged', 3))).toMatchObject({ bucket: 'straight', available: 2000 });
  expect(detail(bolts('bolts-loosened', 9))).toMatchObject({ bucket: 'final + snug', available: 8000 });
  expect(detail(bolts('bolts-dropped', 3))).toMatchObject({ bucket: 'straight', available: 2000 });
});

test('contingency is drawn into a budget and never below zero', () => {
  const budget = (kind: EntryKind, amountMinor: number, contingency = false): EntryDraft =>
    about('system', kind, { amountMinor, payload: { contingency, reason: 'head needed work' } });
  const books = after([
    budget('budgeted', 100_000),
    budget('budgeted', 20_000, true),
    budget('contingency-drawn', 5000),
  ]);
  expect([books.budget?.amountMinor, books.contingency?.amountMinor]).toEqual([105_000, 15_000]);
  const posted = postCount(budget('contingency-drawn', 5000), books);
  expect(posted.map((one) => [one.account, one.subjectKind, one.subject])).toEqual([
    ['contingency', 'build', build],
    ['budget', 'system', 4],
  ]);
  expect(refusalOf(() => postCount(budget('contingency-drawn', 15_001), books)).detail).toMatchObject({
    available: 15_000,
  });
  expect(refusalOf(() => postCount(budget('budgeted', -105_001), books)).detail).toMatchObject({ bucket: 'budget' });
});

test('a waiver needs a reason', () => {
  expect(refusalOf(() => postCount(about('job', 'waived'), {})).code).toBe('needs-reason');
  const waived = [about('job', 'waived', { note: 'the owner agreed' })];
  expect(after(waived).waived?.quantityMilli).toBe(1000);
  const onPart: EntryDraft = { kind: 'waived', on: '2026-03-02', build, part: 9, note: 'temporary gasket agreed' };
  expect(postCount(onPart, {})[0]).toMatchObject({ account: 'waived', part: 9, subjectKind: '', subject: 0 });
});
