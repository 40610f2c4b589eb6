import { expect, test } from 'vitest';
import { openBench } from './bench.ts';
import { addPart, addVendor, box, placeOne } from './orders-life.ts';

// Case D14, life of one part line. Source: derived by hand, recomputed independently. Amounts in cents.
test('a part line lives through order, payment, part receipt, wrong part, exchange, cancellation and refund', async () => {
  const bench = await openBench();
  const { client, build } = bench;
  const vendor = await addVendor(bench);
  const part = await addPart(bench, 'Head stud kit', 8, 15_000_000);
  const figures = async () => {
    await bench.verify();
    const [row] = await client.parts.byIds({ build, ids: [part] });
    const money = await client.money.summary({ build });
    if (row === undefined) throw new Error('The part line is missing');
    return [
      row.onOrderMilli / 1000,
      row.remainingMinor,
      row.commitmentMinor,
      row.costMinor,
      row.paidMinor,
      money.claimsMinor,
      row.stillToPayMinor,
      row.forecastMinor,
    ];
  };
  expect(await figures()).toEqual([0, 12000, 0, 0, 0, 0, 0, 12000]);

  // 8 at 14.00 with 5.25 shipping land at 117.25.
  const { order, line } = await placeOne(bench, vendor, [{ part, quantityMilli: 8000, eachE4: 14_000_000 }], {
    charges: { discountMinor: 0, shippingMinor: 525, dutyMinor: 0, tax: { kind: 'amount', minor: 0 } },
  });
  expect(await figures()).toEqual([8, 0, 11725, 0, 0, 0, 11725, 11725]);
  await bench.undoAndRedo();

  await client.orders.pay({ ...bench.act(), order, amountMinor: 11725, method: 'card', note: '' });
  expect(await figures()).toEqual([8, 0, 11725, 0, 11725, 0, 0, 11725]);
  await bench.undoAndRedo();

  await client.orders.receiveBox({
    ...bench.act(),
    order,
    lines: [{ ...box(line, 5), restBackOrdered: true }],
    bin: null,
    leaveForInspection: true,
    note: '',
  });
  expect(await figures()).toEqual([3, 0, 4397, 7328, 11725, 0, 0, 11725]);
  await bench.undoAndRedo();

  const items = (units: number) => [{ part, quantityMilli: units * 1000 }];
  await client.parts.act({ ...bench.act(), build, act: 'accept', items: items(4) });
  await client.parts.act({ ...bench.act(), build, act: 'reject', items: items(1), rejectReason: 'wrong part' });
  expect(await figures()).toEqual([3, 1466, 4397, 5862, 11725, 1466, -1466, 11725]);
  await bench.undoAndRedo();

  await client.parts.act({ ...bench.act(), build, act: 'send back', items: items(1) });
  await client.parts.act({ ...bench.act(), build, act: 'settle by exchange', items: items(1) });
  expect(await figures()).toEqual([4, 0, 5863, 5862, 11725, 0, 0, 11725]);
  await bench.undoAndRedo();

  await client.orders.receiveBox({
    ...bench.act(),
    order,
    lines: [box(line, 1)],
    bin: null,
    leaveForInspection: false,
    note: 'replacement',
  });
  expect(await figures()).toEqual([3, 0, 4397, 7328, 11725, 0, 0, 11725]);
  await bench.undoAndRedo();

  await client.orders.cancel({
    ...bench.act(),
    order,
    lines: [{ line, quantityMilli: 1000 }],
    reason: 'spare not needed',
  });
  expect(await figures()).toEqual([2, 1500, 2931, 7328, 11725, 1466, -1466, 11759]);
  await bench.undoAndRedo();

  await client.orders.refund({
    ...bench.act(),
    order,
    line,
    amountMinor: 1466,
    feeMinor: 0,
    settlesMilli: 0,
    note: '',
  });
  expect(await figures()).toEqual([2, 1500, 2931, 7328, 10259, 0, 0, 11759]);
  await bench.undoAndRedo();

  await client.orders.receiveParts({ ...bench.act(), build, parts: [part], bin: null });
  expect(await figures()).toEqual([0, 1500, 0, 10259, 10259, 0, 0, 11759]);
  await bench.undoAndRedo();

  const { row, payments } = await client.orders.detail({ order });
  expect(row).toMatchObject({ standing: 'received', stillToPayMinor: 0, paidBaseMinor: 10259, claimsMinor: 0 });
  expect(payments.map(({ baseMinor }) => baseMinor)).toEqual([11725, -1466]);
  expect(bench.logged).toEqual([]);
});
