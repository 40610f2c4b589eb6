/**
 * Text from a file as the workbook keeps it: composed letters (NFC), no controls, no marks that turn the direction, no
 * code points that Unicode keeps out of texts.
 */

const unwanted = /[[\p{Cc}--[\t\n\r]]\p{Noncharacter_Code_Point}\u200b\u2060\ufeff\u202a-\u202e\u2066-\u2069]/gv;

/** Most cells: nothing to compose, to take out or to fold. Checked first because it is many times faster. */
const plainAscii = /^[ -~]*$/;

/** Takes out what can't be seen, folds blanks at the ends; line breaks and tabs inside stay. */
export function cleanText(text: string): string {
  if (plainAscii.test(text)) return text.trim();
  return text.toWellFormed().normalize('NFC').replace(unwanted, '').replace(/\r\n?/g, '\n').trim();
}

/** Whether cleaning takes out more than blanks at the ends. */
export function holdsHiddenMarks(text: string): boolean {
  return !plainAscii.test(text) && (text.search(unwanted) >= 0 || !text.isWellFormed());
}

/** One line: every run of blanks, tabs and line breaks becomes one blank. */
export function oneLine(text: string): string {
  const clean = cleanText(text);
  return plainAscii.test(clean) && !clean.includes('  ') ? clean : clean.replace(/\s+/g, ' ');
}

/** For comparing words: one line, lower case, no accents. */
export function plainWords(text: string): string {
  const line = oneLine(text);
  if (plainAscii.test(line)) return line.toLowerCase();
  return line
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ß/g, 'ss')
    .toLowerCase();
}
