import Database from 'better-sqlite3';
import { migrations } from '../../../migrations/index.ts';
import { Refusal } from '../../refusal.ts';
import { quoted, tableNames } from '../file/checks.ts';
import { buildEmptyWorkbook, checkName } from '../file/create-file.ts';
import { partPath, placeNew, removeDatabase } from '../file/durable.ts';
import { SCHEMA_VERSION } from '../file/identity.ts';
import { lockWorkbook } from '../file/lock.ts';
import { type Connection, connect } from './connection.ts';
import { verifyWorkbook } from './verify.ts';

/**
 * A whole workbook as text that any program can read: one JSON array (RFC 8259) with one value a line, so that neither
 * side has to hold all of it. The first value says what it is; `{"table":…,"columns":[…]}` opens a table, and each value
 * after it is one row as an array in the order of the columns. Bytes are `{"base64":"…"}`. The last value says how many
 * rows there are, so that a file cut short is known.
 */
const formatName = 'hoistday workbook';
const formatVersion = 1;

/** What SQLite keeps of the numbers it gave, so that none is given twice after a move. */
const sequenceTable = 'sqlite_sequence';

type Cell = string | number | null | { readonly base64: string };

const cellOf = (value: unknown): Cell =>
  Buffer.isBuffer(value) ? { base64: value.toString('base64') } : (value as string | number | null);

/** Letters that go into one piece of the text; rows are gathered up to it, so that no piece grows with the workbook. */
const pieceLength = 1024 * 1024;

/** The lines of a workbook, in pieces of about a megabyte. The same workbook always gives the same text. */
export function* workbookText(connection: Connection): Generator<string> {
  const { sqlite } = connection;
  let piece = '';
  let total = 0;
  const head = { format: formatName, version: formatVersion, schema: SCHEMA_VERSION };
  piece += `[\n${JSON.stringify(head)},\n`;
  for (const table of [...tableNames(sqlite).sort(), sequenceTable]) {
    const columns = columnsOf(sqlite, table);
    piece += `${JSON.stringify({ table, columns })},\n`;
    const order = table === sequenceTable ? 'name' : 'rowid';
    const list = columns.map(quoted).join(', ');
    const rows = sqlite
      .prepare(`SELECT ${list} FROM ${quoted(table)} ORDER BY ${order}`)
      .raw()
      .iterate();
    for (const row of rows as Iterable<unknown[]>) {
      piece += `${JSON.stringify(row.map(cellOf))},\n`;
      total += 1;
      if (piece.length >= pieceLength) {
        yield piece;
        piece = '';
      }
    }
  }
  yield `${piece}${JSON.stringify({ rows: total })}\n]\n`;
}

const columnsOf = (sqlite: Database.Database, table: string): string[] =>
  (sqlite.pragma(`table_info(${quoted(table)})`) as { name: string }[]).map(({ name }) => name);

function unreadable(what: string): Refusal {
  return new Refusal('file-unreadable', `This is not a whole workbook as text: ${what}. Nothing was changed.`, {
    field: 'file',
    accepted: 'a file that “Export the whole workbook” made',
  });
}

interface Head {
  readonly schema: number;
}

function headOf(line: string): Head {
  const head = parsed(line, 1) as { format?: unknown; version?: unknown; schema?: unknown } | null;
  if (head?.format !== formatName || typeof head.schema !== 'number') throw unreadable('its first line doesn’t say so');
  if (head.version !== formatVersion || head.schema > SCHEMA_VERSION || head.schema < 1) {
    throw new Refusal('newer-version', 'The file was made by a newer version of this program. Nothing was changed.', {
      field: 'file',
      accepted: `format ${formatVersion} with a schema up to ${SCHEMA_VERSION}`,
    });
  }
  return { schema: head.schema };
}

function parsed(line: string, at: number): unknown {
  try {
    return JSON.parse(line);
  } catch {
    throw unreadable(`line ${at} can’t be read`);
  }
}

/** A cell as SQLite takes it; anything else was not written by us. */
function bound(cell: unknown, at: number): string | number | null | Buffer {
  if (cell === null || typeof cell === 'string' || typeof cell === 'number') return cell;
  const base64 = (cell as { base64?: unknown } | undefined)?.base64;
  if (typeof base64 === 'string') return Buffer.from(base64, 'base64');
  throw unreadable(`line ${at} holds something that no cell can hold`);
}

/** Fills an empty workbook line by line. */
class Filler {
  private readonly sqlite: Database.Database;
  private readonly known: ReadonlySet<string>;
  private insert: Database.Statement | undefined;
  private width = 0;
  private rows = 0;
  private finished = false;

  constructor(sqlite: Database.Database) {
    this.sqlite = sqlite;
    this.known = new Set([...tableNames(sqlite), sequenceTable]);
  }

  add(line: string, at: number): void {
    if (this.finished) throw unreadable(`line ${at} comes after the end`);
    const value = parsed(line, at);
    if (Array.isArray(value)) this.row(value, at);
    else if (typeof value === 'object' && value !== null && 'table' in value) this.open(value, at);
    else if (typeof value === 'object' && value !== null && 'rows' in value) {
      if (value.rows !== this.rows) throw unreadable(`it says ${String(value.rows)} rows and holds ${this.rows}`);
      this.finished = true;
    } else throw unreadable(`line ${at} is neither a table nor a row`);
  }

