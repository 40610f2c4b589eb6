/** The door of the import: bytes in, rows of text out. Nothing is interpreted here and nothing is thrown away. */
import { createHash } from 'node:crypto';
import { decodeText } from './decode-text.ts';
import { fileKind } from './file-kind.ts';
import { columnsOf, findHeader, headerFingerprint } from './find-header.ts';
import { readCsv } from './read-csv.ts';
import { readXlsx } from './read-xlsx.ts';
import type { ImportFinding, ImportQuestion, ReadChoices, Table, TableRead, TableRow } from './table-types.ts';
import { listLimits, pastLimit, unreadable } from './unreadable.ts';

/**
 * Reads a CSV, TSV or XLSX file. What it is, its letters and its separator are found by looking at the content.
 * @param choices the user's answers about encoding and separator, when the file was read before.
 * @throws Refusal `file-unreadable` saying what to do, for every file that can't be read as a list.
 */
export async function readTables(bytes: Uint8Array, fileName: string, choices: ReadChoices = {}): Promise<TableRead> {
  if (bytes.length > listLimits.fileBytes) {
    throw pastLimit(fileName, 'megabytes', listLimits.fileBytes / 1024 / 1024);
  }
  const common = { fileName, byteLength: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
  if (fileKind(bytes, fileName) === 'zip') {
    const sheets = await readXlsx(bytes, fileName);
    const tables = sheets
      .filter((sheet) => sheet.rows.some((row) => row.cells.some((cell) => cell.trim() !== '')))
      .map((sheet) => {
        const findings = sheet.findings.map((finding) => ({ row: 0, finding }));
        return tableOf(sheet.name, sheet.rows, findings, [], fileName);
      });
    if (tables.length === 0) throw unreadable(fileName, 'its sheets are empty.', 'Check that this is the right file.');
    return { ...common, kind: 'xlsx', encoding: null, separator: null, tables };
  }

  const decoded = decodeText(bytes, fileName, choices.encoding);
  const text = decoded.text.startsWith('\ufeff') ? decoded.text.slice(1) : decoded.text;
  if (text.trim() === '') throw unreadable(fileName, 'it is empty.', 'Check that this is the right file.');
  const { separator, rows, findings } = readCsv(text, fileName, choices.separator);
  const tableRows = rows.map((cells, index): TableRow => ({ row: index + 1, cells }));
  const questions = decoded.question === null ? [] : [decoded.question];
  return {
    ...common,
    kind: separator === '\t' ? 'tsv' : 'csv',
    encoding: { used: decoded.used, certain: decoded.certain },
    separator,
    tables: [tableOf(fileName, tableRows, findings, questions, fileName)],
  };
}

function tableOf(
  name: string,
  rows: readonly TableRow[],
  findings: readonly { readonly row: number; readonly finding: ImportFinding }[],
  questions: readonly ImportQuestion[],
  fileName: string,
): Table {
  const long = rows.find((row) => row.cells.some((cell) => cell.length > listLimits.cellCharacters));
  if (long !== undefined) throw pastLimit(fileName, `letters in one cell (row ${long.row})`, listLimits.cellCharacters);
  const headerRow = findHeader(rows);
  const columns = columnsOf(rows, headerRow);
  if (columns.length > listLimits.columns) throw pastLimit(fileName, 'columns', listLimits.columns);
  return { name, headerRow, columns, rows, fingerprint: headerFingerprint(columns), findings, questions };
}
