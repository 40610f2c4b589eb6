import { blob, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Mapping } from '../../exchange/import-types.ts';
import { json } from './common.ts';

/** One row of the report of an import, for each row of the file. */
export interface ImportedRowReport {
  readonly row: number;
  readonly fate: string;
  readonly text: string;
  readonly part: number | null;
}

/** A file that was brought in: its bytes, every row's fate, and the act that wrote it. Nothing of a list is dropped. */
export const imports = sqliteTable(
  'imports',
  {
    id: integer('id').primaryKey({ autoIncrement: true }),
    act: integer('act').notNull(),
    build: integer('build').notNull(),
    fileName: text('file_name').notNull(),
    sha256: text('sha256').notNull(),
    bytes: blob('bytes', { mode: 'buffer' }).notNull(),
    mapping: json<Mapping>('mapping').notNull(),
    answers: json<Record<string, string>>('answers').notNull(),
    report: json<readonly ImportedRowReport[]>('report').notNull(),
    summary: text('summary').notNull(),
  },
  (t) => [index('imports_by_hash').on(t.build, t.sha256)],
);

/** Mapping that a person confirmed, by the fingerprint of the headings. */
export const mappings = sqliteTable('mappings', {
  fingerprint: text('fingerprint').primaryKey(),
  mapping: json<Mapping>('mapping').notNull(),
  answers: json<Record<string, string>>('answers').notNull(),
});

/** Settings and facts about the workbook itself. */
export const about = sqliteTable('about', { key: text('key').primaryKey(), value: json<unknown>('value').notNull() });
