import { expect, test } from 'vitest';
import { reviewOf } from '../../../core/procedures/gate.ts';
import { type Bench, openBench, refusalOf } from './bench.ts';
import { addPart, draftLine, firstMade, placeOne } from './orders-life.ts';

const save = async (bench: Bench, kind: 'vendor' | 'income' | 'cashCount' | 'offer' | 'job', values: object) =>
  firstMade(
    await bench.client.records.save({
      ...bench.act(),
      kind,
      ...(kind === 'vendor' ? {} : { build: bench.build }),
      values: { ...values },
    }),
  );

/** A part line with an estimate each in whole minor units, meant for a vendor. */
const need = async (bench: Bench, description: string, vendor: number | null, eachMinor: number | null, more = {}) =>
  firstMade(
    await bench.client.parts.add({
      ...bench.act(),
      build: bench.build,
      parts: [
        {
          description,
          needMilli: 1000,
          unit: 'each',
          vendor,
          estimateEachE4: eachMinor === null ? null : eachMinor * 10_000,
          ...more,
        },
      ],
    }),
  );

test('D66: money that never suffices says how much is missing', async () => {
  // Source: derived by hand, recomputed independently. 500 in hand, 300 in week 2, floor 100: 700 at most; 900 and 50.
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await save(bench, 'vendor', { name: 'Keld Fasteners', leadDays: 7, shippingMinor: 50 });
  await need(bench, 'X', vendor, 900);
  await save(bench, 'cashCount', { on: '2026-03-02', cashMinor: 500, floorMinor: 100 });
  await save(bench, 'income', { name: 'Wages', amountMinor: 300, every: 'once', from: '2026-03-16' });
  const plan = await bench.client.buying.plan({ build: bench.build, weeks: 4 });
  expect(plan).toMatchObject({ status: 'none', shortMinor: 250 });
  expect(plan.answer).toContain('“X” costs $9.50 with shipping. $2.50 is missing.');
});

test('the long lead goes first, and the answer says what holds the gate and what the plan wins', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  // Leads: no arrival yet, so that the stated days are the median (log days around it).
  const slow = await save(bench, 'vendor', { name: 'Harrowick Machine Works', leadDays: 42 });
  const fast = await save(bench, 'vendor', { name: 'Keld Fasteners', leadDays: 7 });
  const crank = await need(bench, 'Crank', slow, 60_000, { priority: 4 });
  const studs = await need(bench, 'Studs', fast, 50_000, { priority: 1 });
  const paint = await need(bench, 'Paint', fast, 3000, { priority: 5, optional: true });
  await save(bench, 'cashCount', { on: '2026-03-02', cashMinor: 70_000, floorMinor: 5000 });
  await save(bench, 'income', { name: 'Wages', amountMinor: 50_000, from: '2026-03-30' });
  const plan = await bench.client.buying.plan({ build: bench.build });
  // By hand: the crank on 2 March arrives 42 days later, in week 6; the studs in week 4 arrive in week 5. By priority the
  // studs go first and the crank waits for 30 March, week 4: week 10, 28 days later.
  expect(plan).toMatchObject({ status: 'plan', method: 'exact', gateOn: '2026-04-13', spendMinor: 113_000 });
  expect(plan.lines.map(({ part, week, reason }) => [part, week, reason])).toEqual([
    [crank, 0, 'holds-gate'],
    [paint, 0, expect.anything()],
    [studs, 4, 'waits-for-cash'],
  ]);
  expect(plan.asMoneyComes).toMatchObject({ gateOn: '2026-05-11', daysWon: 28 });
  expect(plan.lines[0]?.sentence).toBe('Order “Crank” in the first week: 42 days’ lead; it holds the date.');
  expect(plan.lines[2]?.sentence).toContain('it could wait until 6 Apr 2026');
  expect(plan.lines[0]?.leadSays).toContain('no arrivals yet');
  // Nothing of it is kept.
  await bench.verify();
});

test('cash counts from its newest count, with what was paid since and what is owed on its day', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await save(bench, 'vendor', { name: 'Keld Fasteners' });
  await save(bench, 'cashCount', { on: '2026-03-01', cashMinor: 90_000, floorMinor: 20_000 });
  await save(bench, 'income', { name: 'Wages', amountMinor: 10_000, from: '2026-01-31' });
  const part = await addPart(bench, 'Rod', 8);
  const { order } = await placeOne(bench, vendor, [draftLine(part, 8, 10_000)], { promisedOn: '2026-03-20' });
  await bench.client.orders.pay({ ...bench.act(), order, amountMinor: 5000, method: 'card', note: '' });
  const cash = await bench.client.buying.cash({ build: bench.build, weeks: 8 });
  // By hand: 900.00 − 50.00 paid = 850.00; − 750.00 on 20 March = 100.00, below 200.00; wages on the last of the month.
  expect(cash.nowMinor).toBe(85_000);
  expect(cash.committed).toMatchObject([{ order, dueOn: '2026-03-20', amountMinor: 75_000 }]);
  expect(cash.likelyBelowOn).toBe('2026-03-20');
  expect(cash.points.map(({ on, likelyMinor }) => [on, likelyMinor])).toEqual([
    ['2026-03-01', 90_000],
    ['2026-03-02', 85_000],
    ['2026-03-20', 10_000],
    ['2026-03-31', 20_000],
  ]);
  expect(cash.answer).toContain('on 20 Mar 2026 cash would fall below the floor of $200.00');
});

