import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatInstant, parseInstant } from '../../../core/dates/instant.ts';
import { peopleTimes, type WorkingPerson } from '../../../core/schedule/calendar.ts';
import { levelCalendar, overAllocations } from '../../../core/schedule/calendar-levelling.ts';
import { type CalendarJob, calendarNetwork, calendarTimes } from '../../../core/schedule/calendar-network.ts';
import { networkTimes } from '../../../core/schedule/network.ts';
import { workingMinutes } from '../../../core/schedule/working-time.ts';

const now = parseInstant('2026-03-02T08:00');
const always = [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ weekday, from: '00:00', to: '24:00' }));
const evenings = [
  { weekday: 2, from: '18:30', to: '21:00' },
  { weekday: 4, from: '18:30', to: '21:00' },
  { weekday: 6, from: '09:00', to: '15:00' },
];
const saturdays = [{ weekday: 6, from: '08:00', to: '16:00' }];
const people = (weekly: typeof evenings, names = ['a'], off: readonly string[] = []): WorkingPerson[] =>
  peopleTimes({
    weekly,
    people: names.map((id) => ({ id, name: id, weekly: [] })),
    days: off.map((on) => ({ on, until: null, person: null, windows: [] })),
  });
const never = { byWeekday: new Map(), byDay: new Map() };
const job = (id: string, minutes: number, more: Partial<CalendarJob> = {}): CalendarJob => ({
  id,
  minutes,
  hands: true,
  oneSitting: false,
  person: null,
  releaseMinute: now,
  after: [],
  tools: [],
  beforeGate: true,
  ...more,
});
const after = (...ids: string[]): CalendarJob['after'] =>
  ids.map((id) => ({ job: id, lagMinutes: 0, lagOn: 'clock' as const }));

test('D42: release dates and links, one pair of hands', () => {
  // Source: Lawler (one machine with release dates and precedence); derived by hand, recomputed independently. Here an
  // hour of the case is an hour of a person who always works.
  const hour = (hours: number): number => now + hours * 60;
  const { gateMinute, networkMinute, bars } = levelCalendar(
    [
      job('a', 180),
      job('b', 240, { releaseMinute: hour(6), after: after('a') }),
      job('c', 120, { releaseMinute: hour(2) }),
      job('d', 300, { releaseMinute: hour(4), after: after('c') }),
      job('e', 60, { releaseMinute: hour(12), after: after('d') }),
    ],
    people(always),
    now,
  );
  expect([(gateMinute - now) / 60, (networkMinute - now) / 60]).toEqual([15, 13]);
  expect(bars.map(({ who }) => who)).toEqual(['a', 'a', 'a', 'a', 'a']);
});

test('D33: lags and a part’s arrival over the calendar of somebody who always works', () => {
  // Source: derived by hand, recomputed independently; a unit of the case is an hour here.
  const [hours, lag] = [
    60,
    (id: string, units: number) => ({ job: id, lagMinutes: units * 60, lagOn: 'clock' as const }),
  ];
  const given = [
    job('P', 3 * hours),
    job('Q', 2 * hours, { after: [lag('P', 0)], releaseMinute: now + 4 * hours }),
    job('S', 4 * hours, { after: [lag('P', 2)] }),
    job('U', 1 * hours, { after: [lag('Q', 5), lag('S', 0)] }),
  ];
  const two = people(always, ['a', 'b']);
  const { bars, gateMinute } = levelCalendar(given, two, now);
  const inHours = (minute: number): number => (minute - now) / 60;
  expect(inHours(gateMinute)).toBe(12);
  expect(bars.map(({ earlyStart }) => inHours(earlyStart))).toEqual([0, 4, 5, 11]);
  expect(bars.map(({ earlyFinish }) => inHours(earlyFinish))).toEqual([3, 6, 9, 12]);
  expect(bars.map(({ lateStart }) => inHours(lateStart))).toEqual([1, 4, 7, 11]);
  expect(bars.map(({ floatMinutes }) => floatMinutes / 60)).toEqual([1, 0, 2, 0]);
  expect(bars[1]?.heldBy).toEqual({ by: 'release' });
  expect(bars[3]?.heldBy).toEqual({ by: 'job', id: 'Q', lagMinutes: 300, lagOn: 'clock' });
});

