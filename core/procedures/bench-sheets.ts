import { makersValueGoverns } from '../calculators/cautions.ts';
import type { SheetView } from '../contract/bench.ts';
import type { SheetFact } from '../gate/facts.ts';
import { type FitSetup, fitSays, selectFit } from '../measuring/select-fit.ts';
import { type SheetLimits, type SheetResult, type SheetSetup, workOutSheet } from '../measuring/sheet.ts';
import { type StoredReading, standingReadings } from '../workbook/store/bench.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { listRecords, needRecord, type RecordValuesRow, readRecord } from '../workbook/store/record-tables.ts';

/** A sheet of the build with what stands on it, worked out. */
export interface SheetWorked {
  readonly sheet: RecordValuesRow;
  readonly setup: SheetSetup;
  readonly less: RecordValuesRow | undefined;
  readonly result: SheetResult<StoredReading>;
}

const setupOf = (sheet: RecordValuesRow): SheetSetup => ({
  title: String(sheet['title']),
  quantity: String(sheet['quantity']),
  unit: String(sheet['unit']),
  places: sheet['places'] as unknown as readonly string[],
  readings: sheet['readings'] as unknown as readonly string[],
  limits: sheet['limits'] as unknown as SheetLimits,
  clearance: sheet['clearance'] as unknown as SheetLimits,
  resolution: sheet['resolution'] as number | null,
  uncertainty: sheet['uncertainty'] as number | null,
  expansionPpm: sheet['expansionPpm'] as number | null,
});

function workOut(
  connection: Connection,
  sheet: RecordValuesRow,
  readings: ReadonlyMap<number, StoredReading[]>,
): SheetWorked {
  const setup = setupOf(sheet);
  const id = sheet['less'] as number | null;
  const other = id === null ? undefined : readRecord(connection, 'measuringSheets', id);
  const less = other === undefined || other.gone || other['unit'] !== sheet['unit'] ? undefined : other;
  // The other sheet's own clearance is no part of this one, so one step is enough and no loop can arise.
  const taken =
    less === undefined
      ? undefined
      : { setup: setupOf(less), places: workOutSheet(setupOf(less), readings.get(less.id) ?? []).places };
  return { sheet, setup, less, result: workOutSheet(setup, readings.get(sheet.id) ?? [], taken) };
}

/** Every sheet of a build that is in use, worked out, now or at the end of a past day. */
export function sheetsOf(connection: Connection, build: number, asOf: string | undefined): SheetWorked[] {
  const sheets = listRecords(connection, 'measuringSheets', 'build = ? AND retired_on IS NULL', build);
  if (sheets.length === 0) return [];
  const readings = standingReadings(connection, build, asOf);
  return sheets.map((sheet) => workOut(connection, sheet, readings));
}

/** One sheet, worked out. @throws Refusal `not-found`. */
export function sheetWorked(connection: Connection, id: number, asOf: string | undefined): SheetWorked {
  const sheet = needRecord(connection, 'measuringSheets', id, 'sheet');
  return workOut(connection, sheet, standingReadings(connection, Number(sheet.build), asOf));
}

/** What the hoist check is told of the sheets that stand before it. */
export const sheetFacts = (connection: Connection, build: number, asOf: string | undefined): SheetFact[] =>
  sheetsOf(connection, build, asOf)
    .filter(({ sheet }) => sheet['beforeGate'] === true)
    .map(({ sheet, setup, result }) => ({
      id: sheet.id,
      title: setup.title,
      standing: result.standing,
      says: result.says,
    }));

function fitOf({ sheet, setup, less, result }: SheetWorked): SheetView['fit'] {
  const fit = sheet['fit'] as unknown as FitSetup | null;
  if (fit === null) return null;
  const places = result.places.map((place) => ({
    place: place.place,
    measured: less === undefined ? place.mean : place.clearance,
  }));
  const lines = selectFit(fit, places, less === undefined ? setup.limits : setup.clearance);
  return { way: fit.way, says: fitSays(lines, setup.unit), lines };
}

/** A sheet as its page shows it. */
export function sheetView(connection: Connection, worked: SheetWorked): SheetView {
  const { sheet, setup, less, result } = worked;
  const part = sheet['part'] as number | null;
  const job = sheet['job'] as number | null;
  return {
    id: sheet.id,
    revision: sheet.revision,
    title: setup.title,
    quantity: setup.quantity,
    unit: setup.unit,
    part,
    partDescription: part === null ? '' : String(readRecord(connection, 'parts', part)?.['description'] ?? ''),
    job,
    jobTitle: job === null ? '' : String(readRecord(connection, 'jobs', job)?.['title'] ?? ''),
    beforeGate: sheet['beforeGate'] === true,
    instrument: String(sheet['instrument']),
    resolution: setup.resolution,
    uncertainty: setup.uncertainty,
    expansionPpm: setup.expansionPpm,
    limits: setup.limits,
    clearanceLimits: setup.clearance,
    less: less?.id ?? null,
    lessTitle: less === undefined ? '' : String(less['title']),
    readingNames: [...setup.readings],
    places: result.places.map((place) => ({
      ...place,
      readings: place.readings.map(({ place: _, ...reading }) => reading),
      missing: [...place.missing],
    })),
    count: result.count,
    mean: result.mean,
    range: result.range,
    deviation: result.deviation,
    standing: result.standing,
    says: result.says,
    fit: fitOf(worked),
    note: String(sheet['note']),
    caution: makersValueGoverns,
  };
}
