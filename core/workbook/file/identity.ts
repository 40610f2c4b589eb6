import { migrations } from '../../../migrations/index.ts';
import type { Migration } from './migration.ts';

/** Marks a database file as a workbook of this program: the letters `HoDy` in SQLite's application id, bytes 68 to 71. */
export const APPLICATION_ID = 0x48_6f_44_79;

/** The ending of every workbook's file name. */
export const FILE_ENDING = '.hoistday';

/** The schema number a list of migrations leads to; a workbook keeps its own in `user_version`. */
export const schemaVersionOf = (list: readonly Migration[]): number => list.length;

/** The schema number this program writes. */
export const SCHEMA_VERSION: number = schemaVersionOf(migrations);
