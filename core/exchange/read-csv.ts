/** Separated text to rows, per RFC 4180: quoted fields, doubled quotes, line breaks inside quotes. */
import Papa from 'papaparse';
import type { ImportFinding, Separator } from './table-types.ts';
import { listLimits, pastLimit, unreadable } from './unreadable.ts';

const separators: readonly Separator[] = [',', ';', '\t', '|'];

export interface CsvRows {
  readonly separator: Separator;
  readonly rows: readonly (readonly string[])[];
  readonly findings: readonly { readonly row: number; readonly finding: ImportFinding }[];
}

/**
 * @param text without a byte mark.
 * @throws Refusal `file-unreadable` past the limits, or when a quote is never closed.
 */
export function readCsv(text: string, fileName: string, choice?: Separator): CsvRows {
  const separator = choice ?? findSeparator(text);
  const lines = evenLineEnds(text, separator);
  const parsed = Papa.parse<string[]>(lines, {
    delimiter: separator,
    newline: '\n',
    preview: listLimits.rows + 2,
  });
  const rows = parsed.data;
  // The line end of the last row is not the start of another one.
  const last = rows[rows.length - 1];
  if (lines.endsWith('\n') && last?.length === 1 && last[0] === '') rows.pop();
  if (rows.length > listLimits.rows) throw pastLimit(fileName, 'rows', listLimits.rows);

  const findings: { row: number; finding: ImportFinding }[] = [];
  for (const error of parsed.errors) {
    const row = (error.row ?? 0) + 1;
    if (error.code === 'MissingQuotes') {
      throw unreadable(fileName, `row ${row} opens a quote (") that is never closed.`, 'Close or remove that quote.');
    }
    if (error.code === 'InvalidQuotes') {
      const message = 'There is text behind the closing quote of this field; check where the field ends.';
      findings.push({ row, finding: { severity: 'attention', column: '', text: '"', message } });
    }
  }
  return { separator, rows, findings };
}

/** The separator under which most rows have the same number of fields, more fields before fewer. */
function findSeparator(text: string): Separator {
  const head = text.slice(0, 200_000);
  let best: { separator: Separator; score: number } = { separator: ',', score: 0 };
  for (const separator of separators) {
    const { data } = Papa.parse<string[]>(evenLineEnds(head, separator), {
      delimiter: separator,
      newline: '\n',
      preview: 200,
    });
    const widths = data.filter((row) => row.length > 1 || row[0] !== '').map((row) => row.length);
    const counts = new Map<number, number>();
    for (const width of widths) if (width > 1) counts.set(width, (counts.get(width) ?? 0) + 1);
    for (const [width, count] of counts) {
      // Constancy decides; the width only parts equals, and cents behind a comma don't outweigh it.
      const score = count / widths.length + Math.min(width, 50) / 1000;
      if (score > best.score + 1e-9) best = { separator, score };
    }
  }
  return best.separator;
}

/** Line ends outside quotes as \n, whatever mixture stood there; text inside quotes is left as it is. */
function evenLineEnds(text: string, separator: Separator): string {
  if (!text.includes('\r')) return text;
  const pieces: string[] = [];
  let kept = 0;
  let quoted = false;
  let fieldStart = true;
  for (let at = 0; at < text.length; at += 1) {
    const letter = text[at];
    if (quoted) {
      if (letter === '"') {
        if (text[at + 1] === '"') at += 1;
        else quoted = false;
      }
    } else if (letter === '"' && fieldStart) {
      quoted = true;
      fieldStart = false;
    } else if (letter === '\r') {
      pieces.push(text.slice(kept, at), '\n');
      if (text[at + 1] === '\n') at += 1;
      kept = at + 1;
      fieldStart = true;
    } else {
      fieldStart = letter === separator || letter === '\n';
    }
  }
  pieces.push(text.slice(kept));
  return pieces.join('');
}
