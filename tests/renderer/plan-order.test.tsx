import fc from 'fast-check';
import { expect, it } from 'vitest';
import { hoursText, readMinutes } from '../../renderer/parts/minutes.ts';
import { moveBeside } from '../../renderer/screens/plan/plan-order.ts';
import { percent } from '../../renderer/screens/plan/progress-chart.tsx';

// 60 minutes to the hour; the spellings are those that the fields name.
it.each([
  ['1.5', 90],
  ['1,5 h', 90],
  ['1:30', 90],
  ['1 h 30', 90],
  ['1h 30 min', 90],
  ['90 min', 90],
  ['2 h', 120],
  ['0', 0],
  ['0.33', 20],
])('reads %s as %i minutes', (text, minutes) => {
  expect(readMinutes(text, 'minutes')).toBe(minutes);
});

it.each(['soon', '', '1:75', '-1', '10001 h', '1.2345'])('refuses “%s” and names the field', (text) => {
  expect(() => readMinutes(text, 'minutesSpent')).toThrow(
    expect.objectContaining({ code: 'bad-input', field: 'minutesSpent' }),
  );
});

it('reads back every length of work that it writes', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 600_000 }), (minutes) => {
      expect(readMinutes(hoursText(minutes), 'minutes')).toBe(minutes);
    }),
  );
});

it('moves past hidden jobs, to the side of the neighbour that is seen', () => {
  expect(moveBeside([1, 2, 3, 4], [1, 4], 1, 1)).toEqual([2, 3, 4, 1]);
  expect(moveBeside([1, 2, 3, 4], [1, 4], 4, -1)).toEqual([4, 1, 2, 3]);
  expect(moveBeside([1, 2], [1, 2], 2, 1)).toBeNull();
});

it('keeps every job and takes a step back with the opposite step when all are seen', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1 }), { minLength: 2 }), fc.nat(), (ids, at) => {
      const id = ids[at % (ids.length - 1)] as number;
      const moved = moveBeside(ids, ids, id, 1);
      expect(moved).not.toBeNull();
      expect(moveBeside(moved ?? [], moved ?? [], id, -1)).toEqual(ids);
    }),
  );
});

it('never draws what is not all as 100 %', () => {
  expect(percent(1)).toBe(100);
  expect(percent(0.9999)).toBe(99.9);
  expect(percent(0.29)).toBe(29);
});
