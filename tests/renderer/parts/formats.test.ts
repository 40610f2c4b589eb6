import { describe, expect, it } from 'vitest';
import {
  counted,
  dateText,
  moneyText,
  monthText,
  plainUnitPrice,
  quantityText,
  unitPriceText,
} from '../../../renderer/parts/formats.ts';
import { standardLocale } from '../../../renderer/parts/locale.tsx';

const english = { ...standardLocale, currency: 'EUR' };
const german = { ...english, language: 'de' };

describe('figures as the reader writes them (marks: Unicode CLDR, by the platform)', () => {
  it('writes money with its currency’s own decimals (ISO 4217)', () => {
    expect(moneyText(123_450, english)).toBe('€1,234.50');
    expect(moneyText(123_450, german)).toBe('1.234,50\u00a0€');
    expect(moneyText(1250, english, 'JPY')).toBe('¥1,250');
    expect(moneyText(-5, english, 'USD')).toBe('-$0.05');
  });

  it('writes every digit of the largest amount that can be held', () => {
    expect(moneyText(Number.MAX_SAFE_INTEGER, english)).toBe('€90,071,992,547,409.91');
  });

  it('writes a price each to its last place and no further', () => {
    expect(unitPriceText(34_500, english)).toBe('€0.0345');
    expect(unitPriceText(12_500_000, english)).toBe('€12.50');
    expect(plainUnitPrice(34_500, 'EUR')).toBe('0.0345');
    expect(plainUnitPrice(12_500_000, 'JPY')).toBe('1250');
  });

  it('writes quantities without idle zeros', () => {
    expect(quantityText(8000, english)).toBe('8');
    expect(quantityText(4500, german, 'm')).toBe('4,5 m');
    expect(quantityText(1500, english, 'furlongs')).toBe('1.5 furlongs');
  });

  it.each([
    ['d Mon yyyy', '5 Sep 2026'],
    ['dd/mm/yyyy', '05/09/2026'],
    ['mm/dd/yyyy', '09/05/2026'],
    ['yyyy-mm-dd', '2026-09-05'],
  ] as const)('writes a date as %s', (dateForm, text) => {
    expect(dateText('2026-09-05', { dateForm })).toBe(text);
  });

  it('leaves alone what is no date', () => {
    expect(dateText('soon', english)).toBe('soon');
    expect(monthText('2026-13')).toBe('2026-13');
  });

  it('lets the noun follow the count', () => {
    expect([counted(1, 'part', 'parts'), counted(0, 'part', 'parts')]).toEqual(['1 part', '0 parts']);
  });
});
