import { expect, test } from 'vitest';
import { parseInstant } from '../../../core/dates/instant.ts';
import { wholeForecast } from '../../../core/forecast/view.ts';
import { reviewOf } from '../../../core/procedures/gate.ts';
import { forecastFacts } from '../../../core/workbook/store/forecast-facts.ts';
import { leadRecords } from '../../../core/workbook/store/lead-records.ts';
import { type Bench, openBench } from './bench.ts';
import { addPart, addVendor, box, draftLine, firstMade, placeOne } from './orders-life.ts';

const jobValues = {
  phase: null,
  system: null,
  sort: 0,
  minutesGuess: null as number | null,
  tools: [] as number[],
  earlier: [] as number[],
  beforeGate: true,
  needsSignOff: false,
  note: '',
};

const addJob = async (bench: Bench, title: string, values: Partial<typeof jobValues> = {}): Promise<number> =>
  firstMade(
    await bench.client.records.save({
      ...bench.act(),
      kind: 'job',
      build: bench.build,
      values: { ...jobValues, title, ...values },
    }),
  );

const factsOn = (bench: Bench, day: string) =>
  forecastFacts(bench.context.book().connection, bench.build, day, undefined, parseInstant(`${day}T10:00`));

test('open jobs before the gate, with their minutes left as three points and their earlier jobs', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const hone = await addJob(bench, 'Hone the bores', { minutesGuess: 100 });
  const clean = await addJob(bench, 'Clean the block', { minutesGuess: 200, earlier: [hone] });
  const rings = await addJob(bench, 'Gap the rings', { earlier: [clean] });
  await addJob(bench, 'Wash the car', { minutesGuess: 60, beforeGate: false });
  await bench.client.plan.addHours({ ...bench.act(), job: clean, minutes: 170, note: '' });
  await bench.client.plan.finishJob({ ...bench.act(), jobs: [hone], by: 'Bo', minutesSpent: null, note: '' });
  const facts = factsOn(bench, '2026-03-02');
  // By hand from the stated rule: best 0.75 × 200 = 150, worst 2 × 200 = 400, less the 170 spent and never below zero.
  expect(facts.jobs).toMatchObject([
    { id: String(clean), minutes: { kind: 'pert', low: 0, likely: 30, high: 230 }, after: [] },
    { id: String(rings), minutes: { kind: 'constant', value: 0 }, after: [{ job: String(clean) }] },
  ]);
  expect(facts.gates).toMatchObject([{ id: 'engine-in', jobs: [String(clean), String(rings)], arrivals: [] }]);
  expect(facts.gaps).toMatchObject([{ kind: 'job', id: rings }]);
});

test('a part that is not ordered waits for an order of today, and its job with it', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const part = await addPart(bench, 'Rod', 8);
  const facts = factsOn(bench, '2026-03-02');
  expect(facts.arrivals.map(({ id }) => id)).toEqual([`part ${part}`]);
  // No order at any vendor: the median is that of a part in stock, 6 days (planning case table of priors; common
  // practice, no published source).
  expect(facts.coming[0]).toMatchObject({ basis: 'no-orders', count: 0, line: null });
  expect(facts.coming[0]?.p50Days).toBeCloseTo(6, 6);
  expect(facts.gaps).toMatchObject([{ kind: 'part', id: part }]);
});

test('an open line with a promise comes on that day while no promise has come due', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Rod', 8);
  const { line } = await placeOne(bench, vendor, [draftLine(part, 8, 8000)], { promisedOn: '2026-03-12' });
  const facts = factsOn(bench, '2026-03-02');
  // By hand: from 2 to 12 March are 10 days.
  expect(facts.arrivals).toMatchObject([{ id: `line ${line}`, days: { kind: 'constant', value: 10 } }]);
  expect(facts.coming).toMatchObject([{ line, basis: 'promise', count: 0 }]);
});

test('what is here is waited for no longer, and its line speaks for the vendor', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const [rods, caps] = [await addPart(bench, 'Rod', 8), await addPart(bench, 'Cap', 8)];
  const { order, detail } = await placeOne(bench, vendor, [draftLine(rods, 8, 8000), draftLine(caps, 8, 500)], {
    promisedOn: '2026-03-10',
  });
  const [first, second] = detail.lines.map(({ id }) => id) as [number, number];
  await bench.client.orders.backOrder({
    ...bench.act('2026-03-05'),
    order,
    lines: [{ line: second }],
    promisedOn: null,
    note: '',
  });
  bench.today('2026-03-15');
  await bench.client.orders.receiveBox({
    ...bench.act('2026-03-14'),
    order,
    bin: null,
    lines: [box(first, 8)],
    leaveForInspection: false,
    note: '',
  });
  const facts = factsOn(bench, '2026-03-15');
  expect(facts.coming.map(({ line }) => line)).toEqual([second]);
  // By hand: ordered on the 2nd and here on the 14th, 12 days; promised for the 10th, 4 days late. The other line waited
  // 3 days for its notice (2nd to 5th) and has waited 10 since (5th to 15th).
  const records = leadRecords(bench.context.book().connection, '2026-03-15', undefined);
  expect(records.lead(vendor, 'in-stock', null).vendor).toEqual([
    { days: 12, arrived: true },
    { days: 3, arrived: false },
  ]);
  expect(records.lead(vendor, 'back-order', null).vendor).toEqual([{ days: 10, arrived: false }]);
  expect(records.slips(vendor)).toEqual({ vendor: [4], pooled: [4] });
});

