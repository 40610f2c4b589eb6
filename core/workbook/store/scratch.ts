import Database from 'better-sqlite3';
import { type Connection, connect } from './connection.ts';

/**
 * A copy of the workbook in memory, for trying things out by the very acts of the program: nothing of it reaches the
 * file, whatever happens. The caller closes it.
 */
export function scratchCopy(connection: Connection): { readonly connection: Connection; close(): void } {
  const bytes = connection.sqlite.serialize();
  // File format: bytes 18 and 19 say that the file keeps a write-ahead log (2), which a copy in memory can't have (1).
  bytes[18] = 1;
  bytes[19] = 1;
  const sqlite = new Database(bytes);
  sqlite.pragma('foreign_keys = ON');
  return { connection: connect(sqlite), close: () => sqlite.close() };
}
