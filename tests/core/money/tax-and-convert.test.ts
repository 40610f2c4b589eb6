import fc from 'fast-check';
import { expect, test } from 'vitest';
import { convertDocument, convertLines } from '../../../core/money/convert.ts';
import { parseExchangeRate, parseRate, rateOfPercent } from '../../../core/money/rate.ts';
import { taxInGross, taxOnNet } from '../../../core/money/tax.ts';

test('D06: half a minor unit of tax goes up', () => {
  // Source: Streamlined Sales and Use Tax Agreement s.324 (third decimal above four rounds up); number derived by hand,
  // recomputed independently.
  expect(taxOnNet(1000, parseRate('0.0825', 'tax rate'))).toBe(83);
});

test('D08: finds 19 % inside a gross amount', () => {
  // Source: derived by hand, recomputed independently.
  const tax = taxInGross(11900, parseRate('0.19', 'tax rate'));
  expect([11900 - tax, tax]).toEqual([10000, 1900]);
});

test('D09: finds tax inside a zero-decimal amount, rounded or cut', () => {
  // Source: derived by hand, recomputed independently; JPY has 0 minor units in ISO 4217.
  const rate = parseRate('0.10', 'tax rate');
  expect(taxInGross(1000, rate, 'half up')).toBe(91);
  expect(taxInGross(1000, rate, 'down')).toBe(90);
});

test('D11: converts a yen order once, then shares it', () => {
  // Source: derived by hand, recomputed independently; minor units from ISO 4217.
  const lines = [48000, 12500, 3300];
  expect(convertDocument(63800, 'JPY', 'USD', '0.006711')).toBe(42816);
  expect(convertLines(lines, 'JPY', 'USD', '0.006711')).toEqual([32213, 8389, 2214]);
  const separately = lines.map((line) => convertDocument(line, 'JPY', 'USD', '0.006711'));
  expect(separately).toEqual([32213, 8389, 2215]);
  expect(separately.reduce((sum, line) => sum + line, 0)).toBe(42817);
});

test('D12: books at the receipt rate, pays at another, and the gap is a gain', () => {
  // Source: IAS 21 idea (a difference on settlement goes to profit or loss, not to the item); number derived by hand,
  // recomputed independently.
  const booked = convertDocument(25000, 'EUR', 'USD', '1.1050');
  const paid = convertDocument(25000, 'EUR', 'USD', '1.0875');
  expect({ booked, paid, gain: booked - paid }).toEqual({ booked: 27625, paid: 27188, gain: 437 });
});

test('D13: converts a three-decimal currency', () => {
  // Source: derived by hand, recomputed independently; KWD has 3 minor units in ISO 4217.
  expect(convertDocument(12345, 'KWD', 'USD', '3.2525')).toBe(4015);
});

test('keeps credit lines negative and the sum whole', () => {
  // By hand: 32212.8 and -2214.63 cents; the total 29998.17 rounds to 29998, one cent goes to the larger fraction.
  expect(convertLines([48000, -3300], 'JPY', 'USD', '0.006711')).toEqual([32213, -2215]);
});

test.each(['', '1,1', '-1', '1.', '0x1', '1e2', '1234567890', '0.1234567890123'])('refuses the rate “%s”', (text) => {
  expect(() => parseRate(text, 'tax rate')).toThrow(`The tax rate “${text}” can't be read. Nothing was changed.`);
});

test('writes a percentage as a rate', () => {
  const written = { '8.25': '0.0825', '19': '0.19', '0': '0.00', '100': '1.00', '7.': '', '1,5': '', '0.5': '0.005' };
  for (const [percent, rate] of Object.entries(written)) {
    if (rate === '') expect(() => rateOfPercent(percent, 'tax rate')).toThrow(/The tax rate “.*” can't be read/);
    else expect([percent, rateOfPercent(percent, 'tax rate')]).toEqual([percent, rate]);
  }
});

test('refuses an exchange rate of 0 but allows a tax of 0', () => {
  expect(() => parseExchangeRate('0.000')).toThrow(/The exchange rate is 0/);
  expect(taxOnNet(1000, parseRate('0', 'tax rate'))).toBe(0);
});

const lines = fc.array(fc.integer({ min: -50_000_000, max: 50_000_000 }), { minLength: 1, maxLength: 30 });
const rates = fc
  .integer({ min: 1, max: 9_999_999 })
  .map((n) => `${Math.trunc(n / 10000)}.${String(n % 10000).padStart(4, '0')}`)
  .filter((text) => !/^0\.0*$/.test(text));

test('always makes converted lines add up to the converted document', () => {
  fc.assert(
    fc.property(lines, rates, fc.constantFrom('JPY', 'USD', 'KWD'), (minors, rate, from) => {
      const total = minors.reduce((sum, line) => sum + line, 0);
      const converted = convertLines(minors, from, 'EUR', rate);
      expect(converted.reduce((sum, line) => sum + line, 0)).toBe(convertDocument(total, from, 'EUR', rate));
    }),
  );
});

test('never lets net and tax miss the gross', () => {
  fc.assert(
    fc.property(fc.nat({ max: 1_000_000_000 }), fc.constantFrom('0.07', '0.19', '0.2', '0.0825'), (gross, text) => {
      const rate = parseRate(text, 'tax rate');
      const net = gross - taxInGross(gross, rate);
      expect(Math.abs(net + taxOnNet(net, rate) - gross)).toBeLessThanOrEqual(1);
    }),
  );
});
