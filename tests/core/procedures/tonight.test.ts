import { describe, expect, it } from 'vitest';
import { type Bench, openBench, refusalOf } from './bench.ts';
import { firstMade } from './orders-life.ts';

// All expected values here are worked by hand from what the acts are to do.
type Values = Record<string, unknown>;
const save = async (bench: Bench, kind: 'job' | 'person' | 'tool', values: Values) =>
  firstMade(await bench.client.records.save({ ...bench.act(), kind, build: bench.build, values }));
const viewOf = (bench: Bench, more: { minutes?: number; place?: string } = {}) =>
  bench.client.tonight.view({ build: bench.build, minutes: 180, ...more });
const jobOf = async (bench: Bench, job: number) => {
  const { phases } = await bench.client.plan.view({ build: bench.build });
  return phases.flatMap(({ jobs }) => jobs).find(({ id }) => id === job);
};
const titles = async (bench: Bench, more: { minutes?: number; place?: string } = {}) =>
  (await viewOf(bench, more)).jobs.map(({ job }) => job.title).sort();
const start = (bench: Bench, job: number, by = 'Ray') => bench.client.tonight.start({ ...bench.act(), job, by });
const stop = (bench: Bench, job: number, more: { minutes?: number; leftMinutes?: number } = {}) =>
  bench.client.tonight.stop({ ...bench.act(), job, by: '', minutes: null, leftMinutes: null, ...more });
const done = (bench: Bench, job: number, more: { by?: string; minutes?: number | null } = {}) =>
  bench.client.tonight.done({ ...bench.act(), job, by: '', note: '', minutes: null, ...more });

