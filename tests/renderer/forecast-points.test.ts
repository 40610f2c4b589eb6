import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../core/dates/calendar-date.ts';
import { cumulative, dayMarks, shownDays, thinned } from '../../renderer/screens/forecast/gate-points.ts';

const runsByDay = [
  { on: '2026-03-10', runs: 10 },
  { on: '2026-03-12', runs: 80 },
  { on: '2026-03-20', runs: 6 },
  { on: '2030-01-01', runs: 4 },
];

describe('the points of the picture', () => {
  it('sums the runs up to the share that has reached the gate', () => {
    // By hand: 10, 90, 96 and 100 of 100 runs.
    expect(cumulative(runsByDay).map(({ share }) => share)).toEqual([0.1, 0.9, 0.96, 1]);
  });

  it('begins today and leaves out the few runs that come years later', () => {
    const points = cumulative(runsByDay);
    const [from, to] = shownDays(points, '2026-03-02');
    expect(from).toBe(dayNumber('2026-03-02'));
    expect(to).toBeGreaterThanOrEqual(dayNumber('2026-03-20'));
    expect(to).toBeLessThan(dayNumber('2026-04-01'));
  });

  it('shows a week where everything is reached today', () => {
    const [from, to] = shownDays(cumulative([{ on: '2026-03-02', runs: 5 }]), '2026-03-02');
    expect(to - from).toBe(7);
  });

  it('keeps first and last when it leaves out steps too small to be seen', () => {
    const many = cumulative(Array.from({ length: 1000 }, () => ({ on: '2026-03-10', runs: 1 })));
    const few = thinned(many, 100);
    expect(few.length).toBeLessThanOrEqual(102);
    expect(few.at(0)).toBe(many[0]);
    expect(few.at(-1)).toBe(many.at(-1));
  });

  it('marks months, or days evenly apart where there are too few', () => {
    expect(dayMarks(0, 100, [1, 32, 60])).toEqual([1, 32, 60]);
    expect(dayMarks(0, 10, [3])).toEqual([0, 2, 4, 6, 8, 10]);
  });
});