test('income that comes once is on the likely line only', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  await save(bench, 'cashCount', { on: '2026-03-02', cashMinor: 1000, floorMinor: 0 });
  await save(bench, 'income', { name: 'Old carburettors', amountMinor: 500, every: 'once', from: '2026-03-10' });
  const { points } = await bench.client.buying.cash({ build: bench.build });
  expect(points.at(-1)).toMatchObject({ on: '2026-03-10', likelyMinor: 1500, safeMinor: 1000 });
});

test('an offer beats the quote and the estimate while it holds, in any currency with a rate', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await save(bench, 'vendor', { name: 'Varlund Fuel Systems', leadDays: 7 });
  const pump = await need(bench, 'Pump', vendor, 40_000);
  const offer = { part: pump, vendor, eachE4: 30_000 * 10_000, currency: 'EUR', until: '2026-03-20' };
  await save(bench, 'offer', offer);
  await save(bench, 'cashCount', { on: '2026-03-02', cashMinor: 100_000, floorMinor: 0 });
  const without = await bench.client.buying.plan({ build: bench.build });
  expect(without.lines[0]).toMatchObject({ priceFrom: 'estimate', priceMinor: 40_000 });
  await bench.client.records.save({
    ...bench.act(),
    kind: 'rate',
    values: { currency: 'EUR', on: '2026-03-01', rate: '1.10' },
  });
  const plan = await bench.client.buying.plan({ build: bench.build });
  // By hand: 300.00 EUR at 1.10 are 330.00 USD.
  expect(plan.lines[0]).toMatchObject({ priceFrom: 'offer', priceMinor: 33_000 });
  expect(plan.lines[0]?.priceSays).toContain('until 20 Mar 2026');
});

test('what lacks a price or a vendor is listed, and without a count of cash the answer says so', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await save(bench, 'vendor', { name: 'Keld Fasteners' });
  const bare = await need(bench, 'Dipstick', vendor, null);
  const lost = await need(bench, 'Bracket', null, 500);
  expect((await bench.client.buying.plan({ build: bench.build })).status).toBe('nothing');
  await need(bench, 'Studs', vendor, 500);
  const plan = await bench.client.buying.plan({ build: bench.build });
  expect(plan).toMatchObject({ status: 'no-count', lacking: [{ part: bare }, { part: lost }] });
  expect(plan.answer).toContain('count the cash');
  expect(plan.answer).toContain('2 needs are not in the plan');
});

test('a past day knows the count, the offers and the incomes of that day', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  await save(bench, 'cashCount', { on: '2026-03-02', cashMinor: 1000, floorMinor: 0 });
  bench.today('2026-03-20');
  await save(bench, 'cashCount', { on: '2026-03-20', cashMinor: 300, floorMinor: 0 });
  const of = { build: bench.build };
  expect((await bench.client.buying.cash({ ...of, asOf: '2026-03-10' })).count).toMatchObject({ cashMinor: 1000 });
  expect((await bench.client.buying.cash(of)).count).toMatchObject({ cashMinor: 300 });
});

test('bad input is refused with its field: incomes, offers, weeks', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const income = { name: 'Wages', amountMinor: 1000, from: '2026-03-02' };
  const refused = async (kind: 'income' | 'offer', values: object) => {
    const { field, message } = await refusalOf(save(bench, kind, values));
    expect(message).toContain('Nothing was changed');
    return field;
  };
  expect(await refused('income', { ...income, amountMinor: 0 })).toBe('amountMinor');
  expect(await refused('income', { ...income, amountMinor: -5 })).toBe('amountMinor');
  expect(await refused('income', { ...income, until: '2026-03-01' })).toBe('until');
  expect(await refused('income', { ...income, every: 'once', until: '2026-04-01' })).toBe('until');
  const vendor = await save(bench, 'vendor', { name: 'Keld Fasteners', freeFromMinor: 500 });
  const part = await addPart(bench, 'Rod', 8);
  const offer = { part, vendor, eachE4: 10_000, currency: 'USD' };
  expect(await refused('offer', { ...offer, vendor: vendor + 99 })).toBe('vendor');
  expect(await refused('offer', { ...offer, part: part + 99 })).toBe('part');
  expect(await refused('offer', { ...offer, fromMilli: 0 })).toBe('fromMilli');
  expect(await refused('offer', { ...offer, currency: 'XXQ' })).toBe('currency');
  expect((await refusalOf(bench.client.buying.plan({ build: bench.build, weeks: 0 }))).field).toBe('weeks');
  expect((await refusalOf(bench.client.buying.plan({ build: bench.build + 99 }))).field).toBe('build');
});

test('the wait for a part that nobody has ordered is the same on the forecast, the hoist check and the buying plan', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const vendor = await save(bench, 'vendor', { name: 'Keld Fasteners', leadDays: 11 });
  const part = await need(bench, 'Studs', vendor, 5000);
  await save(bench, 'cashCount', { on: '2026-03-02', cashMinor: 90_000, floorMinor: 0 });
  const { coming } = await bench.client.forecast.run({ build: bench.build, runs: 50, seed: 1 });
  const { blockers } = reviewOf(bench.context, bench.build, undefined).review;
  const { lines } = await bench.client.buying.plan({ build: bench.build });
  const studs = coming.find((row) => row.part === part);
  // By hand: with no arrival of any vendor the median of the wait is the vendor's own stated 11 days.
  expect(studs).toMatchObject({ p50On: '2026-03-13' });
  expect(blockers.find(({ subject }) => subject.id === part)).toMatchObject({ readyOn: studs?.p50On });
  expect(lines).toMatchObject([{ part, leadDays: 11 }]);
  // What it stands on is said in the same words; the forecast adds that the order is counted as placed today.
  expect(studs?.says.endsWith(lines[0]?.leadSays ?? '—')).toBe(true);
});