test('one delivery on a promised day is the whole forecast', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Rod', 8);
  await placeOne(bench, vendor, [draftLine(part, 8, 8000)], { promisedOn: '2026-03-12' });
  const view = await bench.client.forecast.run({ build: bench.build, runs: 50, seed: 7 });
  // By hand: nothing varies, so every share of runs is the promised day; a week earlier wins seven days.
  expect(view.gates).toEqual([
    {
      name: 'engine-in',
      says: view.answer,
      p10On: '2026-03-12',
      p50On: '2026-03-12',
      p80On: '2026-03-12',
      p90On: '2026-03-12',
      p50Band: ['2026-03-12', '2026-03-12'],
      p80Band: ['2026-03-12', '2026-03-12'],
      jobsOpen: 0,
      partsToCome: 1,
      runsByDay: [{ on: '2026-03-12', runs: 50 }],
      heldBy: [{ kind: 'part', id: part, name: 'Rod', criticality: 1, daysWon: 7 }],
    },
  ]);
  expect(view.answer).toBe(
    'engine-in: as likely as not by 12 Mar 2026, four times of five by 12 Mar 2026. The part “Rod” holds it in 100 of 100 runs.',
  );
});

test('without free hours there is no forecast of work, and the answer says so', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  await addJob(bench, 'Hone the bores', { minutesGuess: 100 });
  await bench.client.workbook.saveSettings({ key: bench.act().key, settings: { weekWindows: [] } });
  const view = await bench.client.forecast.run({ build: bench.build });
  expect(view.gates).toEqual([]);
  expect(view.answer).toBe('No forecast: 1 job needs hands, and no free hours are set in the settings.');
});

test('a past day knows only what had happened by then', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Rod', 8);
  bench.today('2026-03-06');
  const { line } = await placeOne(bench, vendor, [draftLine(part, 8, 8000)], { promisedOn: '2026-03-12' });
  const asOf = async (day: string) =>
    (await bench.client.forecast.run({ build: bench.build, runs: 20, asOf: day })).coming.map((each) => each.line);
  // By hand: ordered on the 6th, so on the 4th nothing was ordered yet.
  expect(await asOf('2026-03-04')).toEqual([null]);
  expect(await asOf('2026-03-06')).toEqual([line]);
});

test('a job waits for a tool until the day it is due, and a tool without a day is told', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const tool = async (name: string, dueOn: string | null): Promise<number> =>
    firstMade(
      await bench.client.records.save({
        ...bench.act(),
        kind: 'tool',
        build: bench.build,
        values: { name, whereabouts: '', dueOn, hireMinor: null, note: '' },
      }),
    );
  const [cam, bridge] = [await tool('Cam tool', '2026-03-09'), await tool('Dial bridge', null)];
  await addJob(bench, 'Degree the cam', { minutesGuess: 60, tools: [cam, bridge] });
  const facts = factsOn(bench, '2026-03-02');
  // By hand: noon of the day it is due.
  expect(facts.jobs[0]?.notBeforeMinute).toBe(parseInstant('2026-03-09T12:00'));
  expect(facts.gaps).toMatchObject([{ kind: 'tool', id: bridge, title: 'Dial bridge' }]);
});

test('the facts of a forecast are data: run elsewhere, they give the answer of the program', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Rod', 8);
  await placeOne(bench, vendor, [draftLine(part, 8, 8000)]);
  const task = await bench.client.forecast.facts({ build: bench.build });
  const there = wholeForecast(structuredClone(task), { runs: 200, seed: 3 });
  expect(there).toEqual(await bench.client.forecast.run({ build: bench.build, runs: 200, seed: 3 }));
});

