import { expect, test } from 'vitest';
import { openBench, refusalOf } from './bench.ts';
import { addPart, addVendor, box, draft, draftLine, firstMade, placeOne } from './orders-life.ts';

test('notices move labels, keep every promise, and are told apart from "no date"', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const [rods, caps] = [await addPart(bench, 'Rod', 8), await addPart(bench, 'Cap', 8)];
  const { order, detail } = await placeOne(bench, vendor, [draftLine(rods, 8, 8000), draftLine(caps, 8, 500)], {
    number: '',
    promisedOn: '2026-03-10',
  });
  const [first, second] = detail.lines.map(({ id }) => id) as [number, number];
  const both = [{ line: first }, { line: second }];
  expect(detail.row).toMatchObject({ standing: 'placed', promisedOn: '2026-03-10', number: '' });

  const acknowledged = await client.orders.acknowledge({
    ...bench.act('2026-03-03'),
    order,
    lines: both,
    promisedOn: null,
    number: 'K-88',
  });
  expect(acknowledged.label).toBe('Acknowledgement of order at Keld Fasteners, 2 lines');
  await bench.undoAndRedo();
  expect((await client.orders.detail({ order })).row).toMatchObject({
    standing: 'acknowledged',
    number: 'K-88',
    promisedOn: '2026-03-10',
  });
  expect(
    await refusalOf(client.orders.acknowledge({ ...bench.act('2026-03-03'), order, lines: both, promisedOn: null })),
  ).toMatchObject({ code: 'not-allowed-from-here', field: 'lines' });

  await client.orders.ship({
    ...bench.act('2026-03-05'),
    order,
    lines: both,
    tracking: 'T1',
    expectedOn: '2026-03-12',
  });
  await bench.undoAndRedo();
  expect((await client.orders.detail({ order })).row).toMatchObject({
    standing: 'in transit',
    promisedOn: '2026-03-12',
  });

  // Short-shipped: all of the first line not yet on back-order, without a date.
  await client.orders.backOrder({
    ...bench.act('2026-03-06'),
    order,
    lines: [{ line: first }],
    promisedOn: null,
    note: '',
  });
  await bench.undoAndRedo();
  await client.orders.promise({
    ...bench.act('2026-03-20'),
    order,
    lines: [first],
    promisedOn: '2026-04-01',
    note: 'by phone',
  });
  await bench.undoAndRedo();
  await client.orders.promise({
    ...bench.act('2026-04-02'),
    order,
    lines: [first],
    promisedOn: '2026-04-20',
    note: '',
  });
  await client.orders.chase({ ...bench.act('2026-04-03'), order, note: 'left a message' });
  await bench.undoAndRedo();

  bench.today('2026-04-25');
  const read = await client.orders.detail({ order });
  expect(read.lines[0]?.promises).toEqual([
    { givenOn: '2026-03-02', promisedOn: '2026-03-10' },
    { givenOn: '2026-03-05', promisedOn: '2026-03-12' },
    { givenOn: '2026-03-06', promisedOn: null },
    { givenOn: '2026-03-20', promisedOn: '2026-04-01' },
    { givenOn: '2026-04-02', promisedOn: '2026-04-20' },
  ]);
  expect(read.chases).toEqual([{ on: '2026-04-03', note: 'left a message' }]);
  // By hand: 6 Mar to 25 Apr is 25 + 25 = 50 days; the latest promise is 5 days past; the date moved three times.
  expect(read.row).toMatchObject({ standing: 'back-ordered', backOrderedOn: '2026-03-06', backOrderAgeDays: 50 });
  const due = await client.orders.due({ build });
  expect(due.map(({ line }) => line)).toEqual([second, first]);
  expect(due[0]).toMatchObject({ promisedOn: '2026-03-12', pastPromiseDays: 44, ageDays: null, band: null });
  expect(due[1]).toMatchObject({
    promisedOn: '2026-04-20',
    backOrderedOn: '2026-03-06',
    ageDays: 50,
    band: '31-60',
    pastPromiseDays: 5,
    promiseChanges: 3,
    chasedOn: '2026-04-03',
    backOrderedMilli: 8000,
    commitmentMinor: 64000,
    orderNumber: 'K-88',
  });

  const { parts } = await client.orders.receiveBox({
    ...bench.act('2026-04-25'),
    order,
    lines: [box(first, 8)],
    bin: null,
    leaveForInspection: false,
    note: '',
  });
  expect(parts).toEqual([rods]);
  expect(
    await refusalOf(
      client.orders.promise({ ...bench.act(), order, lines: [first], promisedOn: '2026-05-01', note: '' }),
    ),
  ).toMatchObject({ code: 'not-allowed-from-here', field: 'lines.0' });
  await bench.verify();
});

