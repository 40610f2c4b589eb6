import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jobsProgress, type PartState, partsProgress, spendShare } from '../../../core/progress/progress.ts';
import { jobSeries, type PartDelta, progressSeries } from '../../../core/progress/series.ts';
import { nothingYet, ratioOf, showShare } from '../../../core/progress/share.ts';

function line(need: number, received: number, fitted: number, verified: number, valueMinor: number): PartState {
  return {
    unit: 'each',
    needMilli: need * 1000,
    receivedMilli: received * 1000,
    fittedMilli: fitted * 1000,
    verifiedMilli: verified * 1000,
    valueMinor,
  };
}

const worked = {
  'main studs': line(10, 10, 10, 10, 21000),
  rods: line(8, 8, 4, 0, 64000),
  pistons: line(8, 6, 0, 0, 56000),
  'gasket set': line(1, 0, 0, 0, 26000),
  'flywheel bolts': line(6, 8, 6, 6, 3000),
};

test('D67: parts received, fitted and verified by line, quantity and value', () => {
  // Source: the definitions of the measures; numbers derived by hand, recomputed independently.
  const progress = partsProgress(Object.values(worked));
  const shown = Object.values(progress).map(({ byLine, byQuantity, byValue }) => [
    `${byLine.done}/${byLine.of}`,
    byQuantity === null ? null : ratioOf(byQuantity)?.toFixed(4),
    ratioOf(byValue)?.toFixed(4),
  ]);
  expect(shown).toEqual([
    ['3/5', '0.9091', '0.7647'],
    ['2/5', '0.6061', '0.3294'],
    ['2/5', '0.4848', '0.1412'],
  ]);
});

test('D68: says there is nothing to measure instead of 0 % or 100 %', () => {
  // Source: a rule of this product.
  expect(showShare(partsProgress([]).received.byLine, nothingYet.parts)).toBe('no parts yet');
  expect(showShare(jobsProgress([]).byCount, nothingYet.jobs)).toBe('no jobs yet');
  expect(ratioOf(partsProgress([]).fitted.byValue)).toBe(null);
});

test('keeps 100 % for all and 0 % for nothing', () => {
  // By hand, from the display rule of this product: 99.5 % to below 100 % is 99 %, above 0 to below 0.5 % is <1 %.
  const shown = (done: number, of: number): string => showShare({ done, of }, '');
  expect([shown(999, 1000), shown(995, 1000), shown(994, 1000), shown(1000, 1000)]).toEqual([
    '99 %',
    '99 %',
    '99 %',
    '100 %',
  ]);
  expect([shown(0, 1000), shown(1, 1000), shown(4, 1000), shown(5, 1000), shown(15, 1000)]).toEqual([
    '0 %',
    '<1 %',
    '<1 %',
    '1 %',
    '2 %',
  ]);
  expect([shown(1001, 1000), shown(-5, 1000)]).toEqual(['101 %', '0 %']);
  expect(shown(Number.MAX_SAFE_INTEGER - 1, Number.MAX_SAFE_INTEGER)).toBe('99 %');
});

test('adds quantities only where the units can be added', () => {
  const mixed = partsProgress([line(1, 1, 0, 0, 100), { ...line(5, 2, 0, 0, 100), unit: 'L' }]);
  expect(mixed.received.byQuantity).toBe(null);
  expect(mixed.received.byLine).toEqual({ done: 1, of: 2 });
});

test('counts jobs, and weighs them by their work', () => {
  // By hand: 60 of 240 minutes done, and half of an open 120-minute job earned.
  const jobs = [
    { done: true, workMinutes: 60 },
    { done: false, workMinutes: 120, earnedMinutes: 60 },
    { done: false, workMinutes: 60, earnedMinutes: -5 },
  ];
  expect(jobsProgress(jobs)).toEqual({ byCount: { done: 1, of: 3 }, byWork: { done: 120, of: 240 } });
  expect(spendShare(50, 200)).toEqual({ done: 50, of: 200 });
});

test('follows a line over time and keeps its falls', () => {
  // By hand.
  const deltas: PartDelta[] = [
    { on: '2026-03-05', lineId: 1, unit: 'each', receivedMilli: -1000 },
    { on: '2026-03-01', lineId: 1, unit: 'each', needMilli: 4000, valueMinor: 40000 },
    { on: '2026-03-03', lineId: 1, unit: 'each', receivedMilli: 2000 },
    { on: '2026-03-03', lineId: 1, unit: 'each', receivedMilli: 2000 },
    { on: '2026-03-06', lineId: 2, unit: 'each', needMilli: 1000, valueMinor: 20000 },
  ];
  const series = (measure: 'line' | 'quantity' | 'value') =>
    progressSeries(deltas, measure).map((point) => [point.on, point.received.done, point.received.of]);
  expect(series('value')).toEqual([
    ['2026-03-01', 0, 40000],
    ['2026-03-03', 40000, 40000],
    ['2026-03-05', 30000, 40000],
    ['2026-03-06', 30000, 60000],
  ]);
  expect(series('line').at(1)).toEqual(['2026-03-03', 1, 1]);
  expect(series('quantity').at(-1)).toEqual(['2026-03-06', 3000, 5000]);
});

test('the last point of a series always equals the measure of the final state', () => {
  const part = fc.tuple(fc.nat({ max: 20 }), fc.nat({ max: 25 }), fc.nat({ max: 20 }), fc.nat({ max: 90_000 }));
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 12 }), (parts) => {
      const states = parts.map(([need, received, fitted, value]) => line(need, received, fitted, 0, value));
      const deltas = states.flatMap(({ unit, needMilli, receivedMilli, fittedMilli, valueMinor }, index) => [
        { on: '2026-01-01', lineId: index, unit, needMilli, valueMinor },
        { on: '2026-01-02', lineId: index, unit, receivedMilli },
        { on: '2026-01-03', lineId: index, unit, fittedMilli },
      ]);
      const progress = partsProgress(states);
      expect(progressSeries(deltas, 'value').at(-1)?.received).toEqual(progress.received.byValue);
      expect(progressSeries(deltas, 'line').at(-1)?.fitted).toEqual(progress.fitted.byLine);
      expect(progressSeries(deltas, 'quantity').at(-1)?.received).toEqual(progress.received.byQuantity);
    }),
  );
});

test('follows jobs over time, reopened and dropped ones too', () => {
  // By hand.
  const points = jobSeries([
    { on: '2026-03-01', jobId: 1, planned: 1, workMinutes: 60 },
    { on: '2026-03-01', jobId: 2, planned: 1, workMinutes: 180 },
    { on: '2026-03-04', jobId: 1, done: 1 },
    { on: '2026-03-06', jobId: 1, done: -1 },
    { on: '2026-03-09', jobId: 1, done: 1 },
    { on: '2026-03-09', jobId: 1, workMinutes: 30 },
    { on: '2026-03-11', jobId: 2, planned: -1 },
  ]);
  expect(points.map(({ on, byCount, byWork }) => [on, byCount.done, byCount.of, byWork.done, byWork.of])).toEqual([
    ['2026-03-01', 0, 2, 0, 240],
    ['2026-03-04', 1, 2, 60, 240],
    ['2026-03-06', 0, 2, 0, 240],
    ['2026-03-09', 1, 2, 90, 270],
    ['2026-03-11', 1, 1, 90, 90],
  ]);
});
