/** Where the headings stand. Lists often begin with a title, an address or a blank row. */
import { createHash } from 'node:crypto';
import { fieldsOfHeading, plainHeading } from './field-words.ts';
import { unguardText } from './formula-guard.ts';
import { columnLetters } from './sheet-xml.ts';
import type { TableColumn, TableRow } from './table-types.ts';

const rowsLookedAt = 40;

/** File row of the headings, 0 when there are none: the row with most words that name a field, the first of equals. */
export function findHeader(rows: readonly TableRow[]): number {
  let best = { row: 0, score: 1.5 };
  for (const row of rows.slice(0, rowsLookedAt)) {
    const texts = row.cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
    if (texts.length === 0) continue;
    const known = texts.filter((text) => fieldsOfHeading(text).length > 0).length;
    const numbers = texts.filter((text) => /\d/.test(text)).length;
    const score = known - numbers + known / texts.length / 10;
    if (score > best.score) best = { row: row.row, score };
  }
  return best.row > 0 ? best.row : headerByLook(rows);
}

/** Words over numbers: a first row without any digit above rows that hold some is a row of headings in a language unknown. */
function headerByLook(rows: readonly TableRow[]): number {
  const filled = rows.filter((row) => row.cells.some((cell) => cell.trim() !== '')).slice(0, rowsLookedAt);
  const [first, ...rest] = filled;
  if (first === undefined || rest.length === 0) return 0;
  const texts = first.cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (texts.some((text) => /\d/.test(text) || text.length > 40)) return 0;
  if (texts.some((text) => fieldsOfHeading(text).length > 0)) return first.row;
  if (texts.length < 2) return 0;
  if (new Set(texts.map(plainHeading)).size < texts.length) return 0;
  return rest.some((row) => row.cells.some((cell) => /\d/.test(cell))) ? first.row : 0;
}

/** The columns of a table: as many as its widest row, headings as written, "Column C" for a blank one. */
export function columnsOf(rows: readonly TableRow[], headerRow: number): readonly TableColumn[] {
  let width = 0;
  for (const row of rows) {
    let last = row.cells.length;
    while (last > width && (row.cells[last - 1] ?? '').trim() === '') last -= 1;
    width = Math.max(width, last);
  }
  const headings = rows.find((row) => row.row === headerRow)?.cells ?? [];
  const used = new Map<string, number>();
  return Array.from({ length: width }, (_, index) => {
    const written = unguardText(headings[index] ?? '')
      .replace(/\s+/g, ' ')
      .trim()
      .slice(0, 120);
    const title = written === '' ? `Column ${columnLetters(index + 1)}` : written;
    const times = (used.get(title) ?? 0) + 1;
    used.set(title, times);
    // Two columns of one name stay apart in every message.
    return { index, title: times === 1 ? title : `${title} (${columnLetters(index + 1)})` };
  });
}

/** The same for every file with the same headings in the same order. */
export function headerFingerprint(columns: readonly TableColumn[]): string {
  const text = columns.map((column) => plainHeading(column.title)).join('|');
  return createHash('sha256').update(text).digest('hex').slice(0, 32);
}
