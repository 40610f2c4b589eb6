import { expect, test } from 'vitest';
import { type Bench, openBench } from './bench.ts';
import { addVendor, draftLine, firstMade, placeOne } from './orders-life.ts';

const save = async (bench: Bench, kind: 'job' | 'person' | 'calendarDay' | 'tool', values: Record<string, unknown>) =>
  firstMade(await bench.client.records.save({ ...bench.act(), kind, build: bench.build, values }));
const barsOf = (bench: Bench, asOf?: string) =>
  bench.client.plan.bars({ build: bench.build, ...(asOf === undefined ? {} : { asOf }) });

test('D35, D41 and D37: jobs one after another over the evenings, a cure between, a day off', async () => {
  // Source of the days: derived by hand, recomputed independently. The clock of the test stands at noon on Monday.
  const bench = await openBench({ today: '2026-03-02' });
  const glue = await save(bench, 'job', { title: 'Glue', minutesGuess: 300 });
  await save(bench, 'job', {
    title: 'Fit',
    minutesGuess: 200,
    earlier: [glue],
    lags: [{ job: glue, minutes: 1440, on: 'clock' }],
  });
  const view = await barsOf(bench);
  expect(view.bars.map(({ startOn, startAt, finishOn, finishAt }) => [startOn, startAt, finishOn, finishAt])).toEqual([
    ['2026-03-03', '18:30', '2026-03-05', '21:00'],
    ['2026-03-07', '09:00', '2026-03-07', '12:20'],
  ]);
  expect(view.bars.map(({ state, critical, heldBy }) => [state, critical, heldBy])).toEqual([
    ['free', true, ''],
    ['waiting for another job', true, 'the job “Glue” and 24 h after it'],
  ]);
  expect(view.gate).toEqual({ name: 'engine-in', on: '2026-03-07', networkOn: '2026-03-07' });
  expect(view.overAllocated).toEqual([]);
  await save(bench, 'calendarDay', { on: '2026-03-05' });
  // By hand: without the Thursday the 300 minutes are done on Saturday at 11:30; a day later is Sunday, so Tuesday.
  const later = await barsOf(bench);
  expect(later.bars.map(({ finishOn, finishAt }) => [finishOn, finishAt])).toEqual([
    ['2026-03-07', '11:30'],
    ['2026-03-12', '19:20'],
  ]);
});

test('two people work side by side, a named job waits for its person, one tool for one job', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const ann = await save(bench, 'person', { name: 'Ann' });
  await save(bench, 'person', { name: 'Bo' });
  const press = await save(bench, 'tool', { name: 'press' });
  const tools = [press];
  await bench.client.records.toolStanding({ ...bench.act(), tool: press, atHand: true, whereabouts: '', dueOn: null });
  await save(bench, 'job', { title: 'One', minutesGuess: 150, person: ann });
  await save(bench, 'job', { title: 'Two', minutesGuess: 150, person: ann });
  await save(bench, 'job', { title: 'Three', minutesGuess: 90, tools });
  await save(bench, 'job', { title: 'Four', minutesGuess: 60, tools });
  const { bars, overAllocated, people } = await barsOf(bench);
  expect(people).toEqual(['Ann', 'Bo']);
  expect(overAllocated).toEqual([]);
  // By hand: Ann has Tuesday and Thursday full; Bo presses on Tuesday 18:30–20:00 and 20:00–21:00.
  expect(bars.map(({ title, who, startOn, startAt }) => [title, who, startOn, startAt])).toEqual([
    ['One', 'Ann', '2026-03-03', '18:30'],
    ['Two', 'Ann', '2026-03-05', '18:30'],
    ['Three', 'Bo', '2026-03-03', '18:30'],
    ['Four', 'Bo', '2026-03-03', '20:00'],
  ]);
  expect(bars.map(({ heldBy }) => heldBy)).toEqual([
    '',
    'Ann does “One” first',
    '',
    'the press is used for “Three” first',
  ]);
});