test('D41: work, a cure of 24 hours without hands, then work', () => {
  // Source: derived by hand, recomputed independently.
  const { bars } = levelCalendar(
    [
      job('glue', 300),
      job('cure', 1440, { hands: false, after: after('glue') }),
      job('fit', 200, { after: after('cure') }),
    ],
    people(evenings),
    now,
  );
  expect(bars.map(({ startMinute, finishMinute }) => [startMinute, finishMinute].map(formatInstant))).toEqual([
    ['2026-03-03T18:30', '2026-03-05T21:00'],
    ['2026-03-05T21:00', '2026-03-06T21:00'],
    ['2026-03-07T09:00', '2026-03-07T12:20'],
  ]);
});

test('a tool that exists once is used by one job at a time, and the other says what it waits for', () => {
  const given = [job('x', 120, { tools: ['7'] }), job('y', 120, { tools: ['7'] })];
  const { bars, gateMinute } = levelCalendar(given, people(always, ['a', 'b']), now);
  // By hand: two people, one tool: two hours and two hours.
  expect(gateMinute - now).toBe(240);
  expect(bars[1]?.heldBy).toEqual({ by: 'tool', tool: '7', id: 'x' });
  expect(overAllocations(given, bars)).toEqual([]);
});

test('a job of somebody waits for that person, a job of anyone takes who is free', () => {
  const given = [job('x', 120, { person: 'a' }), job('y', 60), job('z', 60, { person: 'a' })];
  const { bars } = levelCalendar(given, people(always, ['a', 'b']), now);
  expect(bars.map(({ who, startMinute }) => [who, startMinute - now])).toEqual([
    ['a', 0],
    ['b', 0],
    ['a', 120],
  ]);
  expect(bars[2]?.heldBy).toEqual({ by: 'person', id: 'x' });
});

/** Jobs over a person or two, each waiting for some before it in the list. */
const anyJobs = fc
  .array(
    fc.record({
      minutes: fc.integer({ min: 0, max: 600 }),
      hands: fc.boolean(),
      oneSitting: fc.boolean(),
      person: fc.constantFrom(null, 'a', 'b'),
      release: fc.integer({ min: 0, max: 20_000 }),
      earlier: fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 3000 }), fc.boolean()), { maxLength: 3 }),
      tools: fc.subarray(['t', 'u']),
      beforeGate: fc.boolean(),
    }),
    { minLength: 1, maxLength: 14 },
  )
  .map((rows) =>
    rows.map(({ minutes, release, earlier, ...own }, at) =>
      job(`j${at}`, minutes, {
        ...own,
        releaseMinute: now + release,
        after: (at === 0 ? [] : earlier).map(([to, lagMinutes, clock]) => ({
          job: `j${to % at}`,
          lagMinutes,
          lagOn: clock ? ('clock' as const) : ('work' as const),
        })),
      }),
    ),
  );

test('no job begins before its earlier ones, nothing is used twice at once, days off are kept, the gate is never below the network’s', () => {
  const [off, both] = ['2026-03-07', people(evenings, ['a', 'b'], ['2026-03-07', '2026-03-10'])];
  const network = (given: CalendarJob[]) => calendarNetwork(given, both, now);
  fc.assert(
    fc.property(anyJobs, (given) => {
      const { bars, gateMinute, networkMinute } = levelCalendar(given, both, now);
      const byId = new Map(bars.map((bar) => [bar.id, bar]));
      expect(overAllocations(given, bars)).toEqual([]);
      expect(gateMinute).toBeGreaterThanOrEqual(networkMinute);
      for (const one of given) {
        const bar = byId.get(one.id);
        if (bar === undefined) throw new Error('lost');
        expect(bar.startMinute).toBeGreaterThanOrEqual(one.releaseMinute);
        expect(bar.startMinute).toBeGreaterThanOrEqual(bar.earlyStart);
        expect(bar.lateStart).toBeGreaterThanOrEqual(bar.earlyStart);
        expect(bar.slackMinutes).toBeGreaterThanOrEqual(0);
        for (const link of one.after) {
          expect(bar.startMinute).toBeGreaterThanOrEqual(
            network(given).over(link, byId.get(link.job)?.finishMinute ?? 0),
          );
        }
        if (one.person !== null && bar.who !== null) expect(bar.who).toBe(one.person);
        if (bar.who === null) expect(bar.finishMinute - bar.startMinute).toBe(one.minutes);
        else {
          const time = both.find(({ id }) => id === bar.who)?.time ?? { byWeekday: new Map(), byDay: new Map() };
          expect(workingMinutes(time, bar.startMinute, bar.finishMinute)).toBe(one.minutes);
          expect(formatInstant(bar.startMinute).slice(0, 10)).not.toBe(off);
        }
      }
    }),
    { numRuns: 60 },
  );
});

