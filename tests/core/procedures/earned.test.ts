import { describe, expect, it } from 'vitest';
import { type Bench, openBench, refusalOf } from './bench.ts';

const order = async ({ client, act, build }: Bench, part: number, eachE4: number, on: string): Promise<number> => {
  const vendors = await client.records.list({ kind: 'vendor' });
  const vendor =
    vendors[0]?.id ??
    ((await client.records.save({ ...act(on), kind: 'vendor', values: { name: 'Fenwold Parts' } })).made[0] as number);
  const placed = await client.orders.place({
    ...act(on),
    order: {
      build,
      vendor,
      number: '',
      currency: 'USD',
      charges: { discountMinor: 0, shippingMinor: 0, dutyMinor: 0, tax: { kind: 'amount', minor: 0 } },
      promisedOn: null,
      note: '',
      lines: [{ part, quantityMilli: 1000, eachE4 }],
    },
  });
  return placed.made[0] as number;
};

/** Two parts of 100.00 and two jobs, planned from 2 March to 30 June 2026. */
async function planned(): Promise<Bench & { parts: number[]; jobs: number[] }> {
  const bench = await openBench({ today: '2026-03-02' });
  const { client, act, build } = bench;
  const parts = await client.parts.add({
    ...act(),
    build,
    parts: [
      { description: 'Oil pump', needMilli: 1000, estimateEachE4: 100_000_000, neededBy: '2026-03-31' },
      { description: 'Camshaft', needMilli: 1000, estimateEachE4: 100_000_000, neededBy: '2026-05-31' },
    ],
  });
  const phase = await client.records.save({
    ...act(),
    kind: 'phase',
    build,
    values: { name: 'Short block', plannedStart: '2026-03-02', plannedEnd: '2026-06-30' },
  });
  const jobs: number[] = [];
  for (const [title, minutesGuess] of [
    ['Measure the block', 120],
    ['Fit the crank', 240],
  ] as const) {
    const made = await client.records.save({
      ...act(),
      kind: 'job',
      build,
      values: { title, minutesGuess, phase: phase.made[0] },
    });
    jobs.push(made.made[0] as number);
  }
  return { ...bench, parts: [...parts.made], jobs };
}

describe('a build against its baseline', () => {
  it('says how to keep one while there is none, and refuses one without a day to plan to', async () => {
    const { client, act, build } = await openBench();
    const empty = await client.money.earned({ build });
    expect(empty.baseline).toBeNull();
    expect(empty.measures).toEqual([]);
    expect(empty.howTo).toContain('keep a baseline');
    const refused = await refusalOf(client.money.setBaseline({ ...act(), build, name: 'First' }));
    expect(refused.code).toBe('not-allowed-from-here');
    expect(refused.message).toContain('Nothing was changed.');
  });

  // Worked by hand: BAC 200.00; by 10 April the pump (100.00) was planned and is here, at 120.00.
  it('earns a part when it is accepted, and counts its cost the same day', async () => {
    const bench = await planned();
    const { client, act, build, parts } = bench;
    await client.money.setBaseline({ ...act(), build, name: 'As planned in March' });
    await bench.undoAndRedo();
    const [pump] = parts as [number, number];
    const placed = await order(bench, pump, 120_000_000, '2026-03-10');
    bench.today('2026-03-20');
    const before = (await client.money.earned({ build })).measures.find((measure) => measure.of === 'money');
    expect(before).toMatchObject({ bac: 20_000, pv: 0, ev: 0, ac: 0 });
    const { lines } = await client.orders.detail({ order: placed });
    await client.orders.receiveBox({
      ...act('2026-03-25'),
      order: placed,
      lines: [
        {
          line: lines[0]?.id ?? 0,
          goodMilli: 1000,
          bad: [],
          extraMilli: 0,
          restBackOrdered: false,
          restPromisedOn: null,
        },
      ],
      bin: null,
      leaveForInspection: false,
      note: '',
    });
    bench.today('2026-04-10');
    const view = await client.money.earned({ build });
    const money = view.measures.find((measure) => measure.of === 'money');
    expect(money).toMatchObject({ bac: 20_000, pv: 10_000, ev: 10_000, ac: 12_000 });
    expect(money?.indices.find(({ name }) => name === 'CPI')?.value).toBeCloseTo(10_000 / 12_000, 10);
    expect(money?.indices.find(({ name }) => name === 'SPI')?.value).toBe(1);
    const eac = Object.fromEntries((money?.estimates ?? []).map(({ way, value }) => [way, value]));
    expect(eac['rest as planned']).toBe(22_000);
    expect(eac['past cost']).toBe(24_000);
    expect(eac['line by line']).toBe(22_000);
    // The line-by-line estimate is the money page's own figure.
    expect(eac['line by line']).toBe((await client.money.summary({ build })).forecastMinor);
    expect(money?.curve.at(-1)?.pv).toBe(20_000);
    const past = await client.money.earned({ build, asOf: '2026-03-20' });
    expect(past.measures.find((measure) => measure.of === 'money')).toMatchObject({ ev: 0, ac: 0 });
  });

  // Worked by hand: 6 h planned over 120 days; the first job (2 h of 6 h) is planned for a third of the span, 11 April.
  it('earns hours when jobs are done, against the hours worked', async () => {
    const bench = await planned();
    const { client, act, build, jobs } = bench;
    await client.money.setBaseline({ ...act(), build, name: 'March' });
    bench.today('2026-04-20');
    await client.plan.finishJob({
      ...act('2026-04-15'),
      jobs: [jobs[0] as number],
      by: '',
      minutesSpent: 180,
      note: '',
    });
    const view = await client.money.earned({ build });
    const hours = view.measures.find((measure) => measure.of === 'hours');
    // The second job runs longer than two weeks, so half of it was planned from its start on 11 April.
    expect(hours).toMatchObject({ bac: 360, pv: 240, ev: 120, ac: 180 });
    expect(view.answer).toContain('2 h of 6 h planned work are done');
    expect(view.unplanned).toBe(0);
  });

  it('keeps earlier baselines, and counts what came after one', async () => {
    const bench = await planned();
    const { client, act, build } = bench;
    const first = await client.money.setBaseline({ ...act(), build, name: 'March' });
    await client.parts.add({
      ...act(),
      build,
      parts: [{ description: 'Sump', needMilli: 1000, estimateEachE4: 50_000_000 }],
    });
    expect((await client.money.earned({ build })).unplanned).toBe(1);
    bench.today('2026-04-01');
    await client.money.setBaseline({ ...act(), build, name: 'April' });
    const view = await client.money.earned({ build });
    expect(view.baseline?.name).toBe('April');
    expect(view.unplanned).toBe(0);
    expect(view.measures.find((measure) => measure.of === 'money')?.bac).toBe(25_000);
    const old = await client.money.earned({ build, baseline: first.made[0] as number });
    expect(old.measures.find((measure) => measure.of === 'money')?.bac).toBe(20_000);
  });
});
