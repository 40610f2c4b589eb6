import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatInstant, parseInstant } from '../../../core/dates/instant.ts';
import { type CalendarPlan, type CalendarRange, peopleTimes, togetherTime } from '../../../core/schedule/calendar.ts';
import { placeWork, workingMinutes } from '../../../core/schedule/working-time.ts';

const evenings = [
  { weekday: 2, from: '18:30', to: '21:00' },
  { weekday: 4, from: '18:30', to: '21:00' },
  { weekday: 6, from: '09:00', to: '15:00' },
];
const all = (on: string, until: string | null, windows: CalendarRange['windows'] = []): CalendarRange => ({
  on,
  until,
  person: null,
  windows,
});
const plan = (
  days: readonly CalendarRange[],
  people: CalendarPlan['people'] = [{ id: 'a', name: 'Ann', weekly: [] }],
) => peopleTimes({ weekly: evenings, people, days });
const finish = (days: readonly CalendarRange[], start: string, minutes: number): string => {
  const [ann] = plan(days);
  return formatInstant(
    placeWork(ann?.time ?? { byWeekday: new Map(), byDay: new Map() }, parseInstant(start), minutes).finish,
  );
};

test('D37: ten hours with the Thursday off, said of everybody', () => {
  // Source: derived by hand, recomputed independently.
  expect(finish([all('2026-03-05', null)], '2026-03-02T08:00', 600)).toBe('2026-03-10T20:00');
});

test('a holiday of several days takes both its ends', () => {
  // By hand: Tuesday to Saturday are off, so ten hours run over Tuesday 10 (150 min), Thursday 12 (150) and Saturday 14.
  expect(finish([all('2026-03-03', '2026-03-07')], '2026-03-02T08:00', 600)).toBe('2026-03-14T14:00');
});

test('what is said of one person goes before what is said of everybody, and the later of two', () => {
  const people = [
    { id: 'a', name: 'Ann', weekly: [] },
    { id: 'b', name: 'Bo', weekly: [{ weekday: 1, from: '08:00', to: '12:00' }] },
  ];
  const extra = { on: '2026-03-05', until: null, person: 'b', windows: [{ from: '10:00', to: '11:00' }] };
  const [ann, bo] = plan(
    [extra, all('2026-03-02', '2026-03-08'), all('2026-03-07', null, [{ from: '09:00', to: '10:00' }])],
    people,
  );
  const [from, to] = [parseInstant('2026-03-02T00:00'), parseInstant('2026-03-09T00:00')];
  // By hand: Ann has the one hour of Saturday; Bo that and the hour of Thursday that is only Bo's.
  expect(ann === undefined ? 0 : workingMinutes(ann.time, from, to)).toBe(60);
  expect(bo === undefined ? 0 : workingMinutes(bo.time, from, to)).toBe(120);
});

test('together, a shop works when anybody does', () => {
  const time = togetherTime(
    plan(
      [{ on: '2026-03-03', until: null, person: 'a', windows: [] }],
      [
        { id: 'a', name: 'Ann', weekly: [] },
        { id: 'b', name: 'Bo', weekly: [{ weekday: 2, from: '20:00', to: '22:00' }] },
      ],
    ),
  );
  // By hand: on Tuesday 3 only Bo's two hours; on Tuesday 10 from 18:30 to 22:00.
  expect(workingMinutes(time, parseInstant('2026-03-03T00:00'), parseInstant('2026-03-04T00:00'))).toBe(120);
  expect(workingMinutes(time, parseInstant('2026-03-10T00:00'), parseInstant('2026-03-11T00:00'))).toBe(210);
});

test('an evening stays an evening when the clocks go forward', () => {
  // 29 March 2026 is the day of the change in the European Union (Directive 2000/84/EC, last Sunday of March). By hand:
  // 150 minutes on Saturday 28 from 12:30 end at 15:00; 60 more end on Tuesday at 19:30, as in any other week.
  expect(finish([], '2026-03-28T12:30', 210)).toBe('2026-03-31T19:30');
  expect(finish([], '2026-03-21T12:30', 210)).toBe('2026-03-24T19:30');
});

test('no minute is worked on a day off', () => {
  const day = fc
    .integer({ min: 0, max: 40 })
    .map((after) => formatInstant(parseInstant('2026-03-01T00:00') + after * 1440).slice(0, 10));
  fc.assert(
    fc.property(fc.array(day, { maxLength: 8 }), fc.integer({ min: 1, max: 4000 }), (off, minutes) => {
      const [ann] = plan(off.map((on) => all(on, null)));
      if (ann === undefined) return;
      const end = placeWork(ann.time, parseInstant('2026-03-01T00:00'), minutes).finish;
      for (const on of off) {
        const begin = parseInstant(`${on}T00:00`);
        expect(workingMinutes(ann.time, begin, begin + 1440)).toBe(0);
      }
      expect(off).not.toContain(formatInstant(end).slice(0, 10));
    }),
    { numRuns: 50 },
  );
});
