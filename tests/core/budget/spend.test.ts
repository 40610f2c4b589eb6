import { expect, test } from 'vitest';
import { moneyCurves, monthlyBurn, spendByMonth } from '../../../core/budget/spend.ts';

const amounts = [
  { on: '2026-03-20', minor: -500 },
  { on: '2025-12-24', minor: 9000 },
  { on: '2026-02-03', minor: 2500 },
  { on: '2026-02-28', minor: 1500 },
  { on: '2026-04-02', minor: 7000 },
  { on: '2026-04-20', minor: 100 },
];

test('D68: a month without entries is a month at 0, and the running month is marked', () => {
  // Source: a rule of this product; amounts by hand. The refund of March lowers March.
  expect(spendByMonth(amounts, '2026-04-10')).toEqual([
    { month: '2025-12', minor: 9000, partial: false },
    { month: '2026-01', minor: 0, partial: false },
    { month: '2026-02', minor: 4000, partial: false },
    { month: '2026-03', minor: -500, partial: false },
    { month: '2026-04', minor: 7000, partial: true },
  ]);
  expect(spendByMonth([], '2026-04-10')).toEqual([]);
});

test('burns the mean of the last three full months', () => {
  // By hand: (0 + 4000 - 500) / 3 = 1166.67.
  expect(monthlyBurn(spendByMonth(amounts, '2026-04-10'))).toEqual({ minor: 1166, months: 3 });
  expect(monthlyBurn(spendByMonth(amounts, '2026-01-10'))).toEqual({ minor: 9000, months: 1 });
  expect(monthlyBurn(spendByMonth(amounts, '2025-12-31'))).toBe(null);
});

test('draws the curves from the days on which money moved or the budget changed', () => {
  // By hand: ordered for 117.25, paid, one unit cancelled and refunded; the budget grows on the way.
  const plan = {
    lines: [{ id: 'studs', system: null, phase: null, on: '2026-01-01', originalMinor: 12_000 }],
    changes: [
      { lineId: 'studs', on: '2026-02-01', kind: 'approved', amountMinor: 500, reason: 'better washers' } as const,
    ],
    contingencyMinor: 0,
  };
  const paid = [
    { on: '2026-01-12', minor: 11_725 },
    { on: '2026-03-01', minor: -1466 },
  ];
  const owed = [
    { on: '2026-01-10', minor: 11_725 },
    { on: '2026-01-12', minor: -11_725 },
    { on: '2026-02-20', minor: -1466 },
    { on: '2026-03-01', minor: 1466 },
  ];
  expect(moneyCurves(paid, owed, plan, '2026-02-25')).toEqual([
    { on: '2026-01-01', paidMinor: 0, committedMinor: 0, budgetMinor: 12_000 },
    { on: '2026-01-10', paidMinor: 0, committedMinor: 11_725, budgetMinor: 12_000 },
    { on: '2026-01-12', paidMinor: 11_725, committedMinor: 11_725, budgetMinor: 12_000 },
    { on: '2026-02-01', paidMinor: 11_725, committedMinor: 11_725, budgetMinor: 12_500 },
    { on: '2026-02-20', paidMinor: 11_725, committedMinor: 10_259, budgetMinor: 12_500 },
    { on: '2026-02-25', paidMinor: 11_725, committedMinor: 10_259, budgetMinor: 12_500 },
  ]);
  expect(moneyCurves(paid, owed, plan, '2026-03-01').at(-1)).toMatchObject({
    paidMinor: 10_259,
    committedMinor: 10_259,
  });
});
