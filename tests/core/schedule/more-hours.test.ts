/**
 * Properties that the plan promises: more hours or one more person never make its gate later. List schedules in general
 * don't have them (R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17(2), 1969).
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseInstant } from '../../../core/dates/instant.ts';
import { peopleTimes, type WorkingPerson } from '../../../core/schedule/calendar.ts';
import { levelCalendar } from '../../../core/schedule/calendar-levelling.ts';
import type { CalendarJob } from '../../../core/schedule/calendar-network.ts';

const now = parseInstant('2026-03-02T08:00');
const clock = (quarters: number): string =>
  `${String(Math.floor(quarters / 4)).padStart(2, '0')}:${String((quarters % 4) * 15).padStart(2, '0')}`;

/** An evening or a day: from a quarter of an hour on, so many quarters long (an hour at least). */
const anyDay = fc.record({ from: fc.integer({ min: 28, max: 76 }), length: fc.integer({ min: 4, max: 16 }) });
const anyWeek = fc.array(fc.option(anyDay), { minLength: 7, maxLength: 7 }).filter((days) => days.some(Boolean));

type Day = { readonly from: number; readonly length: number } | null;

/** More hours: each day longer by some, one free day worked on, days off worked after all. */
const anyMore = fc.record({
  longer: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 7, maxLength: 7 }),
  extra: fc.tuple(fc.nat({ max: 6 }), anyDay),
  noDaysOff: fc.boolean(),
});

function peopleOf(count: number, week: readonly Day[], off: boolean): WorkingPerson[] {
  return peopleTimes({
    weekly: week.flatMap((day, at) =>
      day === null ? [] : [{ weekday: at + 1, from: clock(day.from), to: clock(Math.min(96, day.from + day.length)) }],
    ),
    people: ['a', 'b', 'c'].slice(0, count).map((id) => ({ id, name: id, weekly: [] })),
    days: off ? [{ on: '2026-03-05', until: '2026-03-12', person: null, windows: [] }] : [],
  });
}

const anyJobs = fc
  .array(
    fc.record({
      minutes: fc.integer({ min: 0, max: 600 }),
      hands: fc.boolean(),
      oneSitting: fc.boolean(),
      person: fc.constantFrom(null, null, 'a'),
      release: fc.integer({ min: 0, max: 20_000 }),
      earlier: fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 3000 }), fc.boolean()), { maxLength: 3 }),
      tools: fc.subarray(['t', 'u']),
      beforeGate: fc.boolean(),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((rows) =>
    rows.map(
      ({ minutes, release, earlier, ...own }, at): CalendarJob => ({
        ...own,
        id: `j${at}`,
        // A sitting that fits into every window; longer ones are split until a window takes them whole.
        minutes: own.oneSitting ? Math.min(60, minutes) : minutes,
        releaseMinute: now + release,
        after: (at === 0 ? [] : earlier).map(([to, lagMinutes, onClock]) => ({
          job: `j${to % at}`,
          lagMinutes,
          lagOn: onClock ? ('clock' as const) : ('work' as const),
        })),
      }),
    ),
  );

test('longer evenings, another day, days off worked on or one more person never make the gate later', () => {
  fc.assert(
    fc.property(
      anyJobs,
      anyWeek,
      anyMore,
      fc.integer({ min: 1, max: 2 }),
      fc.boolean(),
      (jobs, week, more, count, joins) => {
        const wider = week.map((day, at): Day => {
          if (day !== null) return { ...day, length: day.length + (more.longer[at] ?? 0) };
          return at === more.extra[0] ? more.extra[1] : null;
        });
        const before = levelCalendar(jobs, peopleOf(count, week, true), now);
        const after = levelCalendar(jobs, peopleOf(count + (joins ? 1 : 0), wider, !more.noDaysOff), now);
        expect(after.gateMinute).toBeLessThanOrEqual(before.gateMinute);
      },
    ),
    { numRuns: 60 },
  );
});

test('people with hours of their own: the plan made with fewer hours, tried too, keeps the gate', () => {
  fc.assert(
    fc.property(anyJobs, anyWeek, anyWeek, anyMore, (jobs, first, second, more) => {
      const both = (week: readonly Day[], off: boolean): WorkingPerson[] => [
        ...peopleOf(1, week, off),
        ...peopleOf(1, second, off).map((person) => ({ ...person, id: 'b', name: 'b' })),
      ];
      const wider = first.map((day, at) => day && { ...day, length: day.length + (more.longer[at] ?? 0) });
      const before = levelCalendar(jobs, both(first, true), now);
      const after = levelCalendar(jobs, both(wider, !more.noDaysOff), now, now, [before.sequence]);
      expect(after.gateMinute).toBeLessThanOrEqual(before.gateMinute);
    }),
    { numRuns: 40 },
  );
});