test('lists show any past day as it stood', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Valve', 16);
  const { order, line } = await placeOne(bench, vendor, [draftLine(part, 16, 700)]);
  await client.orders.backOrder({
    ...bench.act('2026-03-05'),
    order,
    lines: [{ line, quantityMilli: 6000 }],
    promisedOn: '2026-03-30',
    note: '',
  });
  await client.orders.receiveBox({
    ...bench.act('2026-03-09'),
    order,
    lines: [box(line, 10)],
    bin: null,
    leaveForInspection: false,
    note: '',
  });
  await client.orders.pay({ ...bench.act('2026-03-10'), order, amountMinor: 11200, method: '', note: '' });
  bench.today('2026-03-20');
  const at = async (asOf?: string) => {
    const [row] = await client.orders.list({ build, ...(asOf === undefined ? {} : { asOf }) });
    return row === undefined
      ? undefined
      : [row.standing, row.outstandingLines, row.backOrderAgeDays, row.paidBaseMinor, row.stillToPayMinor];
  };
  expect(await at('2026-03-01')).toBeUndefined();
  expect(await at('2026-03-02')).toEqual(['placed', 1, null, 0, 11200]);
  expect(await at('2026-03-06')).toEqual(['back-ordered', 1, 1, 0, 11200]);
  expect(await at('2026-03-09')).toEqual(['back-ordered', 1, 4, 0, 11200]);
  expect(await at()).toEqual(['back-ordered', 1, 15, 11200, 0]);
  const early = await client.orders.detail({ order, asOf: '2026-03-04' });
  expect(early.lines[0]).toMatchObject({ placedMilli: 16000, backOrderedMilli: 0, receivedMilli: 0, promises: [] });
  expect(early.payments).toEqual([]);
  expect(await refusalOf(client.orders.detail({ order, asOf: '2026-03-01' }))).toMatchObject({ field: 'asOf' });
  const due = await client.orders.due({ build, asOf: '2026-03-06' });
  expect(due).toMatchObject([{ outstandingMilli: 16000, backOrderedMilli: 6000, ageDays: 1, band: '0-14' }]);
});

test('a vendor card counts what came on time, wrong or late, and shows shares from five judged lines on', async () => {
  const bench = await openBench({ today: '2026-03-02' });
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const idle = await addVendor(bench, 'Idle Supply');
  const parts: number[] = [];
  for (const name of ['A', 'B', 'C', 'D', 'E', 'F']) parts.push(await addPart(bench, name, 2));
  const { order, detail } = await placeOne(
    bench,
    vendor,
    parts.map((part) => draftLine(part, 2, 1000)),
    {
      promisedOn: '2026-03-10',
    },
  );
  const lines = detail.lines.map(({ id }) => id);
  const receive = (on: string, chosen: number[], bad = 0) =>
    client.orders.receiveBox({
      ...bench.act(on),
      order,
      lines: chosen.map((line) => ({
        ...box(line, 2 - bad),
        bad: bad === 0 ? [] : [{ quantityMilli: bad * 1000, reason: 'faulty' as const, note: '' }],
      })),
      bin: null,
      leaveForInspection: false,
      note: '',
    });
  await receive('2026-03-08', lines.slice(0, 3));
  bench.today('2026-03-09');
  const [, young] = await client.orders.vendorCards({ build });
  // Three arrived with a promise; the others aren't past theirs, so nobody can judge them yet.
  expect(young).toMatchObject({ vendor, judgedLines: 3, onTimeLines: 3, onTimeShare: null, openLines: 3 });
  await receive('2026-03-12', lines.slice(3, 4));
  await receive('2026-03-12', lines.slice(4, 5), 1);
  bench.today('2026-03-14');
  const cards = await client.orders.vendorCards({ build });
  expect(cards.map(({ vendor: id }) => id)).toEqual([idle, vendor]);
  // By hand: 3 on time, 2 late (one of them with a faulty unit), 1 open past its promise; 1 of 10 units wrong; days to
  // arrival 6, 6, 6, 10, 10.
  expect(cards[1]).toMatchObject({
    orders: 1,
    judgedLines: 6,
    onTimeLines: 3,
    onTimeShare: 0.5,
    openLines: 1,
    receivedMilli: 10000,
    wrongMilli: 1000,
    wrongShare: 0.1,
    medianLeadDays: 6,
    committedMinor: 2000,
    costMinor: 9000,
    paidMinor: 0,
    stillToPayMinor: 11000,
  });
  expect(cards[0]).toMatchObject({ orders: 0, judgedLines: 0, onTimeShare: null, medianLeadDays: null });
  const past = await client.orders.vendorCards({ build, asOf: '2026-03-08' });
  expect(past[1]).toMatchObject({ judgedLines: 3, onTimeLines: 3, receivedMilli: 6000, wrongMilli: 0 });
});

