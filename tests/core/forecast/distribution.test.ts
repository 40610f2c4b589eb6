import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Distribution, moments, quantile, seenValues, shareUpTo } from '../../../core/forecast/distribution.ts';
import { drawOf } from '../../../core/forecast/draw.ts';
import { normalQuantile, normalShare, studentQuantile } from '../../../core/forecast/probability.ts';
import { pathOutlook, pertMoments, pertShapes, requireThreePoint } from '../../../core/forecast/three-point.ts';

const guess = (low: number, likely: number, high: number) => ({ low, likely, high });

test('D46: 14 jobs with deadline 47, critical path A B C E F J L N', () => {
  // Source: Hillier & Lieberman, PERT part of the construction case (estimates from memory; mean, variance 9 and
  // P = 0.84 agree with the book).
  const path = [
    guess(1, 2, 3),
    guess(2, 3.5, 8),
    guess(6, 9, 18),
    guess(1, 4.5, 5),
    guess(4, 4, 10),
    guess(3, 9, 9),
    guess(1, 5.5, 7),
    guess(5, 5.5, 9),
  ];
  const outlook = pathOutlook(path, 47);
  expect(outlook.mean).toBeCloseTo(44, 10);
  expect(outlook.variance).toBeCloseTo(9, 10);
  expect(outlook.z).toBeCloseTo(1, 10);
  expect(outlook.chance).toBeCloseTo(0.8413, 4);
});

test('D47: critical path of a solved example, deadline 28', () => {
  // Source: Taylor, Introduction to Management Science, chapter example (the book reads 0.9633 from a table at z = 1.79).
  const outlook = pathOutlook([guess(5, 8, 17), guess(3, 5, 7), guess(4, 6, 8), guess(3, 4, 5)], 28);
  expect(outlook.mean).toBeCloseTo(24, 10);
  expect(outlook.variance).toBeCloseTo(5, 10);
  expect(outlook.z).toBeCloseTo(1.7889, 4);
  expect(outlook.chance).toBeCloseTo(0.9632, 4);
});

test('D48: triangular and beta over (2, 5, 14)', () => {
  // Source: closed forms (textbook); beta quantiles from a statistics library.
  const triangular: Distribution = { kind: 'triangular', ...guess(2, 5, 14) };
  expect(moments(triangular)).toEqual({ mean: 7, variance: 6.5 });
  expect(quantile(triangular, 0.5)).toBeCloseTo(6.6515, 4);
  expect(quantile(triangular, 0.8)).toBeCloseTo(9.3524, 4);
  const pert: Distribution = { kind: 'pert', ...guess(2, 5, 14) };
  expect(pertShapes(guess(2, 5, 14))).toEqual({ alpha: 2, beta: 4 });
  expect(moments(pert)?.mean).toBe(6);
  expect(moments(pert)?.variance).toBeCloseTo(4.5714, 4);
  expect(pertMoments(guess(2, 5, 14))).toEqual({ mean: 6, variance: 4 });
  expect(quantile(pert, 0.5)).toBeCloseTo(5.7657, 4);
  expect(quantile(pert, 0.8)).toBeCloseTo(7.8823, 4);
  expect(quantile(pert, 0.95)).toBeCloseTo(9.8889, 4);
});

test('D49: lognormal lead time, median 10 days, deviation of logs 0.5', () => {
  // Source: closed form; normal quantiles from a statistics library.
  const lead: Distribution = { kind: 'lognormal', median: 10, deviation: 0.5 };
  expect(moments(lead)?.mean).toBeCloseTo(11.3315, 4);
  expect(quantile(lead, 0.5)).toBeCloseTo(10, 8);
  expect(quantile(lead, 0.8)).toBeCloseTo(15.232, 3);
  expect(quantile(lead, 0.95)).toBeCloseTo(22.7602, 4);
});

