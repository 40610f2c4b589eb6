/** The hoist check's days with waits on the way: cures, lags and days of a job's own count as they do in the plan. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatInstant, parseInstant } from '../../../core/dates/instant.ts';
import { type ClearItem, clearTimes } from '../../../core/gate/clear-times.ts';
import { levelCalendar } from '../../../core/schedule/calendar-levelling.ts';
import { evenings } from './evenings.ts';

const now = parseInstant('2026-03-02T08:00');
const item = (key: string, minutes: number, more: Partial<ClearItem> = {}): ClearItem => ({
  key,
  name: key,
  readyMinute: now,
  minutes,
  ...more,
});
const clear = (items: readonly ClearItem[]): Record<string, string> =>
  Object.fromEntries([...clearTimes(items, evenings, now).clearMinutes].map(([key, at]) => [key, formatInstant(at)]));

test('D41: work, a cure of 24 hours that takes no hands, then work', () => {
  // Source: derived by hand, recomputed independently.
  const items = [
    item('glue', 300),
    item('cure', 1440, { hands: false, after: ['glue'] }),
    item('fit', 200, { after: ['cure'] }),
  ];
  expect(clear(items)).toEqual({ glue: '2026-03-05T21:00', cure: '2026-03-06T21:00', fit: '2026-03-07T12:20' });
  // The same cure as a wait after the glue.
  const lag = { after: 'glue', minutes: 1440, on: 'clock' as const };
  expect(clear([item('glue', 300), item('fit', 200, { after: ['glue'], lags: [lag] })])).toEqual({
    glue: '2026-03-05T21:00',
    fit: '2026-03-07T12:20',
  });
});

test('other work goes on during a cure, and a sitting waits for a window that takes it', () => {
  // By hand, in evenings of 2 h 30 min on Tuesday and Thursday and 6 h on Saturday.
  const lag = { after: 'glue', minutes: 6 * 1440, on: 'clock' as const };
  expect(
    clear([item('glue', 150), item('fit', 60, { after: ['glue'], lags: [lag] }), item('other', 150)]),
  ).toMatchObject({ glue: '2026-03-03T21:00', other: '2026-03-05T21:00', fit: '2026-03-10T19:30' });
  expect(clear([item('sitting', 240, { oneSitting: true })])).toEqual({ sitting: '2026-03-07T13:00' });
});

test('what is glued before a long cure gains the days that the cure then ends sooner', () => {
  const items = [
    item('first', 150),
    item('glue', 150, { after: ['first'] }),
    item('cure', 10 * 1440, { hands: false, after: ['glue'] }),
  ];
  const { gateMinute, daysGained } = clearTimes(items, evenings, now);
  // By hand: first on Tuesday, glue on Thursday the 5th, ten days on: Sunday the 15th; without the first: Friday the 13th.
  // Were the glue on now, the cure would run from now: Thursday the 12th.
  expect(formatInstant(gateMinute ?? 0)).toBe('2026-03-15T21:00');
  expect([...daysGained]).toEqual([
    ['first', 2],
    ['glue', 3],
    ['cure', 10],
  ]);
});

test('nothing is cleared before the plan’s network allows it, and a chain is cleared when the plan says', () => {
  const anyItems = fc.array(
    fc.record({
      minutes: fc.integer({ min: 1, max: 400 }),
      hands: fc.boolean(),
      lag: fc.integer({ min: 0, max: 4000 }),
      onClock: fc.boolean(),
      ready: fc.integer({ min: 0, max: 20_000 }),
    }),
    { minLength: 1, maxLength: 8 },
  );
  fc.assert(
    fc.property(anyItems, fc.boolean(), (rows, chain) => {
      const before = (at: number): string[] => (at === 0 || !(chain || at % 2 === 1) ? [] : [`j${at - 1}`]);
      const on = (row: (typeof rows)[0]): 'clock' | 'work' => (row.onClock ? 'clock' : 'work');
      const items = rows.map((row, at) =>
        item(`j${at}`, row.minutes, {
          hands: row.hands,
          readyMinute: now + row.ready,
          after: before(at),
          lags: before(at).map((after) => ({ after, minutes: row.lag, on: on(row) })),
        }),
      );
      const plan = levelCalendar(
        rows.map((row, at) => ({
          id: `j${at}`,
          minutes: row.minutes,
          hands: row.hands,
          oneSitting: false,
          person: null,
          releaseMinute: now + row.ready,
          after: before(at).map((job) => ({ job, lagMinutes: row.lag, lagOn: on(row) })),
          tools: [],
          beforeGate: true,
        })),
        [{ id: 'a', name: 'a', time: evenings }],
        now,
      );
      const { clearMinutes, gateMinute } = clearTimes(items, evenings, now);
      for (const { id, earlyFinish, finishMinute } of plan.bars) {
        expect(clearMinutes.get(id)).toBeGreaterThanOrEqual(earlyFinish);
        if (chain) expect(clearMinutes.get(id)).toBe(finishMinute);
      }
      expect(gateMinute).toBeGreaterThanOrEqual(plan.networkMinute);
    }),
    { numRuns: 80 },
  );
});
