import { call } from '@orpc/server';
import type { CalendarEntry } from '../exchange/calendar-file.ts';
import { dayWords, quantityWords } from '../workbook/store/entry-text.ts';
import { listRecords, needRecord } from '../workbook/store/record-tables.ts';
import type { Context } from './context.ts';
import { forecastProcedures } from './forecast.ts';
import { ordersProcedures } from './orders.ts';

interface Asked {
  readonly build: number;
  readonly asOf?: string | undefined;
}

/**
 * Promised and forecast days of a build: what vendors promised, when what has no promise (or a late one) is likely to
 * come, tools that are due, the target and the days by which each gate is likely to be reached.
 */
export async function calendarEntries(context: Context, asked: Asked): Promise<CalendarEntry[]> {
  const { connection } = context.book();
  const [due, forecast] = await Promise.all([
    call(ordersProcedures.due, asked, { context }),
    call(forecastProcedures.run, { ...asked, runs: 2000, seed: 1 }, { context }),
  ]);
  const build = needRecord(connection, 'builds', asked.build);
  // Entries of two workbooks in one calendar must not take each other's place.
  const book = encodeURIComponent(context.book().name);
  const what = `build ${asked.build}`;
  const promised = due.flatMap((row): CalendarEntry[] =>
    row.promisedOn === null
      ? []
      : [
          {
            id: `promised-line-${row.line}`,
            on: row.promisedOn,
            title: `Promised: ${row.description}`,
            text: `${quantityWords(row.outstandingMilli, row.unit)} from ${row.vendorName}${row.orderNumber === '' ? '' : `, order ${row.orderNumber}`}, ordered ${dayWords(row.orderedOn)}.`,
          },
        ],
  );
  const promiseOf = new Map(due.map(({ line, promisedOn }) => [line, promisedOn]));
  const likely = forecast.coming
    .filter(({ line, p50On }) => line === null || promiseOf.get(line) !== p50On)
    .map(
      (row): CalendarEntry => ({
        id: row.line === null ? `likely-part-${row.part}` : `likely-line-${row.line}`,
        on: row.p50On,
        title: `Likely: ${row.description}`,
        text: `As likely as not by this day, four times of five by ${dayWords(row.p80On)}. ${row.says}`,
      }),
    );
  const gates = forecast.gates.flatMap((gate): CalendarEntry[] => [
    {
      id: `gate-p50-${what}-${gate.name}`.replaceAll(' ', '-'),
      on: gate.p50On,
      title: `${gate.name}: as likely as not by this day`,
      text: forecast.answer,
    },
    {
      id: `gate-p80-${what}-${gate.name}`.replaceAll(' ', '-'),
      on: gate.p80On,
      title: `${gate.name}: four times of five by this day`,
      text: forecast.answer,
    },
  ]);
  const target = build['targetOn'] as string | null;
  const tools = listRecords(
    connection,
    'tools',
    'build = ? AND retired_on IS NULL AND due_on IS NOT NULL',
    asked.build,
  ).map(
    (tool): CalendarEntry => ({
      id: `tool-${tool.id}`,
      on: String(tool['dueOn']),
      title: `Tool due: ${String(tool['name'])}`,
      text: String(tool['whereabouts']),
    }),
  );
  return [
    ...promised,
    ...likely,
    ...tools,
    ...gates,
    ...(target === null
      ? []
      : [{ id: `target-${what}`.replace(' ', '-'), on: target, title: `Target: ${String(build['name'])}`, text: '' }]),
  ]
    .map((entry) => ({ ...entry, id: `${book}-${entry.id}` }))
    .sort((one, other) => (one.on < other.on ? -1 : one.on > other.on ? 1 : 0));
}