  end(): void {
    if (!this.finished) throw unreadable('it ends before its last line');
  }

  private open(value: { table?: unknown; columns?: unknown }, at: number): void {
    const { table, columns } = value;
    if (typeof table !== 'string' || !this.known.has(table) || !Array.isArray(columns)) {
      throw unreadable(`line ${at} names a table that a workbook doesn’t have`);
    }
    const own = new Set(columnsOf(this.sqlite, table));
    if (columns.length !== own.size || !columns.every((column) => typeof column === 'string' && own.has(column))) {
      throw unreadable(`line ${at} names other columns than ${table} has`);
    }
    const names = (columns as string[]).map(quoted).join(', ');
    const marks = columns.map(() => '?').join(', ');
    // What a new workbook holds already gives way; the journal of a new one is empty, and nothing of it may change.
    if (table === 'about' || table === sequenceTable) this.sqlite.prepare(`DELETE FROM ${quoted(table)}`).run();
    this.insert = this.sqlite.prepare(`INSERT INTO ${quoted(table)} (${names}) VALUES (${marks})`);
    this.width = columns.length;
  }

  private row(cells: readonly unknown[], at: number): void {
    if (this.insert === undefined || cells.length !== this.width) throw unreadable(`line ${at} is no row of its table`);
    try {
      this.insert.run(...cells.map((cell) => bound(cell, at)));
    } catch (error) {
      if (error instanceof Refusal) throw error;
      const code = String((error as { code?: unknown }).code ?? '');
      if (!code.startsWith('SQLITE_CONSTRAINT') && !code.startsWith('SQLITE_MISMATCH')) throw error;
      throw unreadable(`line ${at} is a row that a workbook can’t hold`);
    }
    this.rows += 1;
  }
}

/** The brackets around all values, and blank lines. */
const isFrame = (line: string): boolean => ['', '[', ']'].includes(line.trim());
const withoutComma = (line: string): string => line.trim().replace(/,$/, '');

async function* linesOf(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let rest = '';
  const decode = (chunk?: Uint8Array): string => {
    try {
      return chunk === undefined ? decoder.decode() : decoder.decode(chunk, { stream: true });
    } catch {
      throw unreadable('it is not UTF-8 text');
    }
  };
  for await (const chunk of chunks) {
    const lines = (rest + decode(chunk)).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) if (!isFrame(line)) yield withoutComma(line);
  }
  rest += decode();
  if (!isFrame(rest)) yield withoutComma(rest);
}

/**
 * Makes a workbook file out of the text. It is filled under another name, verified, and gets its own name at the end.
 * @returns how many entries its journal has.
 * @throws Refusal `file-unreadable` saying which line, `newer-version`, `damaged` when the text doesn't add up, and what
 *   `createWorkbookFile` refuses.
 */
export async function workbookFromText(
  chunks: AsyncIterable<Uint8Array>,
  path: string,
  now: Date,
): Promise<{ entries: number }> {
  checkName(path);
  const lock = lockWorkbook(path);
  const part = partPath(lock.path);
  try {
    const entries = await fill(chunks, part, now);
    placeNew(part, lock.path);
    return { entries };
  } finally {
    removeDatabase(part);
    lock.release();
  }
}

async function fill(chunks: AsyncIterable<Uint8Array>, part: string, now: Date): Promise<number> {
  const lines = linesOf(chunks);
  const head = await lines.next();
  if (head.done === true) throw unreadable('it is empty');
  const { schema } = headOf(head.value);
  // An older workbook is filled as it was, and brought up to date when it is opened.
  buildEmptyWorkbook(part, { now, migrations: migrations.slice(0, schema) });
  const sqlite = new Database(part);
  try {
    // Rows may come before those that they point at; `verify` looks at all links at the end.
    sqlite.pragma('foreign_keys = OFF');
    sqlite.exec('BEGIN IMMEDIATE');
    const filler = new Filler(sqlite);
    let at = 1;
    for await (const line of lines) {
      at += 1;
      filler.add(line, at);
    }
    filler.end();
    sqlite.exec('COMMIT');
    sqlite.pragma('foreign_keys = ON');
    const report = schema === SCHEMA_VERSION ? verifyWorkbook(connect(sqlite)) : undefined;
    if (report?.ok === false) {
      const problems = [...report.integrity, ...report.foreignKeys, ...report.differences, ...report.invariants];
      throw new Refusal(
        'damaged',
        `The workbook in the file doesn’t add up: ${problems[0] ?? ''}. Nothing was changed.`,
        {
          field: 'file',
          accepted: 'a file that nobody has changed since it was exported',
          detail: { problems: problems.slice(0, 20) },
        },
      );
    }
    const { count } = sqlite.prepare('SELECT count(*) AS count FROM entries').get() as { count: number };
    sqlite.pragma('wal_checkpoint(TRUNCATE)');
    return count;
  } finally {
    if (sqlite.inTransaction) sqlite.exec('ROLLBACK');
    sqlite.close();
  }
}
