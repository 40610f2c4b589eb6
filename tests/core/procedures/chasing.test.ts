import { describe, expect, it } from 'vitest';
import { type Bench, openBench } from './bench.ts';

const charges = { discountMinor: 0, shippingMinor: 0, dutyMinor: 0, tax: { kind: 'amount', minor: 0 } } as const;

async function ordered(bench: Bench, vendorName: string, number: string, promisedOn: string | null): Promise<number> {
  const { client, act, build } = bench;
  const vendors = await client.records.list({ kind: 'vendor' });
  const known = vendors.find(({ values }) => values['name'] === vendorName)?.id;
  const vendor =
    known ??
    ((
      await client.records.save({
        ...act(),
        kind: 'vendor',
        values: { name: vendorName, contact: 'counter@fenwold.test', account: 'A-17' },
      })
    ).made[0] as number);
  const part = (
    await client.parts.add({ ...act(), build, parts: [{ description: `Studs ${number}`, needMilli: 4000 }] })
  ).made[0];
  const placed = await client.orders.place({
    ...act(),
    order: {
      build,
      vendor,
      number,
      currency: 'USD',
      charges,
      promisedOn,
      note: '',
      lines: [{ part: part as number, quantityMilli: 4000, eachE4: 10_000_000 }],
    },
  });
  return placed.made[0] as number;
}

describe('whom to write to', () => {
  it('is nobody while every promise holds', async () => {
    const bench = await openBench({ today: '2026-03-02' });
    await ordered(bench, 'Fenwold Parts', 'F-1', '2026-03-20');
    const { rows, answer } = await bench.client.orders.chasing({ build: bench.build });
    expect(rows).toEqual([]);
    expect(answer).toContain('Nobody is to be chased');
  });

  it('is a vendor past its promise, with a text that names order, line and delay; not again within a week', async () => {
    const bench = await openBench({ today: '2026-03-02' });
    const { client, build } = bench;
    const first = await ordered(bench, 'Fenwold Parts', 'F-1', '2026-03-20');
    const second = await ordered(bench, 'Fenwold Parts', 'F-2', '2026-03-25');
    await ordered(bench, 'Marl Street', 'M-9', '2026-04-20');
    bench.today('2026-04-01');
    const { rows, answer } = await client.orders.chasing({ build });
    expect(rows).toHaveLength(1);
    const [row] = rows;
    expect(row?.vendorName).toBe('Fenwold Parts');
    expect(row?.waitedDays).toBe(12);
    expect(row?.orders.map(({ order }) => order)).toEqual([first, second]);
    expect(row?.text).toContain('account A-17');
    expect(row?.text).toContain('Order F-1 of 2 Mar 2026');
    expect(row?.text).toContain('- 4 Studs F-1: 12 days past its promise');
    expect(row?.text).toContain('- 4 Studs F-2: 7 days past its promise');
    expect(answer).toContain('never asked');
    // The start page goes by the same rule.
    const start = (await client.orders.due({ build })).filter(({ pastPromiseDays }) => (pastPromiseDays ?? 0) > 0);
    expect(start).toHaveLength(2);
    await client.orders.chaseAll({ ...bench.act(), orders: [first, second], note: 'Wrote to the counter.' });
    expect((await client.orders.chasing({ build })).rows).toEqual([]);
    await bench.undoAndRedo();
    bench.today('2026-04-08');
    const later = await client.orders.chasing({ build });
    expect(later.rows[0]?.chasedOn).toBe('2026-04-01');
    expect(later.rows[0]?.why).toContain('last asked 1 Apr 2026');
  });

  it('is a vendor with an old back-order that has no date', async () => {
    const bench = await openBench({ today: '2026-03-02' });
    const { client, build, act } = bench;
    const order = await ordered(bench, 'Fenwold Parts', 'F-1', null);
    const { lines } = await client.orders.detail({ order });
    await client.orders.backOrder({
      ...act(),
      order,
      lines: [{ line: lines[0]?.id ?? 0 }],
      promisedOn: null,
      note: '',
    });
    bench.today('2026-03-15');
    expect((await client.orders.chasing({ build })).rows).toEqual([]);
    bench.today('2026-03-16');
    const [row] = (await client.orders.chasing({ build })).rows;
    expect(row?.text).toContain('on back-order for 14 days, no date promised');
    const past = await client.orders.chasing({ build, asOf: '2026-03-10' });
    expect(past.rows).toEqual([]);
  });
});

it('has promised and likely days as a calendar file, the same thing under the same name each time', async () => {
  const { createRouterClient } = await import('@orpc/server');
  const { exchangeProcedures } = await import('../../../core/procedures/exchange.ts');
  const bench = await openBench({ today: '2026-03-02' });
  const { build, context } = bench;
  await ordered(bench, 'Fenwold Parts', 'F-1', '2026-03-20');
  await ordered(bench, 'Fenwold Parts', 'F-2', null);
  const exchange = createRouterClient(exchangeProcedures, { context });
  const file = await exchange.calendarFile({ build });
  expect(file.name).toBe('Bench - days - 2026-03-02.ics');
  const text = (await file.text()).replaceAll('\r\n ', '');
  expect(text).toContain('SUMMARY:Promised: Studs F-1');
  expect(text).toContain('DTSTART;VALUE=DATE:20260320');
  expect(text).toContain('SUMMARY:Likely: Studs F-2');
  expect(text).toContain('as likely as not by this day');
  const names = [...text.matchAll(/UID:(.*)/g)].map(([, name]) => name);
  expect(new Set(names).size).toBe(names.length);
  bench.today('2026-03-03');
  const again = (await (await exchange.calendarFile({ build })).text()).replaceAll('\r\n ', '');
  expect([...again.matchAll(/UID:(.*)/g)].map(([, name]) => name).sort()).toEqual(names.sort());
});