test('over hours that never end, the two passes are those of the network', () => {
  fc.assert(
    fc.property(anyJobs, (rows) => {
      const given = rows.map((one) => ({
        ...one,
        beforeGate: true,
        oneSitting: false,
        after: one.after.map((link) => ({ ...link, lagOn: 'clock' as const })),
      }));
      const expected = networkTimes(
        given.map(({ id, minutes, releaseMinute, after: links }) => ({
          id,
          duration: minutes,
          notBefore: releaseMinute - now,
          after: links.map((link) => ({ id: link.job, lag: link.lagMinutes })),
        })),
      );
      const network = calendarNetwork(given, people(always, ['a', 'b']), now);
      const times = calendarTimes(network, now);
      const byId = new Map(network.jobs.map(({ id }, at) => [id, times[at]]));
      for (const one of expected.jobs) {
        const own = byId.get(one.id);
        expect([own?.earlyStart, own?.earlyFinish, own?.lateStart].map((minute) => (minute ?? 0) - now)).toEqual([
          one.earlyStart,
          one.earlyFinish,
          one.lateStart,
        ]);
        expect(own?.critical).toBe(one.critical);
      }
    }),
    { numRuns: 60 },
  );
});

test('more hours never make the gate later', () => {
  const plain = anyJobs.map((rows) =>
    rows.map((one) => ({
      ...one,
      oneSitting: false,
      tools: [],
      person: null,
      after: after(...one.after.map((link) => link.job)),
    })),
  );
  fc.assert(
    fc.property(plain, anyJobs, (rows, mixed) => {
      const [few, more] = [
        people(evenings),
        people([...evenings, ...saturdays.map((window) => ({ ...window, weekday: 7 }))]),
      ];
      // One person, no lags, sittings or tools: the gate is as soon as can be either way.
      const single = rows.map((one) => ({ ...one, hands: true, beforeGate: true }));
      expect(levelCalendar(single, more, now).gateMinute).toBeLessThanOrEqual(
        levelCalendar(single, few, now).gateMinute,
      );
      // In general the sequence of the plan before is tried too; a person whose hours only grow begins nothing later.
      const line = mixed.map((one) => ({ ...one, minutes: one.oneSitting ? Math.min(one.minutes, 360) : one.minutes }));
      const [fewer, longer] = [few, more].map((time) =>
        ['a', 'b'].map((id) => ({ id, name: id, time: time[0]?.time ?? never })),
      );
      const before = levelCalendar(line, fewer ?? [], now);
      const shifted = levelCalendar(line, longer ?? [], now, now, [before.sequence]);
      expect(shifted.gateMinute).toBeLessThanOrEqual(before.gateMinute);
    }),
    { numRuns: 60 },
  );
});

test('three hundred jobs are levelled without anything used twice at once', () => {
  const given = Array.from({ length: 300 }, (_, at) =>
    job(`j${at}`, 30 + ((at * 37) % 300), {
      after: at < 5 ? [] : after(`j${at - 5}`),
      tools: at % 7 === 0 ? ['lift'] : [],
      releaseMinute: now + ((at * 991) % 40) * 1440,
    }),
  );
  const { bars } = levelCalendar(given, people(evenings, ['a', 'b']), now);
  expect(bars.length).toBe(300);
  expect(overAllocations(given, bars)).toEqual([]);
});
