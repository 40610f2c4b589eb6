/** The remarks on one row and the note that keeps, word for word, what was not understood. */
import { cleanText, holdsHiddenMarks } from './clean-text.ts';
import { unguardText } from './formula-guard.ts';
import type { ImportFact, ImportField } from './import-types.ts';
import type { RowReader } from './row-reader.ts';
import type { ImportFinding, Severity, TableRow } from './table-types.ts';

export class RowNotes {
  readonly findings: ImportFinding[] = [];
  readonly #row: TableRow;
  readonly #reader: RowReader;
  readonly #forced: boolean;
  readonly #kept: string[] = [];

  /** @param forced the user wants the row in spite of what can't be read: such texts go to the note. */
  constructor(row: TableRow, reader: RowReader, forced: boolean) {
    this.#row = row;
    this.#reader = reader;
    this.#forced = forced;
    if (row.cells.some(holdsHiddenMarks)) {
      this.add('note', 'description', 'Marks that can’t be seen were taken out of the text of this row.', '', '');
    }
    row.kinds?.forEach((kind, index) => {
      if (kind !== 'error') return;
      const text = row.cells[index] ?? '';
      this.findings.push({
        severity: 'attention',
        column: reader.titleAt(index),
        text,
        message: `A formula has no result here (${text}); the cell counts as not filled in.`,
      });
    });
  }

  /** `text` left out: the cell's own text. */
  add(severity: Severity, field: ImportField, message: string, accepted = '', text?: string): void {
    this.findings.push({
      severity,
      column: this.#reader.title(field),
      text: text ?? this.#reader.text(this.#row, field),
      message,
      ...(accepted === '' ? {} : { accepted }),
    });
  }

  /** Text that can't be used: it blocks the row, unless the user wants the row all the same. */
  refuse(field: ImportField, message: string, accepted = ''): void {
    if (this.#forced) {
      this.add('attention', field, `${message} The text is kept in the note.`);
      this.keep(field);
    } else {
      this.add('error', field, message, accepted);
    }
  }

  /** What no wish of the user's can make up for, such as how many. */
  block(field: ImportField, message: string, accepted = ''): void {
    this.add('error', field, message, accepted);
  }

  /** Text that is not understood but does no harm: remarked on, kept in the note. */
  setAside(field: ImportField, message: string): void {
    this.add('attention', field, `${message} The text is kept in the note.`);
    this.keep(field);
  }

  /** Adds a cell to the note, with its heading. */
  keep(field: ImportField): void {
    const line = `${this.#reader.title(field)}: ${this.#reader.lines(this.#row, field)}`;
    if (!this.#kept.includes(line)) this.#kept.push(line);
  }

  /** The note as written, then one line for each text set aside. */
  note(): string {
    const written = this.#reader.lines(this.#row, 'note');
    return [...(written === '' ? [] : [written]), ...this.#kept].join('\n');
  }

  /** The texts of columns that hold no field. */
  facts(): readonly ImportFact[] {
    return this.#reader.others.flatMap(({ index, title }) => {
      const value = cleanText(unguardText(this.#row.cells[index] ?? ''));
      return value === '' ? [] : [{ key: title, value }];
    });
  }
}
