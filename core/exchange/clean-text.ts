/**
 * Text from a file as the workbook keeps it: composed letters (NFC), no controls, no marks that turn the direction, no
 * code points that Unicode keeps out of texts.
 */

const unwanted = /[[\p{Cc}--[\t\n\r]]\p{Noncharacter_Code_Point}\u200b\u2060\ufeff\u202a-\u202e\u2066-\u2069]/gv;

/** Takes out what can't be seen, folds blanks at the ends; line breaks and tabs inside stay. */
export function cleanText(text: string): string {
  return text.toWellFormed().normalize('NFC').replace(unwanted, '').replace(/\r\n?/g, '\n').trim();
}

/** Whether cleaning takes out more than blanks at the ends. */
export function holdsHiddenMarks(text: string): boolean {
  return text.search(unwanted) >= 0 || !text.isWellFormed();
}

/** One line: every run of blanks, tabs and line breaks becomes one blank. */
export function oneLine(text: string): string {
  return cleanText(text).replace(/\s+/g, ' ');
}

/** For comparing words: one line, lower case, no accents. */
export function plainWords(text: string): string {
  return oneLine(text)
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ß/g, 'ss')
    .toLowerCase();
}
