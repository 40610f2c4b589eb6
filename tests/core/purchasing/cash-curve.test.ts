import { expect, test } from 'vitest';
import { cashCurve, cashMovements, weeklyCash } from '../../../core/purchasing/cash-curve.ts';

const wage = { name: 'wage', amountMinor: 30_000, dayOfMonth: 31, from: '2026-01-01', until: null, certain: true };

test('lays monthly income on the last day of short months', () => {
  // By hand from the calendar: 2026 is no leap year.
  const movements = cashMovements({ from: '2026-01-15', to: '2026-04-30', monthly: [wage], sums: [] });
  expect(movements.map((movement) => movement.on)).toEqual(['2026-01-31', '2026-02-28', '2026-03-31', '2026-04-30']);
});

test('keeps a likely and a safe line, and says when each breaks the floor', () => {
  // By hand: 500.00 in hand, floor 200.00. Likely: 500, 100 more on the 10th if it comes, 350 to 450 due on the 20th.
  const curve = cashCurve({
    from: '2026-02-01',
    to: '2026-03-05',
    openingMinor: 50_000,
    floorMinor: 20_000,
    monthly: [wage],
    sums: [
      { name: 'old wheels', on: '2026-02-10', amountMinor: 10_000, certain: false },
      { name: 'machine shop', on: '2026-02-20', amountMinor: -35_000, safeMinor: -45_000 },
      { name: 'overdue bill', on: '2026-01-20', amountMinor: -1_000 },
    ],
  });
  expect(curve.points.map((point) => [point.on, point.likelyMinor, point.safeMinor])).toEqual([
    ['2026-02-01', 50_000, 50_000],
    ['2026-02-01', 49_000, 49_000],
    ['2026-02-10', 59_000, 49_000],
    ['2026-02-20', 24_000, 4_000],
    ['2026-02-28', 54_000, 34_000],
  ]);
  expect(curve).toMatchObject({
    lowestLikelyMinor: 24_000,
    lowestSafeMinor: 4_000,
    likelyBelowFloorOn: null,
    safeBelowFloorOn: '2026-02-20',
  });
});

test('money that comes within a week counts from the next, bills from their own', () => {
  // By hand: week 0 begins Monday 2026-03-02.
  const movements = [
    { name: 'on the first day', on: '2026-03-09', amountMinor: 100 },
    { name: 'midweek', on: '2026-03-11', amountMinor: 40 },
    { name: 'bill', on: '2026-03-15', amountMinor: -30 },
    { name: 'perhaps', on: '2026-03-16', amountMinor: 999, certain: false },
    { name: 'too late', on: '2026-05-01', amountMinor: 5 },
  ];
  expect(weeklyCash(movements, '2026-03-02', 4)).toEqual({ 1: 70, 2: 40 });
});

test('refuses what can’t be laid out', () => {
  const input = { from: '2026-02-01', to: '2026-03-01', openingMinor: 0, floorMinor: 0, monthly: [], sums: [] };
  expect(() => cashCurve({ ...input, to: '2026-01-01' })).toThrow(
    /last day lies before the first\. Nothing was changed/,
  );
  expect(() => cashCurve({ ...input, monthly: [{ ...wage, dayOfMonth: 32 }] })).toThrow(/day 32/);
  expect(() => cashCurve({ ...input, sums: [{ name: 'x', on: '2026-02-02', amountMinor: 1.5 }] })).toThrow(
    /whole number/,
  );
});
