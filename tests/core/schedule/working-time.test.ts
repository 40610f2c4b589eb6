import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatInstant, parseInstant } from '../../../core/dates/instant.ts';
import {
  placeWork,
  readWorkingTime,
  showMinutes,
  type WorkException,
  type WorkingTimePlan,
  workingMinutes,
} from '../../../core/schedule/working-time.ts';

const evenings: WorkingTimePlan = {
  weekly: [
    { weekday: 2, from: '18:30', to: '21:00' },
    { weekday: 4, from: '18:30', to: '21:00' },
    { weekday: 6, from: '09:00', to: '15:00' },
  ],
  exceptions: [],
};

function placed(
  start: string,
  minutes: number,
  options: { off?: string; extra?: WorkException; sitting?: boolean } = {},
) {
  const off = options.off === undefined ? [] : [{ date: options.off, windows: [] }];
  const extra = options.extra === undefined ? [] : [options.extra];
  const time = readWorkingTime({ ...evenings, exceptions: [...off, ...extra] });
  const { first, finish } = placeWork(time, parseInstant(start), minutes, options.sitting);
  return { first: formatInstant(first), finish: formatInstant(finish) };
}

test('D35: ten hours from Monday morning', () => {
  // Source: derived by hand, recomputed independently.
  expect(placed('2026-03-02T08:00', 600)).toEqual({ first: '2026-03-03T18:30', finish: '2026-03-07T14:00' });
});

test('D36: work that fills a window ends there; work that may start at its end starts in the next', () => {
  // Source: derived by hand, recomputed independently.
  expect(placed('2026-03-03T21:00', 150)).toEqual({ first: '2026-03-05T18:30', finish: '2026-03-05T21:00' });
});

test('D37: the same ten hours with a Thursday off', () => {
  // Source: derived by hand, recomputed independently.
  expect(placed('2026-03-02T08:00', 600, { off: '2026-03-05' })).toEqual({
    first: '2026-03-03T18:30',
    finish: '2026-03-10T20:00',
  });
});

test('D38: a sitting of four hours waits for Saturday', () => {
  // Source: derived by hand, recomputed independently.
  expect(placed('2026-03-02T08:00', 240, { sitting: true })).toEqual({
    first: '2026-03-07T09:00',
    finish: '2026-03-07T13:00',
  });
});

test('D39: a sitting of seven hours is refused with the longest window named', () => {
  // Source: derived by hand, recomputed independently.
  expect(() => placed('2026-03-02T08:00', 420, { sitting: true })).toThrow(
    'A sitting of 7 h never fits: the longest window is 6 h. Nothing was changed.',
  );
});

test('a special session replaces the windows of its day', () => {
  // By hand: the Tuesday session grows to eight hours, so seven hours fit on it.
  const extra = { date: '2026-03-03', windows: [{ from: '10:00', to: '18:00' }] };
  expect(placed('2026-03-02T08:00', 420, { sitting: true, extra })).toEqual({
    first: '2026-03-03T10:00',
    finish: '2026-03-03T17:00',
  });
});

test('D40: capacity of a month, with and without a day off', () => {
  // Source: derived by hand, recomputed independently.
  const [from, to] = [parseInstant('2026-03-01T00:00'), parseInstant('2026-04-01T00:00')];
  expect(workingMinutes(readWorkingTime(evenings), from, to)).toBe(2790);
  const off = readWorkingTime({ ...evenings, exceptions: [{ date: '2026-03-05', windows: [] }] });
  expect(workingMinutes(off, from, to)).toBe(2640);
});

test('D41: work, a cure of 24 hours on the clock, then work', () => {
  // Source: derived by hand, recomputed independently.
  expect(placed('2026-03-02T08:00', 300)).toEqual({ first: '2026-03-03T18:30', finish: '2026-03-05T21:00' });
  const cured = formatInstant(parseInstant('2026-03-05T21:00') + 24 * 60);
  expect(cured).toBe('2026-03-06T21:00');
  expect(placed(cured, 200)).toEqual({ first: '2026-03-07T09:00', finish: '2026-03-07T12:20' });
});

test('no minutes end where they start, on the clock', () => {
  expect(placed('2026-03-02T08:00', 0)).toEqual({ first: '2026-03-02T08:00', finish: '2026-03-02T08:00' });
});

test('starts inside a window that is already open', () => {
  // By hand.
  expect(placed('2026-03-03T20:00', 90)).toEqual({ first: '2026-03-03T20:00', finish: '2026-03-05T19:00' });
});

test('refuses work when there is no working time', () => {
  const never = readWorkingTime({ weekly: [], exceptions: [] });
  expect(() => placeWork(never, parseInstant('2026-03-02T08:00'), 30)).toThrow(/no working time in the next ten years/);
});

test.each([
  [{ weekly: [{ weekday: 8, from: '09:00', to: '10:00' }], exceptions: [] }, /weekday 8 does not exist/],
  [{ weekly: [{ weekday: 1, from: '10:00', to: '10:00' }], exceptions: [] }, /10:00–10:00 ends before it begins/],
  [{ weekly: [{ weekday: 1, from: '22:00', to: '02:00' }], exceptions: [] }, /ends before it begins/],
  [{ weekly: [{ weekday: 1, from: '9', to: '10:00' }], exceptions: [] }, /The time “9” can't be read/],
  [{ weekly: [], exceptions: [{ date: '2026-02-30', windows: [] }] }, /exception day “2026-02-30”/],
  [
    {
      weekly: [],
      exceptions: [
        { date: '2026-03-01', windows: [] },
        { date: '2026-03-01', windows: [] },
      ],
    },
    /entered twice/,
  ],
  [
    {
      weekly: [
        { weekday: 1, from: '09:00', to: '11:00' },
        { weekday: 1, from: '10:59', to: '12:00' },
      ],
      exceptions: [],
    },
    /overlap/,
  ],
] as const)('refuses the plan %j', (plan, reason) => {
  expect(() => readWorkingTime(plan)).toThrow(reason);
});

test('accepts windows that touch and a day that runs to midnight', () => {
  // By hand: 120 minutes from 23:00 run over midnight through touching windows.
  const time = readWorkingTime({
    weekly: [
      { weekday: 1, from: '22:00', to: '24:00' },
      { weekday: 2, from: '00:00', to: '02:00' },
    ],
    exceptions: [],
  });
  expect(formatInstant(placeWork(time, parseInstant('2026-03-02T23:00'), 120).finish)).toBe('2026-03-03T01:00');
});

test('says lengths of time as people do', () => {
  expect([0, 45, 120, 150].map(showMinutes)).toEqual(['0 min', '45 min', '2 h', '2 h 30 min']);
});

test('always works exactly the minutes asked between start and finish', () => {
  const time = readWorkingTime(evenings);
  const start = fc.integer({ min: parseInstant('2026-01-01T00:00'), max: parseInstant('2027-01-01T00:00') });
  fc.assert(
    fc.property(start, fc.integer({ min: 1, max: 6000 }), (from, minutes) => {
      const { first, finish } = placeWork(time, from, minutes);
      expect(workingMinutes(time, from, finish)).toBe(minutes);
      expect(workingMinutes(time, from, first)).toBe(0);
    }),
  );
});