test('a part on its way, a tool away and a day of its own set beginnings, and the state says what is lacking', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const fit = await save(bench, 'job', { title: 'Fit the rods', minutesGuess: 60 });
  const rod = firstMade(
    await bench.client.parts.add({
      ...bench.act(),
      build: bench.build,
      parts: [{ description: 'Rod', needMilli: 8000, unit: 'each', job: fit }],
    }),
  );
  await placeOne(bench, vendor, [draftLine(rod, 8, 8000)], { promisedOn: '2026-03-12' });
  const gauge = await save(bench, 'tool', { name: 'cam gauge', dueOn: '2026-03-10' });
  await save(bench, 'job', { title: 'Degree the cam', minutesGuess: 60, tools: [gauge] });
  await save(bench, 'job', { title: 'Paint', minutesGuess: 60, notBefore: '2026-03-06' });
  const view = await barsOf(bench);
  const byTitle = new Map(view.bars.map((bar) => [bar.title, bar]));
  // By hand: the promise of 12 March is ten days on, at the clock's noon; the evening of that day is a working one.
  expect(byTitle.get('Fit the rods')).toMatchObject({
    state: 'waiting for parts',
    startOn: '2026-03-12',
    startAt: '18:30',
    critical: true,
    heldBy: 'the part Rod: as likely as not on 12 Mar 2026',
  });
  expect(view.gate.on).toBe('2026-03-12');
  expect(view.chain.map(({ says }) => says)).toEqual([
    'the part Rod: as likely as not on 12 Mar 2026',
    '“Fit the rods”, done on 12 Mar 2026',
  ]);
  expect(byTitle.get('Degree the cam')).toMatchObject({
    state: 'waiting for a tool',
    startOn: '2026-03-10',
    heldBy: 'the cam gauge, due 10 Mar 2026',
  });
  expect(byTitle.get('Paint')).toMatchObject({ state: 'free', startOn: '2026-03-07', heldBy: 'not before 6 Mar 2026' });
});

test('done jobs keep their real days, one begun is in hand, and nobody with hours means no days', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const done = await save(bench, 'job', { title: 'Clean', minutesGuess: 60 });
  const begun = await save(bench, 'job', { title: 'Hone', minutesGuess: 100 });
  await bench.client.plan.addHours({ ...bench.act(), job: done, minutes: 30, note: '' });
  bench.today('2026-03-04');
  await bench.client.plan.finishJob({
    ...bench.act('2026-03-04'),
    jobs: [done],
    by: 'Bo',
    minutesSpent: null,
    note: '',
  });
  await bench.client.plan.addHours({ ...bench.act('2026-03-04'), job: begun, minutes: 40, note: '' });
  const view = await barsOf(bench);
  expect(view.bars).toMatchObject([
    { state: 'done', startOn: '2026-03-02', finishOn: '2026-03-04', critical: false },
    { state: 'in hand', startOn: '2026-03-04', finishOn: '2026-03-05', finishAt: '19:30', minutesLeft: 60 },
  ]);
  // Before the second day nothing was done yet.
  const past = await barsOf(bench, '2026-03-03');
  expect(past.bars.map(({ state }) => state)).toEqual(['in hand', 'free']);
  await bench.client.workbook.saveSettings({ key: bench.act().key, settings: { weekWindows: [] } });
  const none = await barsOf(bench);
  expect(none.gate.on).toBeNull();
  expect(none.answer).toBe('No days can be said: 1 job open, and nobody has free hours.');
});

test('a job finished before one that it should follow keeps its day, and the answer tells of it', async () => {
  // A rule of this program: what happened stays, the broken order is told.
  const bench = await openBench({ today: '2026-03-02' });
  const glue = await save(bench, 'job', { title: 'Glue', minutesGuess: 300 });
  const fit = await save(bench, 'job', { title: 'Fit', minutesGuess: 200, earlier: [glue] });
  expect((await barsOf(bench)).answer).not.toContain('although');
  await bench.client.plan.finishJob({ ...bench.act(), jobs: [fit], by: 'Bo', minutesSpent: null, note: '' });
  const { answer, bars } = await barsOf(bench);
  expect(bars.find(({ id }) => id === fit)).toMatchObject({ state: 'done', finishOn: '2026-03-02' });
  expect(answer).toContain('“Fit” is done although “Glue”, which comes before it, is not.');
});
