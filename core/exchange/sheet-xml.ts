/**
 * Prepares the text of a sheet for the reader: what it would drop without a word is made visible (failed formulas,
 * formulas saved without a value), and what only costs memory is taken out (cells and rows that are formatted but empty).
 * Element names: ECMA-376 part 1, SpreadsheetML.
 */
export interface PreparedSheet {
  readonly xml: string;
  readonly lastRow: number;
  readonly lastColumn: number;
  readonly formulas: number;
  readonly hiddenRows: number;
  readonly mergedCells: number;
}

/** What stands in a cell whose formula was saved without its result. */
export const withoutResult = '#NO RESULT';

export function prepareSheet(source: string): PreparedSheet {
  const formulas = count(source, /<f[\s>/]/g);
  const hiddenRows = count(source, /<row\b[^<>]*\bhidden="(?:1|true)"/g);
  const mergedCells = count(source, /<mergeCell\b/g);
  let xml = source.replace(/<c\b[^<>]*\/>/g, '');
  if (formulas > 0) {
    xml = xml.replace(
      /<c\b([^<>]*)>\s*(?:<f\b[^<>]*\/>|<f\b[^<>]*>[^<]*<\/f>)\s*<\/c>/g,
      (_cell, attributes: string) => `<c${withoutType(attributes)} t="str"><v>${withoutResult}</v></c>`,
    );
  }
  xml = xml.replace(
    /<c\b([^<>]*\bt="e"[^<>]*)>/g,
    (_tag, attributes: string) => `<c${withoutType(attributes)} t="str">`,
  );
  xml = xml.replace(/<row\b[^<>]*\/>|<row\b[^<>]*[^/]>\s*<\/row>/g, '');

  let lastRow = count(xml, /<row\b/g);
  let lastColumn = 0;
  for (const match of xml.matchAll(/<(?:row|c)\b[^<>]*?\br="([A-Z]{0,4})(\d{1,9})"/g)) {
    lastRow = Math.max(lastRow, Number(match[2]));
    lastColumn = Math.max(lastColumn, columnNumber(match[1] ?? ''));
  }
  return { xml, lastRow, lastColumn, formulas, hiddenRows, mergedCells };
}

function withoutType(attributes: string): string {
  return attributes.replace(/\s*\bt="[^"]*"/, '');
}

function count(text: string, pattern: RegExp): number {
  let found = 0;
  for (const _ of text.matchAll(pattern)) found += 1;
  return found;
}

/** A is 1, Z is 26, AA is 27. */
function columnNumber(letters: string): number {
  return [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}

/** 1 is A, 27 is AA. */
export function columnLetters(number: number): string {
  const rest = Math.floor((number - 1) / 26);
  return (rest > 0 ? columnLetters(rest) : '') + String.fromCharCode(65 + ((number - 1) % 26));
}
