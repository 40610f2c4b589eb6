/** Tables as a workbook of sheets. Text is written as text and never as a formula, numbers and dates as what they are. */
import writeSheets, { type Cell } from 'write-excel-file/node';
import { isDate } from '../dates/calendar-date.ts';
import { minorDigits } from '../money/currency.ts';
import { cleanText } from './clean-text.ts';
import { cellValue, type ExportColumn, type ExportRow, type ExportTable, plainNumber } from './export-table.ts';
import { listLimits } from './unreadable.ts';

/** Writes one sheet for each table. @returns the bytes of an .xlsx file. */
export async function tableToXlsx(tables: ExportTable | readonly ExportTable[]): Promise<Uint8Array> {
  const list = 'columns' in tables ? [tables] : tables;
  const names = sheetNames(list.map((table) => table.name));
  const sheets = list.map((table, index) => ({
    sheet: names[index] ?? `Sheet ${index + 1}`,
    stickyRowsCount: 1,
    columns: table.columns.map((column) => ({ width: widthOf(column) })),
    data: [
      table.columns.map((column): Cell => ({ value: sheetText(column.title), type: String, fontWeight: 'bold' })),
      ...table.rows.map((row) => table.columns.map((column) => cellOf(row, column))),
    ],
  }));
  const buffer = await writeSheets(sheets).toBuffer();
  return new Uint8Array(buffer.buffer, buffer.byteOffset, buffer.byteLength);
}

function cellOf(row: ExportRow, column: ExportColumn): Cell {
  const value = cellValue(row, column.key);
  if (value === null || value === '') return null;
  const number = plainNumber(row, column);
  // A spreadsheet holds 15 digits; a longer number stays exact as text.
  if (number !== null && number.replace(/\D/g, '').length <= 15) {
    return { value: Number(number), type: Number, format: formatOf(row, column) };
  }
  if (column.kind === 'date' && typeof value === 'string' && isDate(value)) {
    return { value: new Date(`${value}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
  }
  const text = sheetText(number ?? String(value));
  return text === '' ? null : { value: text, type: String };
}

function formatOf(row: ExportRow, column: ExportColumn): string {
  if (column.kind !== 'money') return 'General';
  const currency = column.currencyKey === undefined ? column.currency : cellValue(row, column.currencyKey);
  const digits = typeof currency === 'string' ? minorDigits(currency) : 2;
  return digits === 0 ? '#,##0' : `#,##0.${'0'.repeat(digits)}`;
}

/**
 * Letters that a sheet can't hold are left out, and so is what passes its limit for one cell. `_xHHHH_` stands for a
 * letter by its number (ECMA-376 part 1, ST_Xstring), so text that only looks like that is written with its own escape;
 * the writer's table of texts is a plain object, so the names every object has are written with their first letter so.
 */
function sheetText(text: string): string {
  const kept = cleanText(text).slice(0, listLimits.cellCharacters);
  const escaped = kept.replace(/_x(?=[0-9A-Fa-f]{4}_)/g, '_x005F_x');
  if (!(escaped in Object.prototype)) return escaped;
  const first = escaped.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
  return `_x${first}_${escaped.slice(1)}`;
}

function widthOf(column: ExportColumn): number {
  const room = { text: 24, number: 12, money: 14, quantity: 10, date: 12 }[column.kind];
  return Math.max(room, Math.min(column.title.length + 2, 40));
}

/** Sheet names: at most 31 letters, none of []:*?/\, no two alike. */
function sheetNames(names: readonly string[]): readonly string[] {
  const used = new Set<string>();
  return names.map((name) => {
    const plain =
      cleanText(name)
        .replace(/[[\]:*?/\\]/g, ' ')
        .replace(/^'+|'+$/g, '')
        .trim()
        .slice(0, 31) || 'Sheet';
    let own = plain;
    for (let number = 2; used.has(own.toLowerCase()); number += 1) own = `${plain.slice(0, 27)} ${number}`;
    used.add(own.toLowerCase());
    return own;
  });
}
