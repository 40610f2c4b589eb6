/**
 * How the row count of one table may change in one migration: by exactly so many rows, `dropped` when the table goes
 * away, `any` when the number depends on the data. A table that isn't listed keeps its count; a new one starts empty.
 */
export type RowChange = number | 'dropped' | 'any';

/** One step of the schema. The step's place in the list, counted from 1, is the schema number it leads to. */
export interface Migration {
  readonly name: string;
  readonly sql: string;
  /** The row counts this step is meant to change; see `RowChange`. Written in the SQL as `-- rows: parts +3`. */
  readonly rows?: Readonly<Record<string, RowChange>>;
}
