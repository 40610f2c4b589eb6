import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allocate } from '../../../core/money/allocate.ts';

test('D01: shares 60 seats over 15 states', () => {
  // Source: US House apportionment of 1790, a published worked example of the largest-remainder method; the result was
  // checked against the public table.
  const populations = {
    VA: 630560,
    MA: 475327,
    PA: 432879,
    NC: 353523,
    NY: 331589,
    MD: 278514,
    CT: 236841,
    SC: 206236,
    NJ: 179570,
    NH: 141822,
    VT: 85533,
    GA: 70835,
    KY: 68705,
    RI: 68446,
    DE: 55540,
  };
  expect(allocate(60, Object.values(populations))).toEqual([11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1]);
});

test('D02: shares shipping over three lines by line value', () => {
  // Source: derived by hand, recomputed independently.
  expect(allocate(1299, [24999, 8950, 1275])).toEqual([922, 330, 47]);
});

test('D03: gives equal remainders to the earlier line', () => {
  // Source: derived by hand, recomputed independently.
  expect(allocate(100, [1, 1, 1])).toEqual([34, 33, 33]);
});

test('D04: shares a negative total by size and gives it its sign back', () => {
  // Source: derived by hand, recomputed independently.
  expect(allocate(-1000, [3333, 3333, 3334])).toEqual([-333, -333, -334]);
});

test('D05: splits equally when every weight is 0', () => {
  // Source: derived by hand, recomputed independently.
  expect(allocate(1000, [0, 0, 0])).toEqual([334, 333, 333]);
});

test('gives a credit line inside an order nothing', () => {
  // By hand: the weights count as 300, 0 and 100.
  expect(allocate(400, [300, -50, 100])).toEqual([300, 0, 100]);
});

test('shares nothing over nobody, and refuses to lose an amount', () => {
  expect(allocate(0, [])).toEqual([]);
  expect(() => allocate(1, [])).toThrow(RangeError);
});

test('never yields a negative zero, which would print with a sign', () => {
  expect(Object.is(allocate(-1, [1, 0])[1], 0)).toBe(true);
});

const weightLists = fc.array(fc.nat({ max: 1_000_000_000 }), { minLength: 1, maxLength: 40 });
const totals = fc.integer({ min: -1_000_000_000_000, max: 1_000_000_000_000 });

test('always adds up to the total', () => {
  fc.assert(
    fc.property(totals, weightLists, (total, weights) => {
      expect(allocate(total, weights).reduce((sum, share) => sum + share, 0)).toBe(total);
    }),
  );
});

test('always gives the floor or the ceiling of the exact quota', () => {
  fc.assert(
    fc.property(totals, weightLists, (total, weights) => {
      const sum = weights.reduce((before, weight) => before + BigInt(weight), 0n);
      fc.pre(sum > 0n);
      allocate(total, weights).forEach((share, index) => {
        const quotaTimesSum = BigInt(Math.abs(total)) * BigInt(weights[index] ?? 0);
        const gap = BigInt(Math.abs(share)) * sum - quotaTimesSum;
        expect(gap > -sum && gap < sum).toBe(true);
      });
    }),
  );
});

test('never gives anything to weight 0 while another line has weight', () => {
  fc.assert(
    fc.property(totals, weightLists, (total, weights) => {
      const shares = allocate(total, [...weights, 0, 1]);
      expect(shares[weights.length]).toBe(0);
    }),
  );
});

test('leaves the weights as they were', () => {
  const weights = Object.freeze([2, 1]);
  expect(allocate(10, weights)).toEqual([7, 3]);
});
