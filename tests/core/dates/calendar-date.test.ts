import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addDays,
  compareDates,
  dateOfDayNumber,
  dayNumber,
  daysBetween,
  isDate,
  lastDayOfMonth,
  monthOf,
  monthsBetween,
  requireDate,
  weekdayOf,
} from '../../../core/dates/calendar-date.ts';

test('accepts real days only', () => {
  // Source: the Gregorian leap-year rule, ISO 8601: 1900 and 2100 are common years, 2000 and 2024 leap years.
  for (const day of ['1900-01-01', '2000-02-29', '2024-02-29', '2199-12-31'])
    expect([day, isDate(day)]).toEqual([day, true]);
  const wrong = ['1899-12-31', '2200-01-01', '1900-02-29', '2100-02-29', '2026-02-30', '2026-04-31', '2026-13-01'];
  const misspelt = ['2026-00-10', '2026-1-1', '20260101', '2026-01-01T00:00', ' 2026-01-01', '', '+02026-01-01'];
  for (const text of [...wrong, ...misspelt]) expect([text, isDate(text)]).toEqual([text, false]);
});

test('refuses with the field named and nothing changed', () => {
  expect(() => requireDate('2026-02-30', 'order date')).toThrow(
    'The order date “2026-02-30” is not a calendar day. Nothing was changed.',
  );
});

test('counts days across months and leap days', () => {
  // By hand.
  expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
  expect(daysBetween('2026-02-28', '2026-03-01')).toBe(1);
  expect(daysBetween('2026-03-10', '2026-03-02')).toBe(-8);
  expect(addDays('2025-12-31', 1)).toBe('2026-01-01');
  expect(addDays('2026-03-01', -1)).toBe('2026-02-28');
  expect(() => addDays('2199-12-31', 1)).toThrow(/Nothing was changed/);
  expect(() => addDays('2026-01-01', 1e15)).toThrow(/Nothing was changed/);
});

test('knows weekdays', () => {
  // Source: ISO 8601 numbering; 2026-03-02 is the Monday of the worked calendar cases, 1900-01-01 was a Monday too.
  expect(weekdayOf('2026-03-02')).toBe(1);
  expect(weekdayOf('1900-01-01')).toBe(1);
  expect(weekdayOf('1970-01-01')).toBe(4);
  expect(weekdayOf('2026-03-08')).toBe(7);
});

test('lists months, ends of months and order', () => {
  expect(monthOf('2026-03-31')).toBe('2026-03');
  expect(monthsBetween('2025-11-30', '2026-02-01')).toEqual(['2025-11', '2025-12', '2026-01', '2026-02']);
  expect(monthsBetween('2026-02-01', '2026-02-28')).toEqual(['2026-02']);
  expect(monthsBetween('2026-03-01', '2026-02-28')).toEqual([]);
  expect(lastDayOfMonth('2024-02-10')).toBe('2024-02-29');
  expect(lastDayOfMonth('2025-12-01')).toBe('2025-12-31');
  expect(['2026-03-02', '2025-12-31'].sort(compareDates)).toEqual(['2025-12-31', '2026-03-02']);
});

const days = fc.integer({ min: dayNumber('1900-01-01'), max: dayNumber('2199-12-31') });

test('counts every day from 1900 to 2199 there and back', () => {
  fc.assert(
    fc.property(days, days, (a, b) => {
      const [from, to] = [dateOfDayNumber(a), dateOfDayNumber(b)];
      expect(isDate(from)).toBe(true);
      expect(daysBetween(from, to)).toBe(b - a);
      expect(addDays(from, b - a)).toBe(to);
      expect(Math.sign(compareDates(from, to))).toBe(Math.sign(a - b));
    }),
  );
});
