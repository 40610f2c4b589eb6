/** A workbook of sheets to rows: saved values, never formulas; nothing outside the file is looked at. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import readSheets from 'read-excel-file/node';
import { prepareSheet, withoutResult } from './sheet-xml.ts';
import type { CellKind, ImportFinding, TableRow } from './table-types.ts';
import { listLimits, pastLimit, unreadable } from './unreadable.ts';
import { checkedEntries } from './zip-safety.ts';

export interface SheetRows {
  readonly name: string;
  readonly rows: readonly TableRow[];
  readonly findings: readonly ImportFinding[];
}

const advice = 'Open it in a spreadsheet program and save it again as .xlsx, or as .csv.';

/** @throws Refusal `file-unreadable` for anything that is not a plain workbook within the limits. */
export async function readXlsx(bytes: Uint8Array, fileName: string): Promise<readonly SheetRows[]> {
  const entries = checkedEntries(bytes, fileName);
  const names = new Set(entries.map((entry) => entry.name));
  if (!names.has('xl/workbook.xml')) {
    throw unreadable(
      fileName,
      'it is an archive, but not a workbook.',
      'Unpack it, or save the list as .xlsx or .csv.',
    );
  }
  const parts = unpack(bytes, fileName);
  const findings: ImportFinding[] = [];
  const safe: Record<string, Uint8Array> = Object.create(null);
  for (const [name, part] of parts) {
    const xml = strFromU8(part);
    if (/<!(?:DOCTYPE|ENTITY)/i.test(xml)) throw unreadable(fileName, 'it holds a document type definition.', advice);
    if (!/^xl\/worksheets\/[^/]+\.xml$/i.test(name)) {
      safe[name] = part;
      continue;
    }
    const sheet = prepareSheet(xml);
    if (sheet.lastRow > listLimits.rows) throw pastLimit(fileName, 'rows in a sheet', listLimits.rows);
    if (sheet.lastColumn > listLimits.columns) throw pastLimit(fileName, 'columns in a sheet', listLimits.columns);
    safe[name] = strToU8(sheet.xml);
    findings.push(...remarks(sheet));
  }
  const styles = parts.get('xl/styles.xml');
  // Every workbook has two fills, none and grey dots; a third one was chosen by somebody.
  if (styles !== undefined && (strFromU8(styles).match(/<fill>/g)?.length ?? 0) > 2) {
    findings.push({
      severity: 'note',
      column: '',
      text: '',
      message: 'Cells are coloured; what a colour means is not read.',
    });
  }
  // Handed on uncompressed: the reader sees exactly the entries that were checked here.
  const archive = zipSync(safe, { level: 0 });
  let sheets: readonly { readonly sheet: string; readonly data: readonly (readonly unknown[])[] }[];
  try {
    const buffer = Buffer.from(archive.buffer, archive.byteOffset, archive.byteLength);
    sheets = await readSheets<string>(buffer, { trim: false, parseNumber: (text) => numberMark + text });
  } catch (error) {
    throw unreadable(fileName, `its sheets are damaged (${shortReason(error)}).`, advice);
  }
  return sheets.map(({ sheet, data }) => ({
    name: sheet,
    rows: data.map((cells, index) => toRow(cells, index + 1)),
    findings,
  }));
}

function unpack(bytes: Uint8Array, fileName: string): ReadonlyMap<string, Uint8Array> {
  try {
    const parts = unzipSync(bytes, { filter: ({ name }) => /\.(?:xml|rels)$/i.test(name) });
    return new Map(Object.entries(parts));
  } catch (error) {
    throw unreadable(fileName, `its archive is damaged (${shortReason(error)}).`, advice);
  }
}

function shortReason(error: unknown): string {
  return error instanceof Error ? error.message.slice(0, 100).replace(/[.\s]+$/, '') : 'unknown';
}

function remarks(sheet: ReturnType<typeof prepareSheet>): ImportFinding[] {
  const note = (message: string): ImportFinding => ({ severity: 'note', column: '', text: '', message });
  return [
    sheet.formulas > 0 ? [note(`${sheet.formulas} cells are formulas; the values last saved were taken.`)] : [],
    sheet.hiddenRows > 0
      ? [note(`${sheet.hiddenRows} rows are hidden in the sheet; they were read like the others.`)]
      : [],
    sheet.mergedCells > 0 ? [note('Some cells are merged; their text stands in the first cell only.')] : [],
  ].flat();
}

function toRow(cells: readonly unknown[], row: number): TableRow {
  const texts: string[] = [];
  const kinds: CellKind[] = [];
  for (const cell of cells) {
    const [text, kind] = toCell(cell);
    texts.push(text);
    kinds.push(kind);
  }
  return { row, cells: texts, kinds };
}

function toCell(cell: unknown): readonly [text: string, kind: CellKind] {
  if (cell === null || cell === undefined) return ['', 'text'];
  if (typeof cell === 'boolean') return [cell ? 'TRUE' : 'FALSE', 'boolean'];
  if (cell instanceof Date) {
    if (Number.isNaN(cell.getTime())) return ['#VALUE!', 'error'];
    const [day = '', time = ''] = cell.toISOString().split('T');
    return [time.startsWith('00:00') ? day : `${day}T${time.slice(0, 5)}`, 'date'];
  }
  const text = String(cell);
  if (text === withoutResult || /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!)$/.test(text)) {
    return [text, 'error'];
  }
  // Numbers are told from text by how the reader was asked to hand them over, see numberText.
  if (!text.startsWith(numberMark)) return [text, 'text'];
  const number = numberText(text.slice(1));
  return number === null ? [text.slice(1), 'text'] : [number, 'number'];
}

/** Stands before a number on its way through the reader; no text in a sheet can begin with it. */
const numberMark = '\u0000';

/** Spreadsheets hold 15 significant digits; what comes after them is dust from binary fractions. */
function numberText(text: string): string | null {
  const number = Number(text);
  if (text.trim() === '' || !Number.isFinite(number)) return null;
  return /^-?\d{1,15}$/.test(text) ? text : String(Number(number.toPrecision(15)));
}
