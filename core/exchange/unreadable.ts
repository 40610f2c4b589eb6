import { Refusal } from '../refusal.ts';

/** What a list may be at most; past it the file is refused before it is read to the end. */
export const listLimits = {
  fileBytes: 64 * 1024 * 1024,
  rows: 200_000,
  columns: 200,
  cellCharacters: 32_767,
  unpackedBytes: 200 * 1024 * 1024,
  unpackedRatio: 100,
  zipEntries: 2_000,
} as const;

const acceptedFiles = 'a CSV or TSV text file, or an XLSX workbook';

/** The refusal for a file that can't be read as a list: what is wrong, and what to do about it. */
export function unreadable(fileName: string, reason: string, advice: string): Refusal {
  const name = fileName.length > 80 ? `${fileName.slice(0, 80)}…` : fileName;
  return new Refusal('file-unreadable', `The file “${name}” can't be read as a list: ${reason} Nothing was changed.`, {
    field: 'file',
    accepted: `${acceptedFiles}. ${advice}`,
  });
}

export function pastLimit(fileName: string, what: string, limit: number): Refusal {
  return unreadable(
    fileName,
    `it has more than ${limit.toLocaleString('en')} ${what}.`,
    'Split it into smaller lists and bring them in one after the other.',
  );
}
