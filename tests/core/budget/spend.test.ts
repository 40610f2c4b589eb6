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
  const paid = [{ on: '2026-01-31', minor: 300 }];
  expect(spendByMonth(amounts, paid, '2026-04-10')).toEqual([
    { month: '2025-12', costMinor: 9000, paidMinor: 0, partial: false },
    { month: '2026-01', costMinor: 0, paidMinor: 300, partial: false },
    { month: '2026-02', costMinor: 4000, paidMinor: 0, partial: false },
    { month: '2026-03', costMinor: -500, paidMinor: 0, partial: false },
    { month: '2026-04', costMinor: 7000, paidMinor: 0, partial: true },
  ]);
  expect(spendByMonth([], [], '2026-04-10')).toEqual([]);
  expect(spendByMonth(amounts, [], '2025-12-23')).toEqual([]);
});

test('burns the mean of the last three full months', () => {
  // By hand: (0 + 4000 - 500) / 3 = 1166.67.
  expect(monthlyBurn(spendByMonth(amounts, [], '2026-04-10'))).toEqual({ minor: 1166, months: 3 });
  expect(monthlyBurn(spendByMonth(amounts, [], '2026-01-10'))).toEqual({ minor: 9000, months: 1 });
  expect(monthlyBurn(spendByMonth(amounts, [], '2025-12-31'))).toBe(null);
});

test('draws the curves from the days on which money moved or the budget changed', () => {
  // By hand: a need of 120.00 is ordered for 117.25 and paid, one unit is cancelled and refunded; the budget grows.
  const plan = {
    lines: [{ id: 1, system: null, phase: null }],
    changes: [
      { lineId: 1, on: '2026-01-01', kind: 'change', amountMinor: 12_000, reason: 'studs' } as const,
      { lineId: 1, on: '2026-02-01', kind: 'change', amountMinor: 500, reason: 'better washers' } as const,
    ],
  };
  const moves = {
    paid: [
      { on: '2026-01-12', minor: 11_725 },
      { on: '2026-03-01', minor: -1466 },
    ],
    stillToPay: [
      { on: '2026-01-10', minor: 11_725 },
      { on: '2026-01-12', minor: -11_725 },
      { on: '2026-02-20', minor: -1466 },
      { on: '2026-03-01', minor: 1466 },
    ],
    remaining: [
      { on: '2026-01-01', minor: 12_000 },
      { on: '2026-01-10', minor: -12_000 },
      { on: '2026-02-20', minor: 1500 },
    ],
  };
  const shown = (asOf: string) =>
    moneyCurves(moves, plan, asOf).map((at) => [
      at.on,
      at.paidMinor,
      at.committedMinor,
      at.forecastMinor,
      at.budgetMinor,
    ]);
  expect(shown('2026-02-25')).toEqual([
    ['2026-01-01', 0, 0, 12_000, 12_000],
    ['2026-01-10', 0, 11_725, 11_725, 12_000],
    ['2026-01-12', 11_725, 11_725, 11_725, 12_000],
    ['2026-02-01', 11_725, 11_725, 11_725, 12_500],
    ['2026-02-20', 11_725, 10_259, 11_759, 12_500],
    ['2026-02-25', 11_725, 10_259, 11_759, 12_500],
  ]);
  expect(shown('2026-03-01').at(-1)).toEqual(['2026-03-01', 10_259, 10_259, 11_759, 12_500]);
});
