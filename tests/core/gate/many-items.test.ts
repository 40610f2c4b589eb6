import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minutesPerDay } from '../../../core/dates/instant.ts';
import { clearTimes } from '../../../core/gate/clear-times.ts';
import { readWorkingTime } from '../../../core/schedule/working-time.ts';

/** Long lists are reckoned in one pass; the answer must be that of leaving each item out in turn. */
const time = readWorkingTime({
  weekly: [
    { weekday: 2, from: '18:30', to: '21:00' },
    { weekday: 4, from: '18:30', to: '21:00' },
    { weekday: 6, from: '09:00', to: '15:00' },
  ],
  exceptions: [],
});
const now = 30_000_000;

describe('days gained on a long list', () => {
  it('are those of leaving each item out in turn (regression against the plain way)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ ready: fc.integer({ min: 0, max: 60 }), minutes: fc.constantFrom(0, 15, 30, 90, 240) }), {
          minLength: 125,
          maxLength: 160,
        }),
        (given) => {
          const items = given.map(({ ready, minutes }, index) => ({
            key: `k${index}`,
            name: `n${String(index).padStart(4, '0')}`,
            readyMinute: now + ready * minutesPerDay,
            minutes,
          }));
          const { daysGained, gateMinute } = clearTimes(items, time, now);
          const day = (minute: number): number => Math.floor(Math.max(now, minute - 1) / minutesPerDay);
          for (const { key } of items.filter((_, index) => index % 9 === 0)) {
            const without =
              clearTimes(
                items.filter((item) => item.key !== key),
                time,
                now,
              ).gateMinute ?? now;
            expect(daysGained.get(key)).toBe(Math.max(0, day(gateMinute ?? now) - day(without)));
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('come for ten thousand items as well', () => {
    const items = Array.from({ length: 10_000 }, (_, index) => ({
      key: `k${index}`,
      name: `n${index}`,
      readyMinute: now,
      minutes: 15,
    }));
    expect(clearTimes(items, time, now).daysGained.size).toBe(10_000);
  });
});
