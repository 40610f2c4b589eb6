/**
 * What a file brought in looks like before anybody has decided what it means: rows of text, exactly as they stood.
 * Plain data throughout, so that it can be stored with the batch and sent to a screen as it is.
 */

/** What a spreadsheet said a cell holds. Text files only ever hold text. `error` is a failed formula such as #REF!. */
export type CellKind = 'text' | 'number' | 'date' | 'boolean' | 'error';

/** One row of the file. `row` counts from 1 in the file as a spreadsheet would show it; blank rows are rows too. */
export interface TableRow {
  readonly row: number;
  /** Text as found; numbers with a point as decimal mark; dates as YYYY-MM-DD (with Thh:mm when a time was kept). */
  readonly cells: readonly string[];
  /** One for each cell; absent when every cell is text. */
  readonly kinds?: readonly CellKind[];
}

export interface TableColumn {
  /** Position in the row, from 0. */
  readonly index: number;
  /** The heading as written; "Column C" where the heading is blank. */
  readonly title: string;
}

export type Severity = 'note' | 'attention' | 'error';

/** One remark on one row. `column` is the heading it concerns ('' for the whole row), `text` what stood there. */
export interface ImportFinding {
  readonly severity: Severity;
  readonly column: string;
  readonly text: string;
  readonly message: string;
  /** What would be accepted instead. */
  readonly accepted?: string;
}

export interface QuestionChoice {
  readonly value: string;
  readonly label: string;
  /** What the row would look like under this choice. */
  readonly preview?: string;
}

export type QuestionKind =
  | 'encoding' // which letters the bytes stand for
  | 'date-order' // day first or month first, once for a column
  | 'decimal-mark' // is 1,234 a thousand or one and a bit, once for a column
  | 'state' // what a word in a state-like column means
  | 'missing-quantity' // may a blank quantity be read as one
  | 'line-total'; // quantity × price and the line total differ: which one holds

/** One thing that only the user knows. Asked once, answered by `answers[id] = value`. */
export interface ImportQuestion {
  readonly id: string;
  readonly kind: QuestionKind;
  /** Heading of the column concerned, '' for the whole file. */
  readonly column: string;
  /** The question, in words. */
  readonly text: string;
  readonly choices: readonly QuestionChoice[];
  /** The value that we would pick, or null where a guess would be a coin toss. */
  readonly guess: string | null;
  /** File rows that hang on the answer. */
  readonly rowsConcerned: readonly number[];
  /** True: nothing may be written until it is answered. False: the guess stands unless the user says otherwise. */
  readonly blocking: boolean;
  readonly answer: string | null;
}

/** One sheet, or the whole of a text file. */
export interface Table {
  readonly name: string;
  /** File row that holds the headings; 0 when there are none. */
  readonly headerRow: number;
  readonly columns: readonly TableColumn[];
  /** Every row of the sheet, in order: headings, blanks and totals included. */
  readonly rows: readonly TableRow[];
  /** The same for every file with the same headings in the same order: key of a saved mapping. */
  readonly fingerprint: string;
  /** Remarks made while reading, by file row (0 = the whole file). */
  readonly findings: readonly { readonly row: number; readonly finding: ImportFinding }[];
  /** Questions raised while reading the bytes (the encoding); re-read the file with the answer. */
  readonly questions: readonly ImportQuestion[];
}

export const encodings = [
  'utf-8',
  'utf-16le',
  'utf-16be',
  'windows-1252',
  'windows-1250',
  'windows-1251',
  'macintosh',
] as const;
export type Encoding = (typeof encodings)[number];

export type Separator = ',' | ';' | '\t' | '|';

export interface TableRead {
  readonly fileName: string;
  readonly kind: 'csv' | 'tsv' | 'xlsx';
  readonly byteLength: number;
  /** SHA-256 of the bytes, lower-case hexadecimal. */
  readonly sha256: string;
  /** Null for a spreadsheet, which says itself. */
  readonly encoding: { readonly used: Encoding; readonly certain: boolean } | null;
  readonly separator: Separator | null;
  readonly tables: readonly Table[];
}

/** What the user has decided about the bytes; left out: found by looking. */
export interface ReadChoices {
  readonly encoding?: Encoding;
  readonly separator?: Separator;
}