describe('work by the clock', () => {
  it('is started, seen, stopped with its hours, and the leftover stands by the guess', async () => {
    const bench = await openBench();
    const job = await save(bench, 'job', { title: 'Hang the crank', minutesGuess: 120 });
    bench.clock('19:10');
    expect((await start(bench, job)).label).toBe('Start of Hang the crank');
    bench.clock('19:55');
    const [entry] = (await viewOf(bench)).jobs;
    expect(entry?.running).toEqual({ by: 'Ray', at: '2026-03-02T19:10:00.000Z', minutes: 45, unsure: false });
    expect((await viewOf(bench)).answer).toContain('At work: “Hang the crank”.');
    expect(entry?.says).toContain('1 h 15 min left by the guess');
    const stopped = await stop(bench, job);
    expect(stopped).toMatchObject({ label: 'Stop of Hang the crank after 45 min', notices: [] });
    const [after] = (await viewOf(bench)).jobs;
    expect(after).toMatchObject({ running: null, minutesLeft: 75 });
    expect(await jobOf(bench, job)).toMatchObject({ minutesSpent: 45, minutesGuess: 120, done: false });
    await bench.undoAndRedo();
    const texts = (await bench.client.journal.list({ build: bench.build, limit: 20 })).rows.map(({ text }) => text);
    expect(texts).toContain('job started: Hang the crank (by Ray)');
    expect(texts).toContain('job stopped: Hang the crank (45 min, by Ray)');
    expect(texts).toContain('hours worked: Hang the crank (45 min, by Ray)');
  });

  it('makes what is left the new guess in the same act, which undo takes back whole', async () => {
    const bench = await openBench();
    const guess = { minutesGuess: 120, minutesLow: 90, minutesHigh: 150 };
    const job = await save(bench, 'job', { title: 'Port the head', ...guess });
    await start(bench, job);
    bench.clock('13:00');
    await stop(bench, job, { leftMinutes: 180 });
    expect(await jobOf(bench, job)).toMatchObject({
      minutesSpent: 60,
      minutesGuess: 240,
      minutesLow: 90,
      minutesHigh: 240,
    });
    expect((await viewOf(bench)).jobs[0]?.minutesLeft).toBe(180);
    await bench.client.journal.undo({ key: 'undo-the-stop' });
    expect(await jobOf(bench, job)).toMatchObject({ minutesSpent: 0, ...guess });
    expect((await viewOf(bench)).jobs[0]?.running).toMatchObject({ minutes: 60 });
    await bench.verify();
    // Less than guessed is a new guess too.
    await stop(bench, job, { leftMinutes: 15 });
    expect(await jobOf(bench, job)).toMatchObject({ minutesGuess: 75, minutesLow: 75, minutesHigh: 150 });
  });

  it('asks what is left when the guess is used up, and takes the answer as an act of its own', async () => {
    const bench = await openBench();
    const job = await save(bench, 'job', { title: 'Lap the valves', minutesGuess: 30 });
    await start(bench, job);
    bench.clock('13:00');
    expect((await stop(bench, job)).notices).toEqual(['The guess of 30 min is used up: say what is left.']);
    expect((await viewOf(bench)).jobs[0]).toMatchObject({ minutesLeft: null, fits: 'not guessed' });
    await bench.client.tonight.left({ ...bench.act(), job, leftMinutes: 20 });
    expect((await viewOf(bench)).jobs[0]).toMatchObject({ minutesLeft: 20, fits: 'whole' });
    await bench.undoAndRedo();
  });

  it('finishes with the hours of the clock, and without the clock with those said or none', async () => {
    const bench = await openBench();
    const one = await save(bench, 'job', { title: 'One', minutesGuess: 60 });
    const two = await save(bench, 'job', { title: 'Two', minutesGuess: 60 });
    const signed = await save(bench, 'job', { title: 'Signed', needsSignOff: true });
    await start(bench, one);
    bench.clock('12:50');
    await done(bench, one);
    expect(await jobOf(bench, one)).toMatchObject({ done: true, minutesSpent: 50, signedBy: 'Ray' });
    await bench.undoAndRedo();
    await done(bench, two);
    expect(await jobOf(bench, two)).toMatchObject({ done: true, minutesSpent: 0 });
    expect((await refusalOf(done(bench, signed))).field).toBe('by');
    await done(bench, signed, { by: 'Ann', minutes: 40 });
    expect(await jobOf(bench, signed)).toMatchObject({ done: true, minutesSpent: 40, signedBy: 'Ann' });
  });

  it('asks how long it was when it ran over night, or the clock was set back', async () => {
    const bench = await openBench();
    const job = await save(bench, 'job', { title: 'Set the lash', minutesGuess: 60 });
    bench.clock('21:40');
    await start(bench, job);
    bench.today('2026-03-03');
    bench.clock('10:00');
    expect((await viewOf(bench)).jobs[0]?.running).toMatchObject({ minutes: 740, unsure: true });
    const refusal = await refusalOf(stop(bench, job));
    expect(refusal).toMatchObject({ field: 'minutes', accepted: 'how long was really worked, from 0 minutes' });
    expect(refusal.message).toContain('Nothing was changed.');
    expect((await refusalOf(done(bench, job))).field).toBe('minutes');
    await stop(bench, job, { minutes: 50 });
    expect(await jobOf(bench, job)).toMatchObject({ minutesSpent: 50 });
    await start(bench, job);
    bench.clock('09:00');
    expect((await refusalOf(stop(bench, job))).field).toBe('minutes');
    // A quarter past midnight is the same evening.
    await stop(bench, job, { minutes: 0 });
    bench.clock('23:45');
    await start(bench, job);
    bench.today('2026-03-04');
    bench.clock('00:15');
    await stop(bench, job);
    expect(await jobOf(bench, job)).toMatchObject({ minutesSpent: 80 });
  });

  it('has one person at one job: starting another stops the first in the same act', async () => {
    const bench = await openBench();
    const one = await save(bench, 'job', { title: 'One', minutesGuess: 90 });
    const two = await save(bench, 'job', { title: 'Two', minutesGuess: 90 });
    const three = await save(bench, 'job', { title: 'Three', minutesGuess: 90 });
    await start(bench, one, 'Ray');
    bench.clock('12:20');
    await start(bench, two, 'Ann');
    expect((await viewOf(bench)).answer).toContain('1 other job is going too');
    expect((await start(bench, three, 'ray ')).notices).toEqual(['“One” was stopped after 20 min.']);
    const running = (await viewOf(bench)).jobs.filter((entry) => entry.running !== null);
    expect(running.map(({ job, running: by }) => [job.title, by?.by])).toEqual([
      ['Two', 'Ann'],
      ['Three', 'ray'],
    ]);
    expect(await jobOf(bench, one)).toMatchObject({ minutesSpent: 20 });
    await bench.client.journal.undo({ key: 'undo-the-start' });
    expect((await viewOf(bench)).jobs.find(({ job }) => job.id === one)?.running).toMatchObject({ minutes: 20 });
    await bench.verify();
  });

  it('refuses a job that is going, done, dropped or not there, and stopping what nobody is at', async () => {
    const bench = await openBench();
    const job = await save(bench, 'job', { title: 'Hone' });
    for (const call of [stop(bench, job), start(bench, 99)]) expect((await refusalOf(call)).field).toBe('job');
    await start(bench, job);
    const again = await refusalOf(start(bench, job, 'Ann'));
    expect(again).toMatchObject({ field: 'job' });
    expect(again.message).toBe('“Hone” was started by Ray at 12:00 and is still going. Nothing was changed.');
    await done(bench, job);
    expect((await refusalOf(start(bench, job))).message).toBe('“Hone” is done. Nothing was changed.');
    const dropped = await save(bench, 'job', { title: 'Deck' });
    await start(bench, dropped);
    await bench.client.records.retire({ ...bench.act(), kind: 'job', id: dropped, reason: 'not needed', back: false });
    expect((await refusalOf(stop(bench, dropped))).code).toBe('retired');
    const other = await save(bench, 'job', { title: 'Wash' });
    expect((await start(bench, other)).notices).toEqual([]);
    await bench.verify();
  });
});

