import { calendarFile } from '../exchange/calendar-file.ts';
import { tableToCsv } from '../exchange/table-to-csv.ts';
import { tableToXlsx } from '../exchange/table-to-xlsx.ts';
import { importsOf, standingImports } from '../workbook/store/imports.ts';
import { workbookFromText, workbookText } from '../workbook/store/whole-workbook.ts';
import { needBuild, procedures } from './context.ts';
import { calendarEntries } from './exchange-calendar.ts';
import { exportTableOf } from './exchange-tables.ts';
import { holdFile, mappingFor, planFor } from './import-reading.ts';
import { bringIn, countsOf, reportOf } from './import-writing.ts';

const { exchange } = procedures;

const types = {
  csv: 'text/csv;charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
} as const;

/** File name of a table: the workbook, the table and the day that it shows. */
const fileName = (book: string, table: string, day: string, ending: string): string =>
  `${book} - ${table} - ${day}.${ending}`;

export const exchangeProcedures = {
  read: exchange.read.handler(async ({ context, input }) => {
    const { token, read } = await holdFile(context, input.file, input.encoding);
    const connection = context.current()?.connection ?? null;
    const known = connection === null ? undefined : standingImports(connection, read.sha256)[0];
    return {
      token,
      read,
      mappings: read.tables.map((table) => mappingFor(connection, table)),
      known: known === undefined ? null : { act: known.act, on: known.on, label: known.label },
    };
  }),
  plan: exchange.plan.handler(async ({ context, input }) => {
    needBuild(context, input.build);
    const { plan, mapping, matches } = await planFor(context, input);
    return { plan, mapping, matches: [...matches] };
  }),
  bringIn: exchange.bringIn.handler(({ context, input }) => {
    needBuild(context, input.build);
    context.files.backUpIfWritten();
    return bringIn(context, input);
  }),
  imports: exchange.imports.handler(({ context, input }) => {
    needBuild(context, input.build);
    return importsOf(context.book().connection, input.build).map((kept) => {
      const counts = countsOf(kept);
      return {
        act: kept.act,
        on: kept.on,
        fileName: kept.fileName,
        rows: kept.report.length,
        written: (counts['part'] ?? 0) + (counts['order-line'] ?? 0),
        undone: kept.undone,
        summary: kept.summary,
      };
    });
  }),
  report: exchange.report.handler(({ context, input }) => reportOf(context, input.act)),
  exportTable: exchange.exportTable.handler(async ({ context, input }) => {
    const table = await exportTableOf(context, input.table, input);
    const bytes = input.format === 'csv' ? tableToCsv(table) : await tableToXlsx(table);
    const name = fileName(context.book().name, input.table, input.asOf ?? context.today(), input.format);
    return new File([bytes as Uint8Array<ArrayBuffer>], name, { type: types[input.format] });
  }),
  calendarFile: exchange.calendarFile.handler(async ({ context, input }) => {
    const build = needBuild(context, input.build);
    const text = calendarFile(build.name, await calendarEntries(context, input), context.now());
    const name = fileName(context.book().name, 'days', input.asOf ?? context.today(), 'ics');
    return new File([text], name, { type: 'text/calendar;charset=utf-8' });
  }),
  exportWorkbook: exchange.exportWorkbook.handler(({ context }) => {
    const { connection, name } = context.book();
    // One moment of the workbook, though its tables are read one after the other.
    const pieces = connection.sqlite.transaction(() => [...workbookText(connection)].map((text) => new Blob([text])))();
    return new File(pieces, `${name} - ${context.today()}.json`, { type: 'application/json' });
  }),
  importWorkbook: exchange.importWorkbook.handler(async ({ context, input }) => {
    const path = context.files.pathFor(input.name);
    const { entries } = await workbookFromText(input.file.stream(), path, context.now());
    return { path, entries };
  }),
};
