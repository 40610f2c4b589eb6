import { expect, test } from 'vitest';
import { openBench, refusalOf } from './bench.ts';
import { addPart, addVendor, box, draftLine, firstMade, placeOne } from './orders-life.ts';

test('a box brings good units in, keeps bad ones apart, and says what the rest waits for', async () => {
  const bench = await openBench();
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const [bolts, nuts, plugs] = [
    await addPart(bench, 'Main bolt', 10),
    await addPart(bench, 'Main nut', 10),
    await addPart(bench, 'Core plug', 4),
  ];
  const bin = firstMade(await client.records.save({ ...bench.act(), kind: 'bin', values: { name: 'Drawer 3' } }));
  const { order, detail } = await placeOne(bench, vendor, [
    draftLine(bolts, 10, 500),
    draftLine(nuts, 10, 100),
    draftLine(plugs, 4, 250),
  ]);
  const [first, second, third] = detail.lines.map(({ id }) => id) as [number, number, number];
  const result = await client.orders.receiveBox({
    ...bench.act('2026-03-09'),
    order,
    lines: [
      {
        ...box(first, 6),
        bad: [
          { quantityMilli: 1000, reason: 'wrong part', note: 'metric thread' },
          { quantityMilli: 1000, reason: 'transit damage', note: '' },
        ],
        restBackOrdered: true,
        restPromisedOn: '2026-03-20',
      },
      { ...box(second, 10), extraMilli: 2000 },
      { ...box(third, 0), restBackOrdered: true },
    ],
    bin,
    leaveForInspection: false,
    note: 'box 1 of 2',
  });
  expect(result.label).toBe('Receipt of 2 lines');
  await bench.verify();
  const read = await client.orders.detail({ order });
  expect(
    read.lines.map((line) => [
      line.receivedMilli,
      line.rejectedMilli,
      line.outstandingMilli,
      line.backOrderedMilli,
      line.inspectionMilli,
    ]),
  ).toEqual([
    [8000, 2000, 2000, 2000, 0],
    [10000, 0, 0, 0, 0],
    [0, 0, 4000, 4000, 0],
  ]);
  expect(read.row).toMatchObject({ standing: 'back-ordered', outstandingLines: 2, backOrderedOn: '2026-03-09' });
  const rows = await client.parts.byIds({ build, ids: [bolts, nuts, plugs] });
  expect(rows.map(({ shelfMilli, rejectedMilli, bin: in_ }) => [shelfMilli, rejectedMilli, in_])).toEqual([
    [6000, 2000, bin],
    // Two more than ordered are a lot of their own, outside the order.
    [12000, 0, bin],
    [0, 0, null],
  ]);
  const { lots } = await client.parts.detail({ build, part: nuts });
  expect(lots.map(({ source, cameInMilli, costMinor }) => [source, cameInMilli, costMinor])).toEqual([
    ['bought', 10000, 1000],
    ['over-delivery', 2000, 0],
  ]);
  await bench.undoAndRedo();

  await client.journal.undo({ key: 'undo-the-receipt' });
  await bench.verify();
  expect((await client.orders.detail({ order })).row).toMatchObject({ standing: 'placed', outstandingLines: 3 });
});

test('a wrong part goes back, is exchanged, and its replacement closes the order', async () => {
  const bench = await openBench();
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Cam bearing', 5);
  const { order, line } = await placeOne(bench, vendor, [draftLine(part, 5, 1200)]);
  const receive = (given: object) =>
    client.orders.receiveBox({
      ...bench.act(),
      order,
      lines: [{ ...box(line, 0), ...given }],
      bin: null,
      leaveForInspection: false,
      note: '',
    });
  await receive({ goodMilli: 4000, bad: [{ quantityMilli: 1000, reason: 'wrong part', note: '' }] });
  const standing = async () => {
    await bench.verify();
    return (await client.orders.detail({ order })).row.standing;
  };
  expect(await standing()).toBe('to settle');
  await client.parts.act({ ...bench.act(), build, act: 'send back', items: [{ part }] });
  expect(await standing()).toBe('to settle');
  await client.parts.act({ ...bench.act(), build, act: 'settle by exchange', items: [{ part }] });
  expect(await standing()).toBe('part received');
  await receive({ goodMilli: 1000 });
  expect(await standing()).toBe('received');
  const { lines, row } = await client.orders.detail({ order });
  expect(lines[0]).toMatchObject({ receivedMilli: 6000, replacedMilli: 1000, outstandingMilli: 0, costMinor: 6000 });
  expect(row.stillToPayMinor).toBe(6000);
  await bench.undoAndRedo();
});

