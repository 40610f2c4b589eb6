/**
 * Spreadsheets run a cell that begins with = + - @ as a formula. Text that begins so is written with an apostrophe in
 * front, and the apostrophe is taken off when the file comes back: nobody's formula runs and no text is changed.
 * Source: OWASP "CSV Injection"; CWE-1236.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: tab, line ends and NUL in front are part of the attack
const dangerous = /^[\s'\u0000]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^'*[\t\r\n\u0000]/u;

/** Puts an apostrophe before text that a spreadsheet could run. */
export function guardText(text: string): string {
  return dangerous.test(text) ? `'${text}` : text;
}

/** Undoes `guardText`, and leaves every other text alone. */
export function unguardText(text: string): string {
  return text.startsWith("'") && dangerous.test(text.slice(1)) ? text.slice(1) : text;
}
