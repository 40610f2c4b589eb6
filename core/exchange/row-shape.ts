/** What a row is before its values are read: a heading, a section, a total, a blank or a line of the list. */
import { oneLine, plainWords } from './clean-text.ts';
import type { ImportAnswers } from './import-types.ts';
import type { RowReader } from './row-reader.ts';
import type { Table, TableRow } from './table-types.ts';

export type RowShape =
  | { readonly shape: 'blank' | 'header' | 'skipped' | 'line' }
  | { readonly shape: 'section'; readonly name: string }
  /** `of`: what the total is of, '' when it doesn't say. */
  | { readonly shape: 'total'; readonly of: string };

const totalWord =
  /^(?:(?:grand|sub|section|order|running|est(?:imated)?)[ -]?)?(?:total|totals|sum)\b[\s:–-]*|^(?:gesamt|zwischen|end)?summe\b[\s:–-]*|^(?:gesamt|insgesamt|totaal|totale|suma)\b[\s:–-]*/i;

/** The answer given for one row, if it is one that counts. */
export function rowAnswer(answers: ImportAnswers, row: number): 'skip' | 'import' | null {
  const id = `row:${row}`;
  const answer = Object.hasOwn(answers, id) ? answers[id] : undefined;
  return answer === 'skip' || answer === 'import' ? answer : null;
}

export function shapeOf(table: Table, row: TableRow, reader: RowReader, answers: ImportAnswers): RowShape {
  const filled = row.cells.flatMap((cell, index) => (oneLine(cell) === '' ? [] : [{ index, text: oneLine(cell) }]));
  const [first, ...more] = filled;
  if (first === undefined) return { shape: 'blank' };
  const answer = rowAnswer(answers, row.row);
  if (answer === 'skip') return { shape: 'skipped' };
  if (row.row <= table.headerRow) return { shape: 'header' };
  if (answer === 'import') return { shape: 'line' };
  if (repeatsHeader(table, row)) return { shape: 'header' };
  if (more.length === 0) {
    const name = sectionName(first.text, first.index, reader);
    if (name !== null) return { shape: 'section', name };
  }
  const of = totalOf(row, reader, first.text);
  return of === null ? { shape: 'line' } : { shape: 'total', of };
}

function repeatsHeader(table: Table, row: TableRow): boolean {
  const header = table.rows[table.headerRow - 1];
  if (header === undefined || header.row !== table.headerRow) return false;
  return table.columns.every(
    ({ index }) => plainWords(row.cells[index] ?? '') === plainWords(header.cells[index] ?? ''),
  );
}

/** A lone text with rules around it, with a colon, or in the column of systems is a heading for the rows below. */
function sectionName(text: string, index: number, reader: RowReader): string | null {
  if (text.length > 200) return null;
  const ruled = /^[-=*_#~•\s]{2,}(.*?[^-=*_#~•\s])[-=*_#~•\s]*$/.exec(text);
  if (ruled?.[1] !== undefined) return ruled[1];
  if (/^[-=*_#~•\s]+$/.test(text)) return null;
  if (totalWord.test(text) || /^\W*\d/.test(text)) return null;
  const colon = /^(\D.{0,60}):$/.exec(text);
  if (colon?.[1] !== undefined) return colon[1].trim();
  const inList = index === reader.index('description') || index === reader.index('partNumber');
  return index === reader.index('system') || (!inList && index === 0 && reader.has('description')) ? text : null;
}

/** What a row sums up; null when it is no total: a part called "total seal ring" has a number or a quantity. */
function totalOf(row: TableRow, reader: RowReader, first: string): string | null {
  if (reader.text(row, 'partNumber') !== '' || reader.text(row, 'quantity') !== '') return null;
  for (const text of [reader.text(row, 'description'), reader.text(row, 'system'), first]) {
    const match = totalWord.exec(text);
    if (match !== null) return /^grand/i.test(text) ? '' : text.slice(match[0].length).replace(/[\s:–-]+$/, '');
  }
  return null;
}
