import { expect, test } from 'vitest';
import { dateOfMinute, formatInstant, parseInstant, startOfDay } from '../../../core/dates/instant.ts';

test('reads wall times into minutes and back', () => {
  expect(parseInstant('1970-01-01T00:00')).toBe(0);
  expect(parseInstant('1969-12-31T23:59')).toBe(-1);
  for (const text of ['2026-03-02T08:00', '1969-12-31T23:59', '2000-02-29T00:00', '2199-12-31T23:59']) {
    expect(formatInstant(parseInstant(text))).toBe(text);
  }
  expect(dateOfMinute(parseInstant('2026-03-02T23:59'))).toBe('2026-03-02');
  expect(startOfDay('2026-03-02')).toBe(parseInstant('2026-03-02T00:00'));
});

test.each(['2026-03-02', '2026-03-02T24:00', '2026-03-02T8:00', '2026-02-30T08:00', '2026-03-02T08:60', ''])(
  'refuses “%s”',
  (text) => {
    expect(() => parseInstant(text, 'session start')).toThrow(/The session start “.*” is not a day and time/);
  },
);
