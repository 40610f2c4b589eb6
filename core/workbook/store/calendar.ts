import type { DayWindow, WeekWindow } from '../../contract/records.ts';
import type { Settings } from '../../contract/workbook.ts';
import { peopleTimes, type WorkingPerson } from '../../schedule/calendar.ts';
import type { Connection } from './connection.ts';
import { listRecords } from './record-tables.ts';
import { remembered } from './remembered.ts';

/** Who works when nobody is named. */
const builder = { id: 'builder', name: 'the builder', weekly: [] };

/**
 * The people who work on a build, with their working time as the calendar stands now: their own week or that of the
 * settings, and the build's days off and extra days. Without people on the list it is one builder, with the id
 * `builder`; else ids are those of the records, as text.
 */
export function peopleOf(
  connection: Connection,
  build: number,
  settings: Pick<Settings, 'weekWindows'>,
): readonly WorkingPerson[] {
  return remembered(connection, `people ${build} ${JSON.stringify(settings.weekWindows)}`, () => {
    const listed = listRecords(connection, 'people', 'retired_on IS NULL').map((record) => ({
      id: String(record.id),
      name: String(record['name']),
      weekly: record['windows'] as unknown as WeekWindow[],
    }));
    const days = listRecords(connection, 'calendarDays', 'build = ? AND retired_on IS NULL', build).map((record) => ({
      on: String(record['on']),
      until: record['until'] as string | null,
      person: record['person'] === null ? null : String(record['person']),
      windows: record['windows'] as unknown as DayWindow[],
    }));
    return peopleTimes({
      weekly: settings.weekWindows,
      people: listed.length === 0 ? [builder] : listed,
      days,
    });
  });
}
