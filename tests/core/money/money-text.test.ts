import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMoneyColumn } from '../../../core/money/money-column.ts';
import { currenciesNamed, parseMoneyText, parseTypedMoney } from '../../../core/money/money-text.ts';
import { Refusal } from '../../../core/refusal.ts';

/** A reading in the short form that the check case is written in. */
function short(text: string, currency: string): number | string {
  const reading = parseMoneyText(text, currency);
  if (reading.kind === 'amount') return reading.minor;
  return reading.kind === 'error' ? `error: ${reading.reason}` : reading.kind;
}

describe('D81 money text', () => {
  // Source: derived by hand, recomputed independently; minor units from ISO 4217.
  it.each([
    ['$1,234.50', 'USD', 123450],
    ['1.234,50 €', 'EUR', 123450],
    ['(45.00)', 'USD', -4500],
    ['-45.00', 'USD', -4500],
    ['45.00-', 'USD', -4500],
    ["1'234.50", 'CHF', 123450],
    ['1 234,50', 'EUR', 123450],
    ['12,34,567.00', 'INR', 123456700],
    ['¥1,234', 'JPY', 1234],
    ['1,234', 'USD', 'ambiguous'],
    ['1.234', 'EUR', 'ambiguous'],
    ['1.5', 'USD', 150],
    ['1,5', 'EUR', 150],
    ['0.345', 'KWD', 345],
    ['12.345', 'USD', 'ambiguous'],
    ['1,23,4', 'USD', 'error: groups'],
    ['1.234.567', 'EUR', 123456700],
    ['USD 99', 'USD', 9900],
    ['', 'USD', 'blank'],
    ['n/a', 'USD', 'error: not-money'],
    ['0', 'USD', 0],
    ['10.0055', 'USD', 'error: decimals'],
  ])('reads %s in %s as %s', (text, currency, expected) => {
    expect(short(text, currency)).toBe(expected);
  });
});

describe('money text', () => {
  it.each(['1e5', '0x10', 'NaN', 'Infinity', '--5', '=2*49.95', '１２', '١٢', '5 - 3', '1.2.3,4,5', '()', '$', '-'])(
    'does not read %s as an amount',
    (text) => {
      expect(parseMoneyText(text, 'USD').kind).toBe('error');
    },
  );

  it('reads a minus in front of or behind the sign, true minus included, but not two', () => {
    expect(short('$-45.00', 'USD')).toBe(-4500);
    expect(short('-$45.00', 'USD')).toBe(-4500);
    expect(short('−45', 'USD')).toBe(-4500);
    expect(short('+45', 'USD')).toBe(4500);
    expect(short('(-45)', 'USD')).toBe('error: sign');
    expect(short('45,-', 'EUR')).toBe(4500);
  });

  it('lets the column say which currency an unclear sign is, and refuses another one', () => {
    expect(short('$ 10', 'CAD')).toBe(1000);
    expect(short('10 kr', 'SEK')).toBe(1000);
    expect(short('€10', 'USD')).toBe('error: currency');
    expect(currenciesNamed('9,80 €')).toEqual(['EUR']);
    expect(currenciesNamed('9.80')).toBeNull();
  });

  it('keeps four more decimals for a unit price and no fifth', () => {
    expect(parseMoneyText('10.0055', 'USD', { purpose: 'unit-price' })).toMatchObject({
      minor: 1001,
      plain: '10.0055',
    });
    expect(parseMoneyText('-0.125', 'USD', { purpose: 'unit-price' })).toMatchObject({ minor: -13 });
    expect(parseMoneyText('0.1234567', 'USD', { purpose: 'unit-price' }).kind).toBe('error');
  });

  it('refuses what cannot be held exactly', () => {
    expect(short('90071992547409.91', 'USD')).toBe(9007199254740991);
    expect(short('90071992547409.92', 'USD')).toBe('error: range');
  });

  it('reads back every amount written with either mark and groups of three', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10 ** 12 }),
        fc.constantFrom('.', ','),
        fc.boolean(),
        (minor, mark, sign) => {
          const whole = Math.trunc(minor / 100).toString();
          const grouped = whole.replace(/\B(?=(\d{3})+$)/g, mark === '.' ? ',' : '.');
          const text = `${sign ? '-' : ''}${grouped}${mark}${(minor % 100).toString().padStart(2, '0')}`;
          expect(parseMoneyText(text, 'USD')).toMatchObject({
            kind: 'amount',
            minor: sign && minor > 0 ? -minor : minor,
          });
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        parseMoneyText(text, 'USD');
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a column of amounts', () => {
  const usd = (texts: string[]) => texts.map(() => 'USD');
  it('settles 1,234 by a row that can be read one way only', () => {
    const texts = ['1,234', '$2,000.50'];
    const column = readMoneyColumn(texts, usd(texts));
    expect(column.decidedBy).toEqual({ how: 'row', index: 1 });
    expect(column.readings[0]).toMatchObject({ minor: 123400 });
  });

  it('settles it by the setting when no row does, and by the answer before both', () => {
    expect(readMoneyColumn(['1.234'], ['EUR'], { setting: ',' }).readings[0]).toMatchObject({ minor: 123400 });
    const texts = ['1.234', '9,80'];
    const answered = readMoneyColumn(texts, ['EUR', 'EUR'], { answer: '.', purpose: 'unit-price' });
    expect(answered.readings[0]).toMatchObject({ plain: '1.234' });
  });

  it('leaves it open when nothing settles it or rows contradict each other', () => {
    expect(readMoneyColumn(['1,234'], ['USD']).open).toEqual([0]);
    const texts = ['1,234', '9.80', '9,80'];
    expect(readMoneyColumn(texts, usd(texts)).open).toEqual([0]);
  });

  it('treats a lone mark as grouping in a currency without minor units', () => {
    expect(readMoneyColumn(['1,234'], ['JPY']).readings[0]).toMatchObject({ minor: 1234 });
  });
});

describe('an amount somebody types', () => {
  it('gives minor units, and nothing for an empty field', () => {
    expect(parseTypedMoney(' $1,234.50 ', 'USD')).toBe(123450);
    expect(parseTypedMoney('  ', 'USD')).toBeNull();
  });

  it.each(['1,234', '12.345', '5-', 'n/a', '1e5', '€5'])('refuses %s, naming the field and what it accepts', (text) => {
    try {
      parseTypedMoney(text, 'USD', 'unit price');
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(Refusal);
      const refusal = error as Refusal;
      expect(refusal.field).toBe('unit price');
      expect(refusal.accepted).toContain('USD');
      expect(refusal.message).toMatch(/unit price.*Nothing was changed\.$/);
    }
  });

  it('names the decimals of the currency', () => {
    expect(() => parseTypedMoney('12.345', 'USD')).toThrow('USD has 2 decimals');
  });
});
