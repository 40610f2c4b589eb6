import { sheetDimension } from '../measuring/sheet-rules.ts';
import { Refusal } from '../refusal.ts';
import { dimensions } from '../units/dimensions.ts';
import { fromSI, toSI } from '../units/measure.ts';
import { parseMeasure } from '../units/parse-measure.ts';
import { needRecord, type RecordValuesRow } from '../workbook/store/record-tables.ts';
import { act, type Context, counted, procedures } from './context.ts';

const { bench } = procedures;

function needSheet(context: Context, id: number, change: boolean): RecordValuesRow {
  const sheet = needRecord(context.book().connection, 'measuringSheets', id, 'sheet');
  if (change && sheet.retiredOn !== null) {
    throw new Refusal('retired', `The sheet was retired on ${sheet.retiredOn}. Nothing was changed.`, {
      field: 'sheet',
      accepted: 'a sheet that is in use; bring this one back first',
    });
  }
  return sheet;
}

function needOnSheet(sheet: RecordValuesRow, key: 'places' | 'readings', word: string, given: string): void {
  const known = sheet[key] as unknown as readonly string[];
  if (known.includes(given)) return;
  throw new Refusal('bad-input', `The sheet has no ${word} “${given}”. Nothing was changed.`, {
    field: word === 'place' ? 'place' : 'name',
    accepted: known.join(', '),
  });
}

/** Sizes that could be below nothing: a lash set too tight is no reading, but a float or a difference may be. */
const mayBeNegative: ReadonlySet<string> = new Set(['clearance', 'other']);

/** What was typed, in the unit of the sheet. @throws Refusal naming the place and reading. */
function readTyped(sheet: RecordValuesRow, reading: { place: string; name: string; typed: string }): number {
  const unit = String(sheet['unit']);
  const dimension = sheetDimension(unit);
  const field = `${reading.place}, ${reading.name}`;
  const measure = parseMeasure(reading.typed, dimension, { field, unit });
  const value = fromSI(toSI(measure.value, measure.unit, dimension), unit, dimension);
  // The conversion of a number into its own unit leaves binary dust behind it.
  const plain = measure.unit === unit ? measure.value : Number(value.toPrecision(12));
  if (!Number.isFinite(plain) || (plain < 0 && !mayBeNegative.has(String(sheet['quantity'])))) {
    throw new Refusal(
      'bad-input',
      `The reading ${field} is ${reading.typed}, which nothing can measure. Nothing was changed.`,
      { field, accepted: `${dimensions[dimension].name} of zero or more` },
    );
  }
  return plain;
}

/** What a person does at a measuring sheet. */
export const sheetActs = {
  read: bench.read.handler(({ context, input }) => {
    const sheet = needSheet(context, input.sheet, true);
    const seen = new Set<string>();
    const readings = input.readings.map((reading) => {
      needOnSheet(sheet, 'places', 'place', reading.place);
      needOnSheet(sheet, 'readings', 'reading', reading.name);
      const key = `${reading.place}\n${reading.name}`;
      if (seen.has(key)) {
        throw new Refusal('bad-input', `${reading.place}, ${reading.name} is given twice. Nothing was changed.`, {
          field: 'readings',
          accepted: 'one reading for each place and name',
        });
      }
      seen.add(key);
      return { ...reading, typed: reading.typed.trim(), value: readTyped(sheet, reading) };
    });
    return act(context, input, `${counted(readings.length, 'reading')} on ${String(sheet['title'])}`, (writer) => {
      writer.post({
        kind: 'measured',
        on: input.on,
        build: Number(sheet.build),
        subjectKind: 'measuring-sheet',
        subject: sheet.id,
        payload: {
          readings,
          by: input.by,
          instrument: input.instrument === '' ? String(sheet['instrument']) : input.instrument,
          name: String(sheet['title']),
        },
      });
      return undefined;
    });
  }),

  strike: bench.strike.handler(({ context, input }) => {
    const sheet = needSheet(context, input.sheet, true);
    needOnSheet(sheet, 'places', 'place', input.place);
    needOnSheet(sheet, 'readings', 'reading', input.name);
    return act(context, input, `Reading of ${input.place} off ${String(sheet['title'])}`, (writer) => {
      writer.post({
        kind: 'measured',
        on: input.on,
        build: Number(sheet.build),
        subjectKind: 'measuring-sheet',
        subject: sheet.id,
        payload: { struck: { place: input.place, name: input.name }, reason: input.reason },
      });
      return undefined;
    });
  }),
};
