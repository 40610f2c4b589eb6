import fc from 'fast-check';
import { expect, test } from 'vitest';
import { landOrder, type OrderAmounts } from '../../../core/money/landed.ts';

const plain: OrderAmounts = {
  currency: 'USD',
  lines: [{ lineMinor: 10_000 }],
  discountMinor: 0,
  shippingMinor: 0,
  dutyMinor: 0,
  tax: { kind: 'amount', minor: 0 },
};
const rate = { kind: 'rate', rateText: '0.0825', inclusive: false, base: 'goods', basis: 'document' } as const;

test('D10: lands discount, then shipping, then tax on goods and shipping', () => {
  // Source: derived by hand, recomputed independently.
  const order = landOrder({
    ...plain,
    lines: [
      { quantityMilli: 1000, unitPriceE4: 24999_0000 },
      { quantityMilli: 2000, unitPriceE4: 4475_0000 },
      { quantityMilli: 5000, unitPriceE4: 255_0000 },
    ],
    discountMinor: 1500,
    shippingMinor: 1299,
    tax: { ...rate, base: 'goods+freight' },
  });
  expect(order.lines.map((line) => line.extendedMinor)).toEqual([24999, 8950, 1275]);
  expect(order.lines.map((line) => line.discountMinor)).toEqual([-1065, -381, -54]);
  expect(order.lines.map((line) => line.extendedMinor + line.discountMinor)).toEqual([23934, 8569, 1221]);
  expect(order.lines.map((line) => line.shippingMinor)).toEqual([922, 330, 47]);
  expect(order.total.taxMinor).toBe(2889);
  expect(order.lines.map((line) => line.taxMinor)).toEqual([2050, 734, 105]);
  expect(order.lines.map((line) => line.landedMinor)).toEqual([26906, 9633, 1373]);
  expect(order.total.landedMinor).toBe(37912);
});

test('D07: rounds tax once for the document, or on every line', () => {
  // Source: SSUTA s.324 allows item or invoice basis; number derived by hand, recomputed independently.
  const lines = [{ lineMinor: 333 }, { lineMinor: 333 }, { lineMinor: 333 }];
  const byDocument = landOrder({ ...plain, lines, tax: rate });
  expect(byDocument.lines.map((line) => line.taxMinor)).toEqual([28, 27, 27]);
  expect(byDocument.total.taxMinor).toBe(82);
  const byLine = landOrder({ ...plain, lines, tax: { ...rate, basis: 'line' } });
  expect(byLine.lines.map((line) => line.taxMinor)).toEqual([27, 27, 27]);
  expect(byLine.total.taxMinor).toBe(81);
});

test('reports an inclusive tax without adding it again', () => {
  // By hand from D08: 19 % inside 119.00 is 19.00.
  const order = landOrder({
    ...plain,
    lines: [{ lineMinor: 11_900 }],
    tax: { ...rate, rateText: '0.19', inclusive: true },
  });
  expect(order.taxIncluded).toBe(true);
  expect(order.total).toMatchObject({ taxMinor: 1900, landedMinor: 11_900 });
});

test('taxes goods, goods with freight, or all, as told', () => {
  // By hand: 10 % of 100.00, of 110.00 and of 115.00.
  const charges = { ...plain, shippingMinor: 1000, dutyMinor: 500 };
  const taxOn = (base: 'goods' | 'goods+freight' | 'all'): number =>
    landOrder({ ...charges, tax: { ...rate, rateText: '0.1', base } }).total.taxMinor;
  expect([taxOn('goods'), taxOn('goods+freight'), taxOn('all')]).toEqual([1000, 1100, 1150]);
});

test('shares shipping by weight and takes duty line by line when told', () => {
  // By hand.
  const order = landOrder({
    ...plain,
    lines: [{ lineMinor: 9000 }, { lineMinor: 1000 }],
    shippingMinor: 1000,
    shippingWeights: [1, 3],
    dutyMinor: [0, 250],
  });
  expect(order.lines.map((line) => line.shippingMinor)).toEqual([250, 750]);
  expect(order.lines.map((line) => line.landedMinor)).toEqual([9250, 2000]);
});

test('gives a credit line inside an order no share of the charges', () => {
  // By hand.
  const order = landOrder({ ...plain, lines: [{ lineMinor: 5000 }, { lineMinor: -700 }], shippingMinor: 300 });
  expect(order.lines.map((line) => line.landedMinor)).toEqual([5300, -700]);
});

test.each([
  [{ lines: [] }, 'The order has no lines. Nothing was changed.'],
  [{ discountMinor: -1 }, /The discount is below 0/],
  [{ discountMinor: 10_001 }, /The discount is larger than the goods/],
  [{ shippingMinor: 0.5 }, /The shipping is below 0 or not a whole number/],
  [{ dutyMinor: [1, 2] }, /The duty lists 2 amounts for 1 lines/],
  [{ shippingWeights: [1, 2] }, /The shipping weights list 2 for 1 lines/],
  [{ currency: 'QQQ' }, /The currency “QQQ”/],
  [{ tax: { ...rate, rateText: '8,25' } }, /The tax rate “8,25” can't be read/],
] as const)('refuses %j', (change, reason) => {
  expect(() => landOrder({ ...plain, ...change } as OrderAmounts)).toThrow(reason);
});

test('never loses a cent between the lines and the order', () => {
  const amounts = fc.nat({ max: 10_000_000 });
  const orders = fc.record({
    values: fc.array(amounts, { minLength: 1, maxLength: 25 }),
    discountShare: fc.integer({ min: 0, max: 100 }),
    shippingMinor: amounts,
    dutyMinor: amounts,
    rateText: fc.constantFrom('0', '0.0825', '0.19', '0.25', '0.333333'),
    inclusive: fc.boolean(),
    base: fc.constantFrom('goods' as const, 'goods+freight' as const, 'all' as const),
    basis: fc.constantFrom('document' as const, 'line' as const),
  });
  fc.assert(
    fc.property(orders, ({ values, discountShare, shippingMinor, dutyMinor, ...tax }) => {
      const goods = values.reduce((sum, value) => sum + value, 0);
      const discountMinor = Math.floor((goods * discountShare) / 100);
      const order = landOrder({
        currency: 'EUR',
        lines: values.map((lineMinor) => ({ lineMinor })),
        discountMinor,
        shippingMinor,
        dutyMinor,
        tax: { kind: 'rate', ...tax },
      });
      const untaxed = goods - discountMinor + shippingMinor + dutyMinor;
      const landed = order.lines.reduce((sum, line) => sum + line.landedMinor, 0);
      expect(landed).toBe(tax.inclusive ? untaxed : untaxed + order.total.taxMinor);
      expect(order.total.landedMinor).toBe(landed);
      expect(order.total.shippingMinor).toBe(shippingMinor);
    }),
  );
});
