import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type BudgetPlan, budgetStatus, checkBudgetChange, currentBudget } from '../../../core/budget/budget.ts';
import { Refusal } from '../../../core/refusal.ts';

const block = { id: 1, system: 10, phase: 20 };
const worked: BudgetPlan = {
  lines: [block],
  changes: [
    { lineId: 1, on: '2026-01-01', kind: 'change', amountMinor: 850_000, reason: 'first guess' },
    { lineId: null, on: '2026-01-01', kind: 'contingency', amountMinor: 80_000, reason: 'for surprises' },
    { lineId: 1, on: '2026-02-01', kind: 'change', amountMinor: 45_000, reason: 'sleeves needed' },
    { lineId: 1, on: '2026-03-01', kind: 'change', amountMinor: -20_000, reason: 'deck work dropped' },
    { lineId: 1, on: '2026-03-05', kind: 'contingency drawn', amountMinor: 25_000, reason: 'line bore' },
  ],
};
const actual = { system: 10, phase: 20, costMinor: 412_300, commitmentMinor: 96_500, remainingMinor: 371_000 };

test('D30: line status with contingency', () => {
  // Source: derived by hand, recomputed independently. Changes are new or withdrawn money; the draw is a transfer.
  const status = budgetStatus(worked, [actual], 'system', '2026-04-01');
  expect(status.total).toMatchObject({ originalMinor: 850_000, approvedMinor: 25_000, drawnMinor: 25_000 });
  expect(status.total).toMatchObject({ currentMinor: 900_000, forecastMinor: 879_800, varianceMinor: 20_200 });
  expect(status.contingencyLeftMinor).toBe(55_000);
  expect(status.fundingMinor).toBe(955_000);
});

test('reads the budget as it stood on any day', () => {
  // By hand.
  const days = ['2025-12-31', '2026-01-01', '2026-02-01', '2026-03-04', '2026-03-05'];
  expect(days.map((day) => currentBudget(worked, day))).toEqual([0, 850_000, 895_000, 875_000, 900_000]);
});

test('groups by system or phase, shows what is unassigned, and keeps costs nobody budgeted', () => {
  const plan = {
    lines: [block, { ...block, id: 2, system: null }],
    changes: [
      { lineId: 2, on: '2026-01-01', kind: 'change', amountMinor: 5000, reason: 'odds and ends' } as const,
      ...worked.changes,
    ],
  };
  const exhaust = { system: 11, phase: null, costMinor: 700, commitmentMinor: 0, remainingMinor: 0 };
  const bySystem = budgetStatus(plan, [actual, exhaust], 'system', '2026-04-01');
  expect(bySystem.rows.map((row) => [row.tag, row.currentMinor, row.varianceMinor])).toEqual([
    [10, 900_000, 20_200],
    [11, 0, -700],
    [null, 5000, 5000],
  ]);
  const byPhase = budgetStatus(plan, [actual, exhaust], 'phase', '2026-04-01');
  expect(byPhase.rows.map((row) => row.tag)).toEqual([20, null]);
  expect(byPhase.total).toEqual(bySystem.total);
});

const change = {
  lineId: 1,
  on: '2026-02-10',
  kind: 'contingency drawn',
  amountMinor: 55_000,
  reason: 'studs',
} as const;

test('lets the last of the contingency be drawn, and not a cent more on any day', () => {
  expect(() => checkBudgetChange(worked, change)).not.toThrow();
  try {
    checkBudgetChange(worked, { ...change, amountMinor: 55_001 });
    expect.unreachable();
  } catch (problem) {
    expect(problem).toMatchObject({
      code: 'floor',
      message: 'The contingency would fall below 0 on 2026-03-05. Nothing was changed.',
      detail: { shortMinor: 1 },
    });
  }
});

test.each([
  [{ reason: '  ' }, 'needs-reason'],
  [{ lineId: 99 }, 'not-found'],
  [{ on: '2026-02-30' }, 'bad-input'],
  [{ amountMinor: 0 }, 'bad-input'],
  [{ kind: 'change', amountMinor: -880_000 }, 'floor'],
  [{ kind: 'contingency' }, 'bad-input'],
  [{ lineId: null }, 'bad-input'],
  [{ lineId: null, kind: 'contingency', amountMinor: -55_001 }, 'floor'],
] as const)('refuses the change %j', (wrong, code) => {
  try {
    checkBudgetChange(worked, { ...change, ...wrong });
    expect.unreachable();
  } catch (problem) {
    expect(problem).toBeInstanceOf(Refusal);
    expect(problem).toMatchObject({ code });
  }
});

test('funding always equals original, approved changes and all contingency', () => {
  const changes = fc.array(
    fc.record({
      lineId: fc.constant(1),
      on: fc.constantFrom('2026-02-01', '2026-03-01'),
      kind: fc.constantFrom('change' as const, 'contingency drawn' as const),
      amountMinor: fc.integer({ min: -10_000, max: 10_000 }),
      reason: fc.constant('any'),
    }),
    { maxLength: 20 },
  );
  fc.assert(
    fc.property(changes, (list) => {
      const plan = { lines: [block], changes: [...worked.changes.slice(0, 2), ...list] };
      const changed = list.filter((row) => row.kind === 'change').reduce((sum, row) => sum + row.amountMinor, 0);
      expect(budgetStatus(plan, [], 'phase', '2026-12-31').fundingMinor).toBe(850_000 + changed + 80_000);
    }),
  );
});
