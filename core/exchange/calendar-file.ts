import ical, { ICalEventTransparency } from 'ical-generator';

/** Something that happens on a day. */
export interface CalendarEntry {
  /** The same for the same thing each time, so that a calendar that reads the file again changes it and adds nothing. */
  readonly id: string;
  readonly on: string;
  readonly title: string;
  readonly text: string;
}

/**
 * Days as a calendar file (RFC 5545): whole days that leave the day free, each with its own lasting name.
 * @param madeAt when the file is made; every entry carries it.
 */
export function calendarFile(name: string, entries: readonly CalendarEntry[], madeAt: Date): string {
  const calendar = ical({ name, prodId: { company: 'Hoistday', product: 'Workbook', language: 'EN' } });
  for (const { id, on, title, text } of entries) {
    // Midnight in UTC and the day after: whole days have no zone, and the library reads them in UTC.
    const start = new Date(`${on}T00:00:00Z`);
    const end = new Date(start.getTime() + 86_400_000);
    calendar.createEvent({
      id: `${id}@hoistday`,
      start,
      end,
      allDay: true,
      stamp: madeAt,
      summary: title,
      description: text,
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  return calendar.toString();
}
