import { describe, expect, it } from 'vitest';
import {
  circleSpots,
  customSequence,
  rowSpots,
  spiralSequence,
  starSequence,
  stepsApart,
} from '../../../core/torque/sequence.ts';

const counts = Array.from({ length: 38 }, (_, index) => index + 3);
const everyBolt = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);
const sorted = (list: readonly number[]): number[] => list.toSorted((one, other) => one - other);

// Every bolt once, opposite on a circle and from the middle outwards in rows: common practice, no published source.
describe('the star of a bolt circle', () => {
  it.each(counts)('names each of %i bolts once, beginning with the first', (count) => {
    const order = starSequence(count);
    expect(sorted(order)).toEqual(everyBolt(count));
    expect(order[0]).toBe(1);
  });

  it.each(counts.filter((count) => count % 2 === 0))('goes to the exact opposite with every second of %i', (count) => {
    const order = starSequence(count);
    for (let index = 0; index < count; index += 2) {
      expect(stepsApart(count, order[index] ?? 0, order[index + 1] ?? 0)).toBe(count / 2);
    }
  });

  it.each(counts.filter((count) => count % 2 === 1))('steps as far across as an odd circle of %i lets it', (count) => {
    const order = starSequence(count);
    for (let index = 1; index < count; index += 1) {
      expect(stepsApart(count, order[index - 1] ?? 0, order[index] ?? 0)).toBe((count - 1) / 2);
    }
  });

  it('is the star drawn for wheels of four and five', () => {
    // The five-pointed star and the cross: common practice, no published source.
    expect(starSequence(4)).toEqual([1, 3, 2, 4]);
    expect(starSequence(5)).toEqual([1, 3, 5, 2, 4]);
  });

  it('takes a single bolt and a pair', () => {
    expect(starSequence(1)).toEqual([1]);
    expect(starSequence(2)).toEqual([1, 2]);
  });
});

describe('the spiral of bolts in rows', () => {
  const middleOf = (spots: readonly { x: number; y: number }[], columns: number, rows: number) =>
    spots.map(({ x, y }) => Math.hypot((x - 0.5) * columns, (y - 0.5) * rows));

  it.each(counts.flatMap((count) => [1, 2, 3].map((rows) => [count, rows] as const)))(
    'names each of %i bolts in %i rows once, never nearer the middle than the one before',
    (count, rows) => {
      const order = spiralSequence(count, rows);
      expect(sorted(order)).toEqual(everyBolt(count));
      const columns = Math.ceil(count / rows);
      const away = middleOf(rowSpots(count, rows), columns, Math.ceil(count / columns));
      for (let index = 1; index < count; index += 1) {
        const [before, now] = [away[(order[index - 1] ?? 1) - 1] ?? 0, away[(order[index] ?? 1) - 1] ?? 0];
        expect(now).toBeGreaterThanOrEqual(before - 1e-9);
      }
    },
  );

  it('begins with the middle pair of a ten-bolt head and ends with its corners', () => {
    // Middle bolts first and the four corners last: common practice, no published source.
    const order = spiralSequence(10, 2);
    expect(sorted(order.slice(0, 2))).toEqual([3, 8]);
    expect(sorted(order.slice(-4))).toEqual([1, 5, 6, 10]);
  });

  it('takes more rows than bolts as one bolt a row', () => {
    expect(sorted(spiralSequence(3, 20))).toEqual([1, 2, 3]);
  });
});

describe('an order of one’s own', () => {
  it('is kept as it stands', () => expect(customSequence([3, 1, 2], 3)).toEqual([3, 1, 2]));

  it.each([
    [[1, 2], 3, 'leaves out 3'],
    [[1, 1, 2], 3, 'leaves out 3'],
    [[1, 2, 3, 3], 3, 'names 4 bolts'],
    [[1, 2, 4], 3, 'leaves out 3'],
  ])('refuses %j of %i bolts, saying that it %s', (order, count, says) => {
    expect(() => customSequence(order, count)).toThrow(says);
  });
});

describe('the drawing', () => {
  it.each(counts)('keeps %i bolts of a circle inside, each in its own place', (count) => {
    const spots = circleSpots(count);
    expect(new Set(spots.map(({ x, y }) => `${x.toFixed(6)} ${y.toFixed(6)}`)).size).toBe(count);
    for (const { x, y } of spots) {
      expect(Math.hypot(x - 0.5, y - 0.5)).toBeCloseTo(0.42, 9);
    }
  });
});
