import { expect, test } from 'vitest';
import { parseInstant } from '../../../core/dates/instant.ts';
import { workingMinutes } from '../../../core/schedule/working-time.ts';
import { peopleOf } from '../../../core/workbook/store/calendar.ts';
import { forecastFacts } from '../../../core/workbook/store/forecast-facts.ts';
import { type Bench, openBench, refusalOf } from './bench.ts';
import { firstMade } from './orders-life.ts';

const save = async (bench: Bench, kind: 'job' | 'person' | 'calendarDay', values: Record<string, unknown>) =>
  firstMade(await bench.client.records.save({ ...bench.act(), kind, build: bench.build, values }));
const expectRefusal = async (call: Promise<unknown>, code: string, field: string): Promise<void> => {
  expect(await refusalOf(call)).toMatchObject({ code, field });
};
const factsOf = (bench: Bench, at: string) =>
  forecastFacts(bench.context.book().connection, bench.build, at.slice(0, 10), undefined, parseInstant(at));

test('without people on the list one builder has the hours of the settings and the days of the calendar', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  await save(bench, 'calendarDay', { on: '2026-03-05' });
  const people = peopleOf(bench.context.book().connection, bench.build, bench.context.settings());
  expect(people.map(({ id }) => id)).toEqual(['builder']);
  // D40 (derived by hand, recomputed independently): March has 2,640 minutes with Thursday 5 off.
  const [from, to] = [parseInstant('2026-03-01T00:00'), parseInstant('2026-04-01T00:00')];
  expect(people.map(({ time }) => workingMinutes(time, from, to))).toEqual([2640]);
});

test('the forecast is told who works, and of each job its three points, lags, first day, sitting, hands and person', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const bo = await save(bench, 'person', { name: 'Bo', windows: [{ weekday: 1, from: '08:00', to: '12:00' }] });
  const glue = await save(bench, 'job', { title: 'Glue the pan', minutesGuess: 100, minutesLow: 90, minutesHigh: 300 });
  const cure = await save(bench, 'job', {
    title: 'Let it cure',
    minutesGuess: 1440,
    hands: false,
    earlier: [glue],
    lags: [{ job: glue, minutes: 30, on: 'clock' }],
    notBefore: '2026-03-09',
  });
  await save(bench, 'job', { title: 'Fit it', minutesGuess: 60, oneSitting: true, person: bo, earlier: [cure] });
  const facts = factsOf(bench, '2026-03-02T10:00');
  expect(facts.people.map(({ name }) => name)).toEqual(['Bo']);
  // By hand from what was typed.
  expect(facts.jobs).toMatchObject([
    { minutes: { low: 90, likely: 100, high: 300 }, hands: true, person: null, oneSitting: false },
    {
      hands: false,
      notBeforeMinute: parseInstant('2026-03-09T00:00'),
      after: [{ job: String(glue), lagMinutes: 30, lagOn: 'clock' }],
    },
    { hands: true, person: String(bo), oneSitting: true },
  ]);
  const view = await bench.client.forecast.run({ build: bench.build, runs: 50, seed: 1 });
  expect(view.assumes[0]).toBe('Work is done by one person, Bo, in the hours of the calendar.');
});

test('a lag after a job that is done runs from the end of its day', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const glue = await save(bench, 'job', { title: 'Glue the pan', minutesGuess: 60 });
  await save(bench, 'job', {
    title: 'Fit it',
    minutesGuess: 60,
    earlier: [glue],
    lags: [{ job: glue, minutes: 1440, on: 'clock' }],
  });
  await bench.client.plan.finishJob({ ...bench.act(), jobs: [glue], by: 'Bo', minutesSpent: null, note: '' });
  bench.today('2026-03-03');
  // By hand: the day of the 2nd ends at midnight, and 24 hours later it is midnight again.
  expect(factsOf(bench, '2026-03-03T10:00').jobs[0]?.notBeforeMinute).toBe(parseInstant('2026-03-04T00:00'));
});

test('a sitting longer than every window is said', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  await save(bench, 'job', { title: 'Paint', minutesGuess: 420, oneSitting: true });
  // D39 (derived by hand, recomputed independently): the longest window of the week is 6 h.
  expect(factsOf(bench, '2026-03-02T10:00').gaps.map(({ why }) => why)).toEqual([
    'a sitting of 7 h never fits: the longest window is 6 h; counted over several',
  ]);
});

test('hours at best and at worst stand around the guess, and lags after earlier jobs only', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const job = await save(bench, 'job', { title: 'Hone', minutesGuess: 100 });
  const change = (values: Record<string, unknown>) =>
    bench.client.records.save({ ...bench.act(), kind: 'job', id: job, values });
  await expectRefusal(change({ minutesLow: 101 }), 'bad-input', 'minutesLow');
  await expectRefusal(change({ minutesHigh: 99 }), 'bad-input', 'minutesHigh');
  await expectRefusal(change({ minutesGuess: null, minutesLow: 50, minutesHigh: 40 }), 'bad-input', 'minutesHigh');
  await change({ minutesLow: 100, minutesHigh: 100 });
  // What stands is looked at as well as what is typed.
  await expectRefusal(change({ minutesGuess: 120 }), 'bad-input', 'minutesHigh');
  await expectRefusal(change({ lags: [{ job, minutes: 5, on: 'clock' }] }), 'bad-input', 'lags');
  await expectRefusal(change({ person: 77 }), 'not-found', 'person');
});

test('days and hours of the calendar are in order', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const day = (values: Record<string, unknown>) => save(bench, 'calendarDay', { on: '2026-03-05', ...values });
  await expectRefusal(day({ until: '2026-03-04' }), 'bad-input', 'until');
  await expectRefusal(day({ until: '2046-03-04' }), 'bad-input', 'until');
  await expectRefusal(day({ windows: [{ from: '10:00', to: '09:00' }] }), 'bad-input', 'windows');
  const overlapping = [
    { from: '09:00', to: '11:00' },
    { from: '10:00', to: '12:00' },
  ];
  await expectRefusal(day({ windows: overlapping }), 'bad-input', 'windows');
  const windows = overlapping.map((window) => ({ ...window, weekday: 1 }));
  await expectRefusal(save(bench, 'person', { name: 'Bo', windows }), 'bad-input', 'windows');
  expect(await day({ until: '2026-03-05' })).toBeGreaterThan(0);
});

test('jobs that would wait for each other are refused with the way round', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const x = await save(bench, 'job', { title: 'X' });
  const y = await save(bench, 'job', { title: 'Y', earlier: [x] });
  const z = await save(bench, 'job', { title: 'Z', earlier: [y] });
  // D34 (derived by hand, recomputed independently): the cycle is named.
  await expect(
    bench.client.records.save({ ...bench.act(), kind: 'job', id: x, values: { earlier: [z] } }),
  ).rejects.toThrow('These jobs would wait for each other: X → Z → Y → X. Nothing was changed.');
});
