/** A table as separated text, per RFC 4180: CRLF line ends, quotes doubled, a heading row. */
import Papa from 'papaparse';
import { cellValue, type ExportTable, plainNumber } from './export-table.ts';
import { guardText } from './formula-guard.ts';

export interface CsvOptions {
  /** Three bytes in front tell spreadsheets that the text is UTF-8. Default true. */
  readonly byteMark?: boolean;
  readonly separator?: ',' | ';' | '\t';
}

/**
 * Writes a table. Text that a spreadsheet could run as a formula is guarded; numbers, money and quantities are plain
 * decimal text with a point, dates YYYY-MM-DD.
 * @returns UTF-8 bytes.
 */
export function tableToCsv(table: ExportTable, options: CsvOptions = {}): Uint8Array {
  const rows = [
    table.columns.map((column) => guardText(column.title)),
    ...table.rows.map((row) =>
      table.columns.map((column) => {
        const number = plainNumber(row, column);
        return number ?? guardText(String(cellValue(row, column.key) ?? ''));
      }),
    ),
  ];
  const guarded = (value: unknown) => typeof value === 'string' && value.startsWith("'");
  const text = Papa.unparse(rows, {
    delimiter: options.separator ?? ',',
    newline: '\r\n',
    quotes: guarded as unknown as boolean,
  });
  return new TextEncoder().encode(`${options.byteMark === false ? '' : '\ufeff'}${text}\r\n`);
}
