import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  extendedMinor,
  stepValue,
  unitPriceFromMinor,
  unitPriceFromText,
  valueOfFirst,
} from '../../../core/money/line-value.ts';

test('D15: costs a line received in parts of 5, 2 and 1', () => {
  // Source: derived by hand, recomputed independently.
  const steps = [
    stepValue(11725, 8000, 0, 5000),
    stepValue(11725, 8000, 5000, 7000),
    stepValue(11725, 8000, 7000, 8000),
  ];
  expect(steps).toEqual([7328, 2931, 1466]);
  expect(steps.reduce((sum, step) => sum + step, 0)).toBe(11725);
});

test('D16: costs a fractional quantity, 1.5 L and 3.5 L of 5.0 L', () => {
  // Source: derived by hand, recomputed independently.
  expect([stepValue(4799, 5000, 0, 1500), stepValue(4799, 5000, 1500, 5000)]).toEqual([1440, 3359]);
});

test('refuses a part outside the line', () => {
  expect(() => valueOfFirst(100, 8000, 8001)).toThrow(RangeError);
  expect(() => valueOfFirst(100, 8000, -1)).toThrow(RangeError);
  expect(() => valueOfFirst(100, 0, 0)).toThrow(RangeError);
});

test('extends a unit price of a fraction of a cent, rounding once', () => {
  // By hand: 250 pieces at 0.0325 are 8.125, a half that goes away from zero.
  expect(extendedMinor(250_000, unitPriceFromText('0.0325', 'USD'))).toBe(813);
  expect(extendedMinor(250_000, unitPriceFromText('-0.0325', 'USD'))).toBe(-813);
});

test('reads unit prices by the currency and four decimals more', () => {
  expect(unitPriceFromText('12.5', 'USD')).toBe(12_500_000);
  expect(unitPriceFromText('1500', 'JPY')).toBe(15_000_000);
  expect(unitPriceFromText('0.0001', 'JPY')).toBe(1);
  expect(unitPriceFromText('3.2525001', 'KWD')).toBe(32_525_001);
  expect(unitPriceFromMinor(1250)).toBe(unitPriceFromText('12.5', 'USD'));
});

test.each(['', '1,5', '.5', '1.', '1.2.3', '1.2345678', 'abc', '1e3', '99999999999999'])(
  'refuses the unit price “%s” and says what it accepts',
  (text) => {
    expect(() => unitPriceFromText(text, 'USD')).toThrow(/Nothing was changed/);
  },
);

test('refuses an amount too large to hold exactly', () => {
  expect(() => extendedMinor(1_000_000_000, 9_000_000_000_000_000)).toThrow(/larger than the workbook can hold/);
});

test('telescopes to the total however a line arrives', () => {
  const cuts = fc.array(fc.integer({ min: 0, max: 12_345 }), { maxLength: 12 });
  fc.assert(
    fc.property(fc.integer({ min: -1e12, max: 1e12 }), cuts, (total, inner) => {
      const points = [0, ...inner.sort((a, b) => a - b), 12_345];
      const steps = points.slice(1).map((to, index) => stepValue(total, 12_345, points[index] ?? 0, to));
      expect(steps.reduce((sum, step) => sum + step, 0)).toBe(total);
    }),
  );
});