describe('where and when', () => {
  it('shows the jobs of the place and those of none, and says what is done elsewhere', async () => {
    const bench = await openBench();
    await save(bench, 'job', { title: 'Bolt up', minutesGuess: 60, place: 'Garage' });
    await save(bench, 'job', { title: 'Clean bolts', minutesGuess: 60 });
    await save(bench, 'job', { title: 'Measure caps', minutesGuess: 60, place: 'kitchen table' });
    expect(await titles(bench)).toEqual(['Bolt up', 'Clean bolts', 'Measure caps']);
    const view = await viewOf(bench, { place: ' garage' });
    expect(view.places).toEqual(['Garage', 'kitchen table']);
    expect(await titles(bench, { place: ' garage' })).toEqual(['Bolt up', 'Clean bolts']);
    expect(view.others).toEqual([
      expect.objectContaining({ title: 'Measure caps', says: 'done at another place, kitchen table' }),
    ]);
    expect(await titles(bench, { place: 'shed' })).toEqual(['Clean bolts']);
  });

  it('leaves out what may not begin yet: a day of its own, a wait after a job that is done', async () => {
    const bench = await openBench();
    const paint = await save(bench, 'job', { title: 'Paint', minutesGuess: 30 });
    const lags = [{ job: paint, minutes: 2880, on: 'clock' }];
    await save(bench, 'job', { title: 'Fit covers', minutesGuess: 60, earlier: [paint], lags });
    await save(bench, 'job', { title: 'Tune', minutesGuess: 60, notBefore: '2026-03-09' });
    // The paint of this session is not dry in it.
    expect(await titles(bench)).toEqual(['Paint']);
    await done(bench, paint);
    const view = await viewOf(bench);
    expect(view.jobs).toEqual([]);
    expect(view.answer).toBe('No job can begin now: each waits.');
    expect(view.begin).toBe('“Fit covers”: the wait after an earlier job lasts until 4 Mar 2026.');
    expect(view.others.map(({ title, says }) => `${title}: ${says}`)).toEqual([
      'Fit covers: the wait after an earlier job lasts until 4 Mar 2026',
      'Tune: not before 9 Mar 2026',
    ]);
    // The Plan says the same.
    const plan = await bench.client.plan.view({ build: bench.build });
    expect(plan.answer).toContain('0 can be done tonight');
    expect(plan.phases.flatMap(({ jobs }) => jobs).map(({ waitsFor }) => waitsFor)).toEqual([
      [],
      ['the wait after an earlier job, until 4 Mar 2026'],
      ['its day, 9 Mar 2026'],
    ]);
    bench.today('2026-03-05');
    expect(await titles(bench)).toEqual(['Fit covers']);
  });

  it('says what a job uses up, for whom it is, and what runs by itself', async () => {
    const bench = await openBench();
    const ann = await save(bench, 'person', { name: 'Ann' });
    const job = await save(bench, 'job', {
      title: 'Assemble',
      minutesGuess: 60,
      person: ann,
      consumables: 'rags, assembly lube; ',
    });
    await bench.client.parts.add({
      ...bench.act(),
      build: bench.build,
      parts: [{ description: 'break-in oil', needMilli: 5000, unit: 'L', job }],
    });
    await save(bench, 'job', { title: 'Cure', minutesGuess: 1440, hands: false });
    const view = await viewOf(bench);
    const cure = view.jobs.find(({ job: { title } }) => title === 'Cure');
    expect(cure).toMatchObject({ fits: 'begun', minutesTonight: 0 });
    expect(cure?.says).toBe('Needs nobody’s hands: set it going. Then 24 h pass by the clock.');
    expect(view.minutesOver).toBe(180);
    await start(bench, job);
    const [assemble] = (await viewOf(bench)).jobs;
    expect(assemble).toMatchObject({ who: 'Ann', consumables: ['rags', 'assembly lube', '5 L break-in oil'] });
  });
});