test('D50: degenerate guesses', () => {
  // Source: derived by hand, recomputed independently.
  for (const kind of ['triangular', 'pert'] as const) {
    const constant: Distribution = { kind, ...guess(4, 4, 4) };
    expect([0, 0.3, 0.999].map((p) => quantile(constant, p))).toEqual([4, 4, 4]);
    expect(drawOf(constant)(0.42)).toBe(4);
  }
  expect(moments({ kind: 'triangular', ...guess(4, 4, 4) })).toEqual({ mean: 4, variance: 0 });
  expect(() => requireThreePoint(guess(3, 2, 6), 'hours')).toThrow(/hours 3, 2, 6 .* Nothing was changed/);
  const skewed: Distribution = { kind: 'triangular', ...guess(2, 6, 6) };
  expect(moments(skewed)?.mean).toBeCloseTo(4.6667, 4);
  expect(moments(skewed)?.variance).toBeCloseTo(0.8889, 4);
  expect(quantile(skewed, 0.5)).toBeCloseTo(4.8284, 4);
  expect(quantile(skewed, 0.8)).toBeCloseTo(5.5777, 4);
  expect(pertMoments(guess(2, 6, 6)).mean).toBeCloseTo(5.3333, 4);
});

test('normal and Student quantiles at tabled points', () => {
  // Source: printed tables of the normal and of Student's distribution (values from memory: 1.959964, 2.326348, 3.090232;
  // two-sided 5 % with 5 degrees 2.571, with 10 degrees 2.228; one degree is the tangent of pi (p - 1/2)).
  expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 6);
  expect(normalQuantile(0.99)).toBeCloseTo(2.326348, 6);
  expect(normalQuantile(0.001)).toBeCloseTo(-3.090232, 6);
  expect(studentQuantile(0.975, 5)).toBeCloseTo(2.571, 3);
  expect(studentQuantile(0.975, 10)).toBeCloseTo(2.228, 3);
  expect(studentQuantile(0.9, 1)).toBeCloseTo(Math.tan(Math.PI * 0.4), 6);
  // The series and the rational approximation share nothing.
  for (const p of [1e-9, 1e-4, 0.02, 0.3, 0.5, 0.9, 0.98, 0.9999]) {
    expect(normalShare(normalQuantile(p)) / p).toBeCloseTo(1, 6);
  }
});

const samples: Distribution[] = [
  { kind: 'uniform', low: 1, high: 3 },
  { kind: 'triangular', low: 0, likely: 1, high: 5 },
  { kind: 'pert', low: 0, likely: 1, high: 5 },
  { kind: 'lognormal', median: 12, deviation: 0.6 },
  { kind: 'log-student', centre: 2.5, scale: 0.6, degrees: 5 },
  { kind: 'remaining', of: { kind: 'lognormal', median: 12, deviation: 0.6 }, waited: 20 },
];

test('property: share and quantile undo each other, and fast draws agree with the quantile', () => {
  const draws = samples.map(drawOf);
  fc.assert(
    fc.property(fc.double({ min: 0.0001, max: 0.9999, noNaN: true }), (p) => {
      samples.forEach((distribution, index) => {
        const value = quantile(distribution, p);
        expect(shareUpTo(distribution, value)).toBeCloseTo(p, 6);
        // A thousandth of the range (here 5) or of the value: far less than anybody's guess.
        expect(Math.abs((draws[index]?.(p) ?? 0) - value)).toBeLessThan(0.005 + 0.001 * value);
      });
    }),
    { numRuns: 200 },
  );
});

test('values seen: each counts the same, and the last ends it', () => {
  const seen = seenValues([7, 5, 9, 7]);
  expect([0, 0.25, 0.26, 0.75, 0.76, 1].map((p) => quantile(seen, p))).toEqual([5, 5, 7, 7, 9, 9]);
  expect([4, 5, 7, 8, 9].map((x) => shareUpTo(seen, x))).toEqual([0, 0.25, 0.75, 0.75, 1]);
});
