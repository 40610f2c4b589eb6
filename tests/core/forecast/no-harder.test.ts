/**
 * What is compared never comes later by the luck of a sequence alone. Dispatching in the order of urgency has such
 * anomalies (R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17(2), 1969).
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseInstant } from '../../../core/dates/instant.ts';
import type { ForecastTask } from '../../../core/forecast/facts.ts';
import type { ForecastJob } from '../../../core/forecast/network.ts';
import { isNoHarder } from '../../../core/forecast/no-harder.ts';
import { wholeForecast } from '../../../core/forecast/view.ts';
import { peopleTimes, type WorkingPerson } from '../../../core/schedule/calendar.ts';

const nowMinute = parseInstant('2026-03-02T08:00');

const anyJobs = fc
  .array(
    fc.record({
      minutes: fc.integer({ min: 0, max: 600 }),
      hands: fc.boolean(),
      person: fc.constantFrom(null, 'a'),
      oneSitting: fc.boolean(),
      days: fc.integer({ min: 0, max: 30 }),
      earlier: fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 3000 }), fc.boolean()), { maxLength: 3 }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((rows) =>
    rows.map(({ minutes, earlier, days, ...own }, at) => {
      const most = own.oneSitting ? Math.min(60, minutes) : minutes;
      const job: ForecastJob = {
        ...own,
        id: `${at}`,
        name: `job ${at}`,
        minutes: { kind: 'pert', low: most / 2, likely: most * 0.75, high: most },
        after: (at === 0 ? [] : earlier).map(([to, lagMinutes, onClock]) => ({
          job: `${to % at}`,
          lagMinutes,
          lagOn: onClock ? ('clock' as const) : ('work' as const),
        })),
        arrivals: days > 15 ? [`d${at}`] : [],
      };
      return { job, days };
    }),
  );

function peopleOf(names: readonly string[], until: string, off: boolean): WorkingPerson[] {
  return peopleTimes({
    weekly: [
      { weekday: 2, from: '18:30', to: until },
      { weekday: 6, from: '09:00', to: '15:00' },
    ],
    people: names.map((id) => ({ id, name: id, weekly: [] })),
    days: off ? [{ on: '2026-03-03', until: '2026-03-10', person: null, windows: [] }] : [],
  });
}

function taskOf(rows: readonly { job: ForecastJob; days: number }[], people: readonly WorkingPerson[]): ForecastTask {
  const jobs = rows.map(({ job }) => job);
  const arrivals = rows.flatMap(({ job, days }) =>
    job.arrivals.map((id) => ({
      id,
      name: id,
      fromMinute: nowMinute,
      days: { kind: 'lognormal' as const, median: days, deviation: 0.5 },
      vendor: 'v',
    })),
  );
  const gates = [{ id: 'g', name: 'engine-in', jobs: jobs.map(({ id }) => id) }];
  return { nowMinute, facts: { people, jobs, arrivals, gates, coming: [], gaps: [], anything: true } };
}

test('more hours or one more person: P10, P50, P80 and P90 are not later than in the forecast compared with', () => {
  fc.assert(
    fc.property(anyJobs, fc.integer({ min: 0, max: 90 }), fc.boolean(), fc.boolean(), (rows, longer, off, joins) => {
      const before = taskOf(rows, peopleOf(['a'], '21:00', true));
      const hour = parseInstant('2026-03-02T21:00') + longer - parseInstant('2026-03-02T00:00');
      const until = `${Math.floor(hour / 60)}:${String(hour % 60).padStart(2, '0')}`;
      const after = taskOf(rows, peopleOf(joins ? ['a', 'b'] : ['a'], until, off));
      expect(isNoHarder(after, before)).toBe(true);
      const choice = { runs: 40, seed: 3, daysWonFor: 0 };
      const [then] = wholeForecast(before, choice).gates;
      const [now] = wholeForecast(after, { ...choice, comparedWith: before }).gates;
      for (const key of ['p10On', 'p50On', 'p80On', 'p90On'] as const) {
        expect((now?.[key] ?? '9') <= (then?.[key] ?? '')).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
});

test('one person without lags, cures and sittings: no day is later with more hours, compared or not', () => {
  fc.assert(
    fc.property(anyJobs, fc.integer({ min: 1, max: 59 }), fc.boolean(), (rows, longer, off) => {
      const plain = rows.map(({ job, days }) => ({
        job: { ...job, hands: true, oneSitting: false, after: job.after.map((link) => ({ ...link, lagMinutes: 0 })) },
        days,
      }));
      const choice = { runs: 40, seed: 3, daysWonFor: 0 };
      const until = `21:${String(longer).padStart(2, '0')}`;
      const [then] = wholeForecast(taskOf(plain, peopleOf(['a'], '21:00', true)), choice).gates;
      const [now] = wholeForecast(taskOf(plain, peopleOf(['a'], until, off)), choice).gates;
      for (const key of ['p10On', 'p50On', 'p80On', 'p90On'] as const) {
        expect((now?.[key] ?? '9') <= (then?.[key] ?? '')).toBe(true);
      }
    }),
    { numRuns: 60 },
  );
});

test('what got harder is compared as it comes: fewer hours, another wait, more to wait for, a sitting that never fits', () => {
  const row = (more: Partial<ForecastJob> = {}, days = 20) => {
    const minutes = { kind: 'constant' as const, value: 300 };
    return [{ job: { id: '0', name: 'j', minutes, hands: true, after: [], arrivals: ['d0'], ...more }, days }];
  };
  const base = taskOf(row(), peopleOf(['a'], '21:00', false));
  expect(isNoHarder(base, base)).toBe(true);
  expect(isNoHarder(taskOf(row(), peopleOf(['a'], '20:00', false)), base)).toBe(false);
  expect(isNoHarder(taskOf(row(), peopleOf(['a'], '21:00', true)), base)).toBe(false);
  expect(isNoHarder(taskOf(row({}, 25), peopleOf(['a'], '21:00', false)), base)).toBe(false);
  expect(isNoHarder(taskOf(row({ notBeforeMinute: nowMinute + 9 }), base.facts.people as WorkingPerson[]), base)).toBe(
    false,
  );
  expect(isNoHarder(base, taskOf(row({ arrivals: [] }), base.facts.people as WorkingPerson[]))).toBe(false);
  const sitting = (value: number) =>
    taskOf(row({ oneSitting: true, minutes: { kind: 'constant', value } }), base.facts.people as WorkingPerson[]);
  expect(isNoHarder(sitting(360), sitting(360))).toBe(true);
  expect(isNoHarder(sitting(361), sitting(361))).toBe(false);
});
