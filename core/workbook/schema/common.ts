import { integer, text } from 'drizzle-orm/sqlite-core';

/** Columns of every reference record. `gone` marks a record whose creation was taken back. */
export const recordColumns = {
  id: integer('id').primaryKey({ autoIncrement: true }),
  /** Build that it belongs to; null = shared by the whole workbook. */
  build: integer('build'),
  revision: integer('revision').notNull().default(1),
  gone: integer('gone', { mode: 'boolean' }).notNull().default(false),
  retiredOn: text('retired_on'),
};

/** A JSON text column with its type. */
export const json = <T>(name: string) => text(name, { mode: 'json' }).$type<T>();
export const flag = (name: string) => integer(name, { mode: 'boolean' });
