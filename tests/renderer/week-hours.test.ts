import { expect, it } from 'vitest';
import { dayHoursText, readDayHours, readWeekHours, weekHoursText } from '../../renderer/parts/week-hours.ts';

it('reads hours of a week as people type them, and writes them back', () => {
  const hours = readWeekHours('Tue 18:30-21, saturday 9 to 15', 'windows');
  expect(hours).toEqual([
    { weekday: 2, from: '18:30', to: '21:00' },
    { weekday: 6, from: '09:00', to: '15:00' },
  ]);
  expect(weekHoursText(hours)).toBe('Tue 18:30–21:00, Sat 09:00–15:00');
  expect(readWeekHours(weekHoursText(hours), 'windows')).toEqual(hours);
});

it('reads hours of a day; nothing is none', () => {
  expect(dayHoursText(readDayHours('9-12; 13.30–17', 'windows'))).toBe('09:00–12:00, 13:30–17:00');
  expect(readDayHours(' ', 'windows')).toEqual([]);
});

it.each(['Tue', '18-21', 'T 18-21', 'Tue 21-18', 'Tue 18-25'])('refuses %j, naming it', (text) => {
  expect(() => readWeekHours(text, 'windows')).toThrow(/Nothing was changed/);
});
