import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatInstant, parseInstant } from '../../../core/dates/instant.ts';
import { type ClearItem, clearDay, clearTimes } from '../../../core/gate/clear-times.ts';
import { evenings } from './evenings.ts';

const now = parseInstant('2026-03-02T08:00');

function item(name: string, ready: string, minutes: number): ClearItem {
  return { key: name, name, readyMinute: parseInstant(ready), minutes };
}

const worked = [
  item('oil pump pickup not fitted', '2026-03-14T12:00', 60),
  item('trial gasket still on the sump', '2026-03-02T00:00', 90),
  item('rod bolts not final-torqued', '2026-03-02T00:00', 150),
  item('crank end play not measured', '2026-03-02T00:00', 30),
  item('flywheel back-ordered, then fit', '2026-04-11T12:00', 120),
  item('engine crane to borrow', '2026-03-21T09:00', 0),
];

test('D71: six open items, one builder', () => {
  // Source: derived by hand, recomputed independently.
  const times = clearTimes(worked, evenings, now);
  const clear = Object.fromEntries([...times.clearMinutes].map(([key, minute]) => [key, formatInstant(minute)]));
  expect(clear).toEqual({
    'crank end play not measured': '2026-03-03T19:00',
    'rod bolts not final-torqued': '2026-03-05T19:00',
    'trial gasket still on the sump': '2026-03-05T20:30',
    'oil pump pickup not fitted': '2026-03-14T13:00',
    'engine crane to borrow': '2026-03-21T09:00',
    'flywheel back-ordered, then fit': '2026-04-11T14:00',
  });
  expect(formatInstant(times.gateMinute ?? 0)).toBe('2026-04-11T14:00');
  expect(Object.fromEntries(times.daysGained)).toEqual({
    'oil pump pickup not fitted': 0,
    'trial gasket still on the sump': 0,
    'rod bolts not final-torqued': 0,
    'crank end play not measured': 0,
    'flywheel back-ordered, then fit': 21,
    'engine crane to borrow': 0,
  });
});

test('no items have no gate, and one alone gains the days until now', () => {
  expect(clearTimes([], evenings, now).gateMinute).toBe(null);
  // By hand: from 2026-04-11 back to 2026-03-02 are 40 days.
  const alone = clearTimes([item('flywheel', '2026-04-11T12:00', 120)], evenings, now);
  expect(alone.daysGained.get('flywheel')).toBe(40);
});

test('work that ends at midnight belongs to the day before', () => {
  const midnight = parseInstant('2026-03-03T00:00');
  expect([clearDay(midnight, true), clearDay(midnight, false)]).toEqual(['2026-03-02', '2026-03-03']);
});

test('days gained always equal the gap between the gate with an item and without it', () => {
  const items = fc.array(
    fc.record({ day: fc.integer({ min: 0, max: 60 }), minutes: fc.integer({ min: 0, max: 400 }), waits: fc.nat() }),
    { minLength: 1, maxLength: 12 },
  );
  fc.assert(
    fc.property(items, (list) => {
      const chained = list.map(({ day, minutes, waits }, index) => ({
        key: `${index}`,
        name: `${index}`,
        readyMinute: now + day * 1440,
        minutes,
        after: index === 0 || waits % 3 > 0 ? [] : [`${waits % index}`],
      }));
      const gateDay = (some: readonly ClearItem[]): number =>
        Math.floor(Math.max(now, (clearTimes(some, evenings, now).gateMinute ?? now) - 1) / 1440);
      for (const [key, gained] of clearTimes(chained, evenings, now).daysGained) {
        const others = chained.filter((one) => one.key !== key);
        expect([key, gained]).toEqual([key, gateDay(chained) - gateDay(others)]);
      }
    }),
    { numRuns: 300 },
  );
});
