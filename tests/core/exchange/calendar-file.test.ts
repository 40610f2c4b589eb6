import { expect, it } from 'vitest';
import { calendarFile } from '../../../core/exchange/calendar-file.ts';

/** Lines as RFC 5545 section 3.1 reads them: a line that begins with a space goes on with the one before. */
const unfolded = (text: string): string[] => text.replaceAll('\r\n ', '').trim().split('\r\n');

it('writes whole days as RFC 5545 has them, text escaped and lines folded at 75 octets', () => {
  const text = calendarFile(
    'Drover',
    [
      {
        id: 'promised-line-4',
        on: '2026-03-29',
        title: 'Promised: studs; 10, and nuts',
        text: `Keld \\ counter\nsecond line ${'ü'.repeat(60)}`,
      },
      { id: 'target', on: '2026-12-31', title: 'Target', text: '' },
    ],
    new Date('2026-03-01T10:00:00Z'),
  );
  for (const line of text.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  const lines = unfolded(text);
  expect(lines[0]).toBe('BEGIN:VCALENDAR');
  expect(lines.at(-1)).toBe('END:VCALENDAR');
  // RFC 5545, sections 3.6 and 3.6.1: VERSION and PRODID once; UID and DTSTAMP in every event.
  expect(lines).toContain('VERSION:2.0');
  expect(lines.filter((line) => line.startsWith('PRODID:'))).toHaveLength(1);
  expect(lines.filter((line) => line.startsWith('UID:'))).toEqual([
    'UID:promised-line-4@hoistday',
    'UID:target@hoistday',
  ]);
  expect(lines.filter((line) => line === 'DTSTAMP:20260301T100000Z')).toHaveLength(2);
  // Section 3.6.1: a whole day ends on the day after, which is not in it; the clocks change on 29 March in Europe.
  expect(lines).toContain('DTSTART;VALUE=DATE:20260329');
  expect(lines).toContain('DTEND;VALUE=DATE:20260330');
  expect(lines).toContain('DTEND;VALUE=DATE:20270101');
  // Section 3.3.11: backslash, semicolon, comma and line break are escaped.
  expect(lines).toContain('SUMMARY:Promised: studs\\; 10\\, and nuts');
  expect(lines.find((line) => line.startsWith('DESCRIPTION:Keld'))).toContain('Keld \\\\ counter\\nsecond line');
});