test('D70: the card of a vendor from what was ordered, promised, received and refused', async () => {
  // Source: derived by hand, recomputed independently: one early, one late, one open past its promise counts as late; the
  // line without a promise is not judged; 1 of 16 units wrong; 7, 12 and 14 days.
  const bench = await openBench({ today: '2026-01-02' });
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Stud', 22);
  const place = async (on: string, units: number, promisedOn: string | null) => {
    bench.today(on);
    return placeOne(bench, vendor, [draftLine(part, units, 100)], { number: on, promisedOn });
  };
  const receive = ({ order, line }: { order: number; line: number }, on: string, units: number, bad = 0) => {
    bench.today(on);
    const refused = { quantityMilli: bad * 1000, reason: 'wrong part' as const, note: '' };
    const lines = [{ ...box(line, units - bad), bad: bad === 0 ? [] : [refused] }];
    return bench.client.orders.receiveBox({
      ...bench.act(on),
      order,
      lines,
      bin: null,
      leaveForInspection: false,
      note: '',
    });
  };
  await receive(await place('2026-01-02', 4, '2026-01-10'), '2026-01-09', 4);
  await receive(await place('2026-01-12', 10, '2026-01-20'), '2026-01-24', 10, 1);
  await receive(await place('2026-02-01', 2, null), '2026-02-15', 2);
  await place('2026-02-20', 6, '2026-03-01');
  bench.today('2026-03-10');
  const [card] = await bench.client.orders.vendorCards({ build: bench.build });
  expect(card).toMatchObject({
    judgedLines: 3,
    onTimeLines: 1,
    receivedMilli: 16_000,
    wrongMilli: 1000,
    medianLeadDays: 12,
    arrivedLines: 3,
    openLines: 1,
    // Under five judged lines counts are given and no shares.
    onTimeShare: null,
    wrongShare: null,
  });
});

test('needs of a vendor come first, covered ones not at all; a line without a part lists a spare', async () => {
  const bench = await openBench();
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const [other, own, covered] = [
    await addPart(bench, 'Anything', 1, 20_000),
    await addPart(bench, 'From Keld', 3),
    await addPart(bench, 'On order', 1),
  ];
  await client.parts.editMany({ ...bench.act(), parts: [own], values: { vendor } });
  const { order } = await placeOne(bench, vendor, [
    draftLine(covered, 1, 100),
    { part: null, description: 'Assembly lube', quantityMilli: 2000, eachE4: 9_000_000 },
  ]);
  const needs = await client.orders.needsOf({ build, vendor });
  expect(needs.map(({ part, uncoveredMilli }) => [part, uncoveredMilli])).toEqual([
    [own, 3000],
    [other, 1000],
  ]);
  const { lines } = await client.orders.detail({ order });
  expect(lines[1]).toMatchObject({ description: 'Assembly lube', outstandingMilli: 2000, commitmentMinor: 1800 });
  await bench.undoAndRedo();
});

test('an order that cannot be placed is refused, naming the field; the same key places it once', async () => {
  const bench = await openBench();
  const { client } = bench;
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Pushrod', 16);
  const good = draft(bench, vendor, [draftLine(part, 16, 400)]);
  const key = bench.act();
  const once = await client.orders.place({ ...key, order: good });
  const twice = await client.orders.place({ ...key, order: good });
  expect(twice).toEqual(once);
  expect(await client.orders.list({ build: bench.build })).toHaveLength(1);
  const refused = (more: Partial<typeof good>) =>
    refusalOf(client.orders.place({ ...bench.act(), order: { ...good, ...more } }));
  expect(await refused({})).toMatchObject({ code: 'bad-input', field: 'number', accepted: 'another number' });
  const fresh = { number: '4712' };
  expect(await refused({ ...fresh, vendor: 99 })).toMatchObject({ code: 'not-found', field: 'vendor' });
  expect(await refused({ ...fresh, currency: 'XXQ' })).toMatchObject({ code: 'bad-input', field: 'currency' });
  expect(await refused({ ...fresh, rate: '1.1' })).toMatchObject({ code: 'bad-input', field: 'rate' });
  expect(await refused({ ...fresh, currency: 'EUR', rate: '0.0' })).toMatchObject({ code: 'bad-input', field: 'rate' });
  expect(await refused({ ...fresh, lines: [{ ...draftLine(part, 1, 1), part: null }] })).toMatchObject({
    field: 'lines.0.description',
  });
  expect(await refused({ ...fresh, lines: [draftLine(part, 1.5, 1)] })).toMatchObject({
    field: 'lines.0.quantityMilli',
  });
  expect(await refused({ ...fresh, lines: [draftLine(part, 0, 1)] })).toMatchObject({
    code: 'bad-input',
    field: 'order.lines.0.quantityMilli',
  });
  await client.records.retire({ ...bench.act(), kind: 'vendor', id: vendor, reason: 'closed down' });
  expect(await refused(fresh)).toMatchObject({ code: 'retired', field: 'vendor' });
  await bench.verify();
  expect(firstMade(once)).toBeGreaterThan(0);
  expect(bench.logged).toEqual([]);
});
