/** Looks cells up by what their column means. */
import { cleanText, oneLine } from './clean-text.ts';
import { unguardText } from './formula-guard.ts';
import type { ImportField, Mapping } from './import-types.ts';
import type { CellKind, Table, TableRow } from './table-types.ts';

export interface RowReader {
  /** One line of clean text, '' when blank or when no column holds the field. */
  text(row: TableRow, field: ImportField): string;
  /** The same with its line breaks, for notes. */
  lines(row: TableRow, field: ImportField): string;
  kind(row: TableRow, field: ImportField): CellKind;
  /** Heading of the field's column, '' when there is none. */
  title(field: ImportField): string;
  has(field: ImportField): boolean;
  /** Heading of the column at a position. */
  titleAt(index: number): string;
  /** Position of the field's column, -1 when there is none. */
  index(field: ImportField): number;
  /** Columns that hold no field, with their headings. */
  readonly others: readonly { readonly index: number; readonly title: string }[];
}

/** @param mapping columns beyond the table's width are ignored; the first column of a field counts. */
export function rowReader(table: Table, mapping: Mapping): RowReader {
  const byField = new Map<ImportField, { index: number; title: string }>();
  const used = new Set<number>();
  for (const { index, field } of mapping.columns) {
    const column = table.columns[index];
    if (field === null || column === undefined || byField.has(field)) continue;
    byField.set(field, { index, title: column.title });
    used.add(index);
  }
  const cell = (row: TableRow, field: ImportField) => {
    const index = byField.get(field)?.index ?? -1;
    // What a failed formula left is remarked on, and is no value.
    return row.kinds?.[index] === 'error' ? '' : unguardText(row.cells[index] ?? '');
  };
  return {
    text: (row, field) => oneLine(cell(row, field)),
    lines: (row, field) => cleanText(cell(row, field)),
    kind: (row, field) => row.kinds?.[byField.get(field)?.index ?? -1] ?? 'text',
    title: (field) => byField.get(field)?.title ?? '',
    titleAt: (index) => table.columns[index]?.title ?? '',
    has: (field) => byField.has(field),
    index: (field) => byField.get(field)?.index ?? -1,
    others: table.columns.filter((column) => !used.has(column.index)),
  };
}

/** Remarks gathered while a file is planned, by file row. */
export class Remarks<T> {
  readonly #byRow = new Map<number, T[]>();

  add(row: number, remark: T): void {
    const known = this.#byRow.get(row);
    if (known === undefined) this.#byRow.set(row, [remark]);
    else known.push(remark);
  }

  of(row: number): readonly T[] {
    return this.#byRow.get(row) ?? [];
  }
}
