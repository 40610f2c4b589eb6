import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../../core/refusal.ts';
import {
  formatQuantity,
  isCountable,
  isUnit,
  maximumQuantityMilli,
  parseQuantity,
  plainQuantity,
  requireQuantity,
  unitFamily,
  units,
} from '../../../core/units/quantity.ts';

test('reads whole numbers and decimals into thousandths', () => {
  expect(parseQuantity('8', 'each')).toBe(8000);
  expect(parseQuantity(' 2.5 ', 'L')).toBe(2500);
  expect(parseQuantity('2,5', 'L')).toBe(2500);
  expect(parseQuantity('0.001', 'kg')).toBe(1);
  expect(parseQuantity('2.0', 'set')).toBe(2000);
  expect(parseQuantity('0', 'each', { zero: true })).toBe(0);
});

test.each([
  ['', 'each', /can't be read/],
  ['-1', 'each', /can't be read/],
  ['1,000', 'L', /can't be read/],
  ['1.0005', 'L', /can't be read/],
  ['½', 'L', /can't be read/],
  ['1e3', 'each', /can't be read/],
  ['0', 'each', /above 0/],
  ['2.5', 'each', /must be a whole number, because “each” is counted/],
  ['0.5', 'pair', /whole number/],
  ['1000000.001', 'L', /above a million/],
] as const)('refuses “%s” %s', (text, unit, reason) => {
  expect(() => parseQuantity(text, unit, { field: 'need' })).toThrow(reason);
  expect(() => parseQuantity(text, unit, { field: 'need' })).toThrow(Refusal);
});

test('names the field and what it accepts', () => {
  try {
    parseQuantity('2.5', 'each', { field: 'received' });
    expect.unreachable();
  } catch (problem) {
    expect(problem).toMatchObject({
      code: 'bad-input',
      field: 'received',
      message: 'The received must be a whole number, because “each” is counted. Nothing was changed.',
      accepted: 'a whole number above 0 and at most 1000000, such as 8',
    });
  }
});

test('accepts the largest quantity and refuses one more', () => {
  expect(requireQuantity(maximumQuantityMilli, 'each')).toBe(maximumQuantityMilli);
  expect(() => requireQuantity(maximumQuantityMilli + 1, 'mL')).toThrow(/above a million/);
  expect(() => requireQuantity(Number.NaN, 'mL')).toThrow(Refusal);
  expect(() => requireQuantity(0.5, 'mL')).toThrow(Refusal);
});

test('writes quantities for people and for files', () => {
  expect(formatQuantity(8000, 'each')).toBe('8');
  expect(formatQuantity(1000, 'set')).toBe('1 set');
  expect(formatQuantity(3000, 'set')).toBe('3 sets');
  expect(formatQuantity(2500, 'L')).toBe('2.5 L');
  expect(formatQuantity(2500, 'L', 'de')).toBe('2,5 L');
  expect(plainQuantity(-1050)).toBe('-1.05');
  expect(plainQuantity(-500)).toBe('-0.5');
});

test('knows what is counted and what is measured', () => {
  expect(isUnit('L')).toBe(true);
  expect(isUnit('l')).toBe(false);
  expect(isUnit('toString')).toBe(false);
  expect(units.filter(isCountable)).toEqual(['each', 'set', 'pair', 'kit', 'box', 'can', 'tube', 'roll', 'sheet']);
  expect(unitFamily('qt')).toBe('volume');
});

test('always reads back what it wrote', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: maximumQuantityMilli }), (milli) => {
      expect(parseQuantity(plainQuantity(milli), 'kg')).toBe(milli);
    }),
  );
});
