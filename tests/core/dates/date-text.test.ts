import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOfDayNumber } from '../../../core/dates/calendar-date.ts';
import { readDateColumn } from '../../../core/dates/date-column.ts';
import { parseDateText, parseTypedDate } from '../../../core/dates/date-text.ts';
import { Refusal } from '../../../core/refusal.ts';

const dates = (column: ReturnType<typeof readDateColumn>) =>
  column.readings.map((reading) => (reading.kind === 'date' ? reading.date : reading.kind));

describe('a column of dates', () => {
  it('D82 is read day first when one row proves it', () => {
    // Source: derived by hand, recomputed independently; ISO 8601 output.
    const column = readDateColumn(['03/04/2026', '25/03/2026', '11/12/2025']);
    expect(column.order).toBe('day-first');
    expect(column.decidedBy).toEqual({ how: 'row', index: 1 });
    expect(dates(column)).toEqual(['2026-04-03', '2026-03-25', '2025-12-11']);
  });

  it('D83 is left open when no row proves anything', () => {
    // Source: derived by hand, recomputed independently.
    const column = readDateColumn(['03/04/2026', '11/12/2025']);
    expect(column.decidedBy).toEqual({ how: 'open' });
    expect(column.open).toEqual([0, 1]);
    expect(dates(column)).toEqual(['ambiguous', 'ambiguous']);
    expect(dates(readDateColumn(['03/04/2026', '11/12/2025'], { answer: 'month-first' }))).toEqual([
      '2026-03-04',
      '2025-11-12',
    ]);
  });

  it('D84 reports both rows when they contradict each other', () => {
    // Source: derived by hand, recomputed independently.
    const column = readDateColumn(['25/03/2026', '03/25/2026']);
    expect(column.decidedBy).toEqual({ how: 'contradiction', dayFirst: 0, monthFirst: 1 });
    expect(column.order).toBeNull();
  });

  it('does not ask about the fifth of the fifth', () => {
    expect(readDateColumn(['05/05/2026']).open).toEqual([]);
  });
});

describe('D85 other dates', () => {
  // Source: derived by hand, recomputed independently; ISO 8601 basic and week forms; serial days per ECMA-376.
  it.each(['2026-03-04', '4 Mar 2026', 'Mar 4, 2026', '20260304', '46085', '2026-W10-3'])('reads %s', (text) => {
    expect(parseDateText(text, { bareNumbers: '1900' })).toMatchObject({ kind: 'date', date: '2026-03-04' });
  });

  it('knows that February has no 31st', () => {
    expect(parseDateText('31/02/2026')).toMatchObject({ kind: 'error', reason: 'no-such-day' });
  });

  it('reads 03/04/26 in the order of its column, in 2026', () => {
    expect(parseDateText('03/04/26', { order: 'day-first' })).toMatchObject({ date: '2026-04-03' });
    expect(parseDateText('03/04/26', { order: 'month-first' })).toMatchObject({ date: '2026-03-04' });
    expect(parseDateText('03/04/69', { order: 'day-first' })).toMatchObject({ date: '1969-04-03' });
  });
});

describe('date text', () => {
  it.each([
    ['4. März 2026', '2026-03-04'],
    ['4 mars 2026', '2026-03-04'],
    ['4 de marzo de 2026', '2026-03-04'],
    ['Wednesday, March 4th, 2026', '2026-03-04'],
    ['04-Mar-26', '2026-03-04'],
    ['15.02.2026', '2026-02-15'],
    ['2026/3/4', '2026-03-04'],
    ['24 Juni 2026', '2026-06-24'],
    ['24 juil. 2026', '2026-07-24'],
    ['Sept 5, 2026', '2026-09-05'],
  ])('reads %s', (text, date) => {
    expect(parseDateText(text)).toMatchObject({ kind: 'date', date });
  });

  it('keeps a time as written', () => {
    expect(parseDateText('2026-03-04T14:05:09Z')).toMatchObject({ date: '2026-03-04', time: '14:05' });
    expect(parseDateText('3/14/2026 2:05 pm')).toMatchObject({ date: '2026-03-14', time: '14:05' });
  });

  it('leaves bare numbers alone unless the column is dates', () => {
    expect(parseDateText('46085')).toMatchObject({ kind: 'error', reason: 'not-a-date' });
    // 1904 system: ECMA-376, 1 January 1904 is day 0; 46085 - 1462 days of difference between the two systems.
    expect(parseDateText('44623', { bareNumbers: '1904' })).toMatchObject({ date: '2026-03-04' });
  });

  it.each(['yes', 'borrowed', '13/13/2026', '2026-02-30', '2026-W54-1', '0/1/2026', '9999-01-01', '99', '1/2'])(
    'does not read %s',
    (text) => {
      expect(parseDateText(text).kind).toBe('error');
    },
  );

  it('reads back every day in every written form', () => {
    const names = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
    fc.assert(
      fc.property(fc.integer({ min: -700, max: 40_000 }), (day) => {
        const iso = dateOfDayNumber(day);
        const [year = '', month = '', date = ''] = iso.split('-');
        for (const text of [
          `${year}${month}${date}`,
          `${date} ${names[Number(month) - 1]} ${year}`,
          `${names[Number(month) - 1]} ${date}, ${year}`,
        ]) {
          expect(parseDateText(text, { bareNumbers: '1900' })).toMatchObject({ date: iso });
        }
        expect(parseDateText(`${date}/${month}/${year}`, { order: 'day-first' })).toMatchObject({ date: iso });
        expect(parseDateText(`${month}/${date}/${year}`, { order: 'month-first' })).toMatchObject({ date: iso });
      }),
      { numRuns: 1000 },
    );
  });

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), fc.stringMatching(/^[\d/.: W-]{0,20}$/)), (text) => {
        parseDateText(text, { bareNumbers: '1900' });
      }),
      { numRuns: 2000 },
    );
  });
});

describe('a date somebody types', () => {
  it('follows the order shown beside the field', () => {
    expect(parseTypedDate('3/4/2026', 'day-first')).toBe('2026-04-03');
    expect(parseTypedDate('3/4/2026', 'month-first')).toBe('2026-03-04');
    expect(parseTypedDate('', 'day-first')).toBeNull();
  });

  it.each(['2026-02-30', 'tomorrow', '25/25/2026'])('refuses %s, naming the field and what it accepts', (text) => {
    try {
      parseTypedDate(text, 'day-first', 'order date');
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(Refusal);
      expect((error as Refusal).field).toBe('order date');
      expect((error as Refusal).accepted).toContain('2026-03-04');
      expect((error as Refusal).message).toMatch(/Nothing was changed\.$/);
    }
  });
});
