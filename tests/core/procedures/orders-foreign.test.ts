import { expect, test } from 'vitest';
import { openBench, refusalOf } from './bench.ts';
import { addPart, addVendor, box, draftLine, noCharges, placeOne } from './orders-life.ts';

// All sums here are derived by hand from the rates; treating another rate as an exchange difference is the idea of IAS 21.

test('part of a foreign order cancelled before it is paid leaves the rest to pay in its own currency', async () => {
  const bench = await openBench();
  const { client } = bench;
  const vendor = await addVendor(bench, 'Lindau Kurbel');
  const [crank, seal] = [await addPart(bench, 'Crank', 1), await addPart(bench, 'Seal', 1)];
  const { order, detail } = await placeOne(bench, vendor, [draftLine(crank, 1, 20000), draftLine(seal, 1, 5000)], {
    currency: 'EUR',
    rate: '1.1050',
  });
  const [first, second] = detail.lines.map(({ id }) => id) as [number, number];
  await client.orders.pay({ ...bench.act(), order, amountMinor: 5000, method: '', note: '' });
  await client.orders.cancel({ ...bench.act(), order, lines: [{ line: second }], reason: 'found at home' });
  await bench.verify();
  // 250.00 ordered, 50.00 paid (40.00 on the crank, 10.00 on the seal); the seal's 10.00 are a claim, 160.00 are open.
  const over = await refusalOf(client.orders.pay({ ...bench.act(), order, amountMinor: 16001, method: '', note: '' }));
  expect(over).toMatchObject({ field: 'amountMinor', accepted: 'at most €160.00' });
  await client.orders.pay({ ...bench.act(), order, amountMinor: 16000, rate: '1.2', method: '', note: '' });
  await bench.undoAndRedo();
  // Booked 22100 for the crank; cash 5525 + 19200; claim 1105.
  const { row, lines } = await client.orders.detail({ order });
  expect(row).toMatchObject({ paidBaseMinor: 24725, claimsMinor: 1105, stillToPayMinor: -1105 });
  expect(lines.map(({ commitmentMinor }) => commitmentMinor)).toEqual([22100, 0]);
  expect(lines.map(({ id }) => id)).toEqual([first, second]);
});

test('a foreign refund at another rate closes the claim without a fee', async () => {
  const bench = await openBench();
  const { client, build } = bench;
  const vendor = await addVendor(bench, 'Lindau Kurbel');
  const part = await addPart(bench, 'Crank', 1);
  const { order, line } = await placeOne(bench, vendor, [draftLine(part, 1, 20000)], {
    currency: 'EUR',
    rate: '1.1050',
  });
  await client.orders.pay({ ...bench.act(), order, amountMinor: 20000, method: '', note: '' });
  await client.orders.receiveBox({
    ...bench.act(),
    order,
    lines: [{ ...box(line, 0), bad: [{ quantityMilli: 1000, reason: 'faulty', note: '' }] }],
    bin: null,
    leaveForInspection: false,
    note: '',
  });
  await client.parts.act({ ...bench.act(), build, act: 'send back', items: [{ part }] });
  // 200.00 at 1.0900 come back where 221.00 were booked: 3.00 lost on the exchange.
  await client.orders.refund({
    ...bench.act(),
    order,
    line,
    amountMinor: 21800,
    feeMinor: 0,
    settlesMilli: 1000,
    note: '',
  });
  await bench.verify();
  const { row, lines } = await client.orders.detail({ order });
  expect(row).toMatchObject({ standing: 'received', claimsMinor: 0, paidBaseMinor: 300, stillToPayMinor: 0 });
  expect(lines[0]?.costMinor).toBe(0);
  expect((await client.money.summary({ build })).exchangeMinor).toBe(300);
  await bench.undoAndRedo();
});

test('a corrected rate moves the worth of the lines and is put on record', async () => {
  const bench = await openBench();
  const { client } = bench;
  const vendor = await addVendor(bench, 'Lindau Kurbel');
  const part = await addPart(bench, 'Crank', 1);
  const { order, detail } = await placeOne(bench, vendor, [draftLine(part, 1, 20000)], {
    currency: 'EUR',
    rate: '1.1050',
  });
  await client.orders.reprice({
    ...bench.act(),
    order,
    revision: detail.revision,
    charges: noCharges,
    rate: '1.1150',
    lines: [],
  });
  await bench.undoAndRedo();
  const after = await client.orders.detail({ order });
  expect(after).toMatchObject({
    rate: '1.1150',
    row: { totalMinor: 20000, totalBaseMinor: 22300, stillToPayMinor: 22300 },
  });
  expect((await client.records.list({ kind: 'rate' })).map(({ values }) => values['rate'])).toEqual([
    '1.1050',
    '1.1150',
  ]);
});
