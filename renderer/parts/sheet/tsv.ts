const needsQuotes = /["\t\r\n]/;
const formulaStart = /^'*[=+\-@\t\r\n\0＝＋－＠]/;
const plainNumber = /^[+-]?[\d.,\s]*$/;

/**
 * One cell for a spreadsheet: quoted where it holds a tab, a line end or a quote. Text that a spreadsheet would run as a
 * formula gets a leading apostrophe, which spreadsheets take as "this is text" (CWE-1236); signed numbers are left alone.
 */
function cellText(text: string): string {
  const safe = formulaStart.test(text) && !plainNumber.test(text) ? `'${text}` : text;
  return needsQuotes.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Tab-separated lines as spreadsheets put them on the clipboard; a single line has no line end, so it pastes inline. */
export function toTsv(cells: readonly (readonly string[])[]): string {
  const lines = cells.map((line) => line.map(cellText).join('\t'));
  return lines.length === 1 ? (lines[0] as string) : lines.map((line) => `${line}\n`).join('');
}

/**
 * Reads what a spreadsheet puts on the clipboard. A quote opens a quoted cell only at the cell's beginning and only if
 * it is closed before a tab or line end: 5" pipe and "half stay as typed. The apostrophe that `toTsv` adds is taken off.
 */
export function parseTsv(tsv: string): string[][] {
  const lines: string[][] = [];
  let line: string[] = [];
  let at = 0;
  while (at <= tsv.length) {
    const quoted = tsv[at] === '"' ? closingQuote(tsv, at) : -1;
    const end = quoted === -1 ? cellEnd(tsv, at) : quoted + 1;
    const text = quoted === -1 ? tsv.slice(at, end) : tsv.slice(at + 1, quoted).replaceAll('""', '"');
    line.push(text.startsWith("'") && formulaStart.test(text.slice(1)) ? text.slice(1) : text);
    if (tsv[end] === '\t') {
      at = end + 1;
      continue;
    }
    lines.push(line);
    line = [];
    at = tsv[end] === '\r' && tsv[end + 1] === '\n' ? end + 2 : end + 1;
    if (at === tsv.length) break; // the line end after the last line opens no new one
  }
  return lines;
}

function cellEnd(tsv: string, from: number): number {
  let at = from;
  while (at < tsv.length && tsv[at] !== '\t' && tsv[at] !== '\n' && tsv[at] !== '\r') at += 1;
  return at;
}

/** Where the quoted cell opened at `from` closes, or -1 if what follows isn't a quoted cell after all. */
function closingQuote(tsv: string, from: number): number {
  let at = from + 1;
  for (;;) {
    const quote = tsv.indexOf('"', at);
    if (quote === -1) return -1;
    const next = tsv[quote + 1];
    if (next === '"') at = quote + 2;
    else return next === undefined || next === '\t' || next === '\n' || next === '\r' ? quote : -1;
  }
}