test('a refund with a restocking fee closes the claim and leaves the fee as cost', async () => {
  const bench = await openBench();
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Oil pan', 1);
  const { order, line } = await placeOne(bench, vendor, [draftLine(part, 1, 10000)]);
  await client.orders.pay({ ...bench.act(), order, amountMinor: 10000, method: '', note: '' });
  const refund = (amountMinor: number, feeMinor: number, settlesMilli: number) =>
    client.orders.refund({ ...bench.act(), order, line, amountMinor, feeMinor, settlesMilli, note: '' });
  expect(await refusalOf(refund(8500, 1500, 0))).toMatchObject({ code: 'not-allowed-from-here', field: 'amountMinor' });
  await client.orders.receiveBox({
    ...bench.act(),
    order,
    lines: [{ ...box(line, 0), bad: [{ quantityMilli: 1000, reason: 'wrong part', note: '' }] }],
    bin: null,
    leaveForInspection: false,
    note: '',
  });
  expect((await refusalOf(refund(8500, 1500, 1000))).field).toBe('settlesMilli');
  await client.parts.act({ ...bench.act(), build, act: 'send back', items: [{ part }] });
  expect(await refusalOf(refund(0, 0, 0))).toMatchObject({ code: 'bad-input', field: 'amountMinor' });
  await refund(8500, 1500, 1000);
  await bench.verify();
  const { row, lines } = await client.orders.detail({ order });
  expect(row).toMatchObject({ standing: 'received', claimsMinor: 0, paidBaseMinor: 1500, stillToPayMinor: 0 });
  expect(lines[0]).toMatchObject({ costMinor: 1500, returnedUnsettledMilli: 0 });
  await bench.undoAndRedo();
});

test('cancelling a paid order makes a claim, and nothing of it when unpaid', async () => {
  const bench = await openBench();
  const { client } = bench;
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Gasket set', 2);
  const paid = await placeOne(bench, vendor, [draftLine(part, 1, 8000)], { number: 'A1' });
  const unpaid = await placeOne(bench, vendor, [draftLine(part, 1, 8000)], { number: 'A2' });
  await client.orders.pay({ ...bench.act(), order: paid.order, amountMinor: 8000, method: '', note: '' });
  for (const { order, line } of [paid, unpaid]) {
    await client.orders.cancel({ ...bench.act(), order, lines: [{ line }], reason: 'found locally' });
    await bench.undoAndRedo();
  }
  expect((await client.orders.detail({ order: paid.order })).row).toMatchObject({
    standing: 'to settle',
    claimsMinor: 8000,
    stillToPayMinor: -8000,
  });
  expect((await client.orders.detail({ order: unpaid.order })).row).toMatchObject({
    standing: 'cancelled',
    claimsMinor: 0,
    stillToPayMinor: 0,
  });
  const again = await refusalOf(
    client.orders.cancel({ ...bench.act(), order: paid.order, lines: [{ line: paid.line }], reason: '' }),
  );
  expect(again).toMatchObject({ code: 'not-allowed-from-here', field: 'lines' });
});

test('everything to come on some part lines is received at once, whatever its orders', async () => {
  const bench = await openBench();
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const [hose, clamp, spare] = [
    await addPart(bench, 'Hose', 2, null, 'm'),
    await addPart(bench, 'Clamp', 4),
    await addPart(bench, 'Never ordered', 1),
  ];
  await placeOne(bench, vendor, [{ part: hose, quantityMilli: 1500, eachE4: 5_000_000 }], { number: 'A' });
  await placeOne(bench, vendor, [{ part: hose, quantityMilli: 500, eachE4: 5_000_000 }, draftLine(clamp, 4, 90)], {
    number: 'B',
  });
  const none = await refusalOf(client.orders.receiveParts({ ...bench.act(), build, parts: [spare], bin: null }));
  expect(none).toMatchObject({ code: 'not-allowed-from-here', field: 'parts' });
  const result = await client.orders.receiveParts({ ...bench.act(), build, parts: [hose, clamp, spare], bin: null });
  expect(result.label).toBe('Receipt of 2 lines');
  await bench.verify();
  const rows = await client.parts.byIds({ build, ids: [hose, clamp, spare] });
  expect(rows.map(({ shelfMilli, onOrderMilli }) => [shelfMilli, onOrderMilli])).toEqual([
    [2000, 0],
    [4000, 0],
    [0, 0],
  ]);
  await bench.undoAndRedo();
});

test('a box that cannot be is refused, naming the line and the field', async () => {
  const bench = await openBench();
  const { client } = bench;
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Lifter', 16);
  const { order, line } = await placeOne(bench, vendor, [draftLine(part, 16, 300)]);
  const receive = (lines: ReturnType<typeof box>[], on?: string) =>
    refusalOf(
      client.orders.receiveBox({
        ...bench.act(on),
        order,
        lines,
        bin: null,
        leaveForInspection: false,
        note: '',
      }),
    );
  expect(await receive([{ ...box(line, 0), restBackOrdered: true }])).toMatchObject({
    code: 'bad-input',
    field: 'lines',
  });
  expect(await receive([box(line, 17)])).toMatchObject({
    code: 'not-allowed-from-here',
    field: 'lines.0.goodMilli',
    detail: { available: 16000, asked: 17000 },
  });
  expect(await receive([box(line, 1.5)])).toMatchObject({ code: 'bad-input', field: 'lines.0.goodMilli' });
  expect(await receive([box(line, 1), box(line, 1)])).toMatchObject({ code: 'bad-input', field: 'lines.1.line' });
  expect(await receive([box(line + 99, 1)])).toMatchObject({ code: 'not-found', field: 'lines.0.line' });
  // Before the order was placed nothing could come.
  expect(await receive([box(line, 1)], '2026-03-01')).toMatchObject({ code: 'floor', field: 'on' });
  await bench.verify();
});