test('a kept forecast stands in the history with its days until it is taken back', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const [rods, caps] = [await addPart(bench, 'Rod', 8), await addPart(bench, 'Cap', 8)];
  const { order, detail } = await placeOne(bench, vendor, [draftLine(rods, 8, 8000), draftLine(caps, 8, 500)], {
    promisedOn: '2026-03-12',
  });
  const keep = { build: bench.build, runs: 50, seed: 1 };
  expect((await bench.client.forecast.keep({ ...bench.act('2026-03-02'), ...keep })).label).toBe(
    'Forecast of engine-in: 12 Mar 2026',
  );
  bench.today('2026-03-12');
  const line = detail.lines[0]?.id ?? 0;
  const receipt = { order, bin: null, lines: [box(line, 8)], leaveForInspection: false, note: '' };
  await bench.client.orders.receiveBox({ ...bench.act('2026-03-12'), ...receipt });
  await bench.client.forecast.keep({ ...bench.act('2026-03-12'), ...keep });
  const said = await bench.client.forecast.history({ build: bench.build });
  // By hand: with one line promised for the 12th and no promise come due, the forecast is that day; then the rods came.
  const day = { p10On: '2026-03-12', p50On: '2026-03-12', p80On: '2026-03-12', p90On: '2026-03-12' };
  expect(said).toMatchObject([
    { on: '2026-03-02', runs: 50, seed: 1, gates: [{ name: 'engine-in', ...day }], since: null },
    { on: '2026-03-12', since: { jobsDone: 0, partsReceived: 1 } },
  ]);
  const { rows } = await bench.client.journal.list({ build: bench.build, kinds: ['forecast-kept'], limit: 10 });
  expect(rows.at(-1)?.text).toBe(
    'forecast kept (engine-in as likely as not by 12 Mar 2026, four times of five by 12 Mar 2026)',
  );
  await bench.undoAndRedo();
  await bench.client.journal.undo({ key: 'take-back-the-last', act: said[1]?.act ?? 0 });
  expect((await bench.client.forecast.history({ build: bench.build })).map(({ on }) => on)).toEqual(['2026-03-02']);
});

test('a forecast is kept as it stood on a past day, and not for a day ahead nor where there is none', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const keep = { build: bench.build, runs: 50, seed: 1 };
  await expect(bench.client.forecast.keep({ ...bench.act('2026-03-02'), ...keep })).rejects.toThrow(
    /no forecast to keep/,
  );
  await expect(bench.client.forecast.keep({ ...bench.act('2026-03-03'), ...keep })).rejects.toThrow(/still ahead/);
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Rod', 8);
  await placeOne(bench, vendor, [draftLine(part, 8, 8000)], { promisedOn: '2026-03-12' });
  bench.today('2026-03-20');
  await bench.client.forecast.keep({ ...bench.act('2026-03-05'), ...keep });
  // By hand: on the 5th the promise of the 12th still stood; on the 20th it has passed.
  expect(await bench.client.forecast.history({ build: bench.build })).toMatchObject([
    { on: '2026-03-05', gates: [{ p50On: '2026-03-12' }] },
  ]);
  expect(await bench.client.forecast.history({ build: bench.build, asOf: '2026-03-04' })).toEqual([]);
});

test('a vendor is shown with its lines, its median and the share that still waits', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const [rods, caps] = [await addPart(bench, 'Rod', 8), await addPart(bench, 'Cap', 8)];
  const { order, detail } = await placeOne(bench, vendor, [draftLine(rods, 8, 8000), draftLine(caps, 8, 500)]);
  bench.today('2026-03-15');
  const line = detail.lines[0]?.id ?? 0;
  const receipt = { order, bin: null, lines: [box(line, 8)], leaveForInspection: false, note: '' };
  await bench.client.orders.receiveBox({ ...bench.act('2026-03-14'), ...receipt });
  // By hand: of two lines ordered on the 2nd one came after 12 days, when both were still waited for: half still waits.
  expect(await bench.client.forecast.leadTimes({})).toMatchObject([
    {
      vendor,
      lineClass: 'in-stock',
      arrivals: 1,
      open: 1,
      basis: 'few-orders',
      medianDays: 12,
      curve: [{ days: 12, atRisk: 2, stillWaiting: 0.5 }],
    },
  ]);
  const [lead] = await bench.client.forecast.leadTimes({});
  expect(lead?.lines.map(({ description, days, state }) => [description, days, state]).sort()).toEqual([
    ['Cap', 13, 'open'],
    ['Rod', 12, 'arrived'],
  ]);
});

test('the hoist check dates a line without a promise by the forecast, and both say the same day', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await addVendor(bench);
  const [rods, caps] = [await addPart(bench, 'Rod', 8), await addPart(bench, 'Cap', 8)];
  await placeOne(bench, vendor, [draftLine(rods, 8, 8000)]);
  const { coming } = await bench.client.forecast.run({ build: bench.build, runs: 50, seed: 1 });
  const { review } = reviewOf(bench.context, bench.build, undefined);
  const blockerOf = (part: number) => review.blockers.find(({ subject }) => subject.id === part);
  const rod = coming.find(({ part }) => part === rods);
  expect(blockerOf(rods)).toMatchObject({ readyOn: rod?.p50On, readyLateOn: rod?.p80On, readySays: rod?.says });
  // Nobody has ordered the caps and no vendor is chosen: a gap of the forecast, and no day here.
  expect(blockerOf(caps)).toMatchObject({ readyOn: null, readyLateOn: null, readySays: '' });
  expect(coming.find(({ part }) => part === caps)?.basis).toBe('no-orders');
});
