import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  currencyCodes,
  formatMoney,
  isCurrency,
  minorDigits,
  plainAmount,
  roundHalfAway,
  roundRatio,
  safeMinor,
} from '../../../core/money/currency.ts';
import { Refusal } from '../../../core/refusal.ts';

test('knows the minor units of ISO 4217', () => {
  // Source: ISO 4217 list of current currencies and minor units.
  const expected = { USD: 2, EUR: 2, GBP: 2, JPY: 0, KRW: 0, CLP: 0, ISK: 0, KWD: 3, BHD: 3, TND: 3, CLF: 4, UYW: 4 };
  for (const [code, digits] of Object.entries(expected)) expect([code, minorDigits(code)]).toEqual([code, digits]);
});

test('lists every code once and in order', () => {
  expect(new Set(currencyCodes).size).toBe(currencyCodes.length);
  expect([...currencyCodes].sort()).toEqual(currencyCodes);
  expect(currencyCodes.every((code) => /^[A-Z]{3}$/.test(code))).toBe(true);
});

test('refuses codes it does not know, naming what it accepts', () => {
  expect(isCurrency('usd')).toBe(false);
  expect(isCurrency('XAU')).toBe(false);
  expect(() => minorDigits('QQQ')).toThrow(Refusal);
  expect(() => minorDigits('QQQ')).toThrow(/“QQQ” is not a known code\. Nothing was changed\./);
});

test('formats money by the currency and the locale', () => {
  expect(formatMoney(1234567, 'USD')).toBe('$12,345.67');
  expect(formatMoney(-5, 'USD')).toBe('-$0.05');
  expect(formatMoney(1500, 'JPY')).toBe('¥1,500');
  expect(formatMoney(12345, 'KWD').replace(/\s/g, ' ')).toBe('KWD 12.345');
  expect(formatMoney(1234567, 'EUR', 'de').replace(/\s/g, ' ')).toBe('12.345,67 €');
});

test('formats the largest amounts without losing a cent', () => {
  expect(formatMoney(Number.MAX_SAFE_INTEGER, 'USD')).toBe('$90,071,992,547,409.91');
});

test('writes plain amounts for files', () => {
  expect(plainAmount(5, 'USD')).toBe('0.05');
  expect(plainAmount(-1234, 'KWD')).toBe('-1.234');
  expect(plainAmount(-7, 'JPY')).toBe('-7');
});

test('D09: rounds 90.909… up to 91 and cuts it to 90', () => {
  // Source: derived by hand, recomputed independently.
  expect(roundRatio(1000n * 10n, 110n, 'half up')).toBe(91n);
  expect(roundRatio(1000n * 10n, 110n, 'half even')).toBe(91n);
  expect(roundRatio(1000n * 10n, 110n, 'down')).toBe(90n);
});

test('sends a half away from zero, to the even neighbour, or down, as the mode says', () => {
  // By hand.
  const halves = [-25n, -15n, -5n, 5n, 15n, 25n];
  expect(halves.map((half) => roundHalfAway(half, 10n))).toEqual([-3n, -2n, -1n, 1n, 2n, 3n]);
  expect(halves.map((half) => roundRatio(half, 10n, 'half even'))).toEqual([-2n, -2n, 0n, 0n, 2n, 2n]);
  expect(halves.map((half) => roundRatio(half, 10n, 'down'))).toEqual([-2n, -1n, 0n, 0n, 1n, 2n]);
  expect(roundHalfAway(5n, -10n)).toBe(-1n);
  expect(() => roundHalfAway(1n, 0n)).toThrow(RangeError);
});

test('never rounds further than half a unit, and never depends on the signs', () => {
  fc.assert(
    fc.property(fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }), fc.bigInt({ min: 1n, max: 10n ** 15n }), (n, d) => {
      const gap = roundHalfAway(n, d) * d - n;
      expect((gap < 0n ? -gap : gap) * 2n <= d).toBe(true);
      expect(roundHalfAway(-n, d)).toBe(-roundHalfAway(n, d));
      expect(roundHalfAway(n, -d)).toBe(-roundHalfAway(n, d));
    }),
  );
});

test('refuses amounts beyond exact integers', () => {
  expect(safeMinor(2n ** 53n - 1n, 'total')).toBe(Number.MAX_SAFE_INTEGER);
  expect(() => safeMinor(2n ** 53n, 'total')).toThrow(/The total is larger/);
});
