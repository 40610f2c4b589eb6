import type { KnownRow, Mapping } from '../../exchange/import-types.ts';
import type { ImportedRowReport } from '../schema/files.ts';
import { all, type Connection, first } from './connection.ts';

/** Files that were brought in: their bytes, what became of every row, and what is known of them at the next import. */

export interface ImportToKeep {
  readonly act: number;
  readonly build: number;
  readonly fileName: string;
  readonly sha256: string;
  readonly bytes: Uint8Array;
  readonly sheet: number;
  readonly mapping: Mapping;
  readonly answers: Readonly<Record<string, string>>;
  readonly report: readonly ImportedRowReport[];
  readonly summary: string;
}

/** The answer under which a kept import says which sheet of the file it was; no question has this name. */
const sheetAnswer = 'sheet';

/** Keeps the file with its report, and the mapping for the next file with the same headings. */
export function keepImport(connection: Connection, kept: ImportToKeep): void {
  connection
    .prepare(
      'INSERT INTO imports (act, build, file_name, sha256, bytes, mapping, answers, report, summary) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)',
    )
    .run(
      kept.act,
      kept.build,
      kept.fileName,
      kept.sha256,
      Buffer.from(kept.bytes),
      JSON.stringify(kept.mapping),
      JSON.stringify({ ...kept.answers, [sheetAnswer]: String(kept.sheet) }),
      JSON.stringify(kept.report),
      kept.summary,
    );
  connection
    .prepare(
      `INSERT INTO mappings (fingerprint, mapping, answers) VALUES (?, ?, ?)
       ON CONFLICT (fingerprint) DO UPDATE SET mapping = excluded.mapping, answers = excluded.answers`,
    )
    .run(kept.mapping.fingerprint, JSON.stringify(kept.mapping), JSON.stringify(wordAnswers(kept.answers)));
}

/** Answers that hold for the next file too: what words mean. Answers about single rows or columns don't. */
const wordAnswers = (answers: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(answers).filter(([id]) => id.startsWith('state:')));

/** The mapping that was confirmed for these headings, if any. */
export function savedMapping(connection: Connection, fingerprint: string): Mapping | undefined {
  const row = first<{ mapping: string }>(connection, 'SELECT mapping FROM mappings WHERE fingerprint = ?', fingerprint);
  return row === undefined ? undefined : (JSON.parse(row.mapping) as Mapping);
}

export interface KeptImport {
  readonly act: number;
  /** The day of the act. */
  readonly on: string;
  readonly label: string;
  readonly build: number;
  readonly fileName: string;
  readonly sheet: number;
  /** Every entry of the act is taken back. */
  readonly undone: boolean;
  readonly summary: string;
  readonly report: readonly ImportedRowReport[];
  /** What the act answered, as JSON. */
  readonly result: string;
}

interface Row {
  readonly act: number;
  readonly on_day: string | null;
  readonly recorded_at: string;
  readonly label: string;
  readonly build: number;
  readonly file_name: string;
  readonly answers: string;
  readonly undone: number;
  readonly summary: string;
  readonly report: string;
  readonly result: string;
}

const select = `SELECT i.act, (SELECT on_day FROM entries e WHERE e.act = i.act AND e.kind = 'imported') AS on_day, a.recorded_at, a.label,
  i.build, i.file_name, i.answers, i.summary, i.report, a.result,
  NOT EXISTS (SELECT 1 FROM entries e WHERE e.act = i.act AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq)) AS undone
  FROM imports i JOIN acts a ON a.id = i.act`;

const keptOf = (row: Row): KeptImport => ({
  act: row.act,
  on: row.on_day ?? row.recorded_at.slice(0, 10),
  label: row.label,
  build: row.build,
  fileName: row.file_name,
  sheet: Number((JSON.parse(row.answers) as Record<string, string>)[sheetAnswer] ?? 0),
  undone: row.undone === 1,
  summary: row.summary,
  report: JSON.parse(row.report) as ImportedRowReport[],
  result: row.result,
});

/** Imports of a build, the newest first. */
export function importsOf(connection: Connection, build: number): KeptImport[] {
  return all<Row>(connection, `${select} WHERE i.build = ? ORDER BY i.id DESC`, build).map(keptOf);
}

/** The import that an act was, if it was one. */
export function importOfAct(connection: Connection, act: number): KeptImport | undefined {
  const row = first<Row>(connection, `${select} WHERE i.act = ?`, act);
  return row === undefined ? undefined : keptOf(row);
}

/** Imports of these bytes that still stand, the newest first. */
export function standingImports(connection: Connection, sha256: string): KeptImport[] {
  return all<Row>(connection, `${select} WHERE i.sha256 = ? ORDER BY i.id DESC`, sha256)
    .map(keptOf)
    .filter(({ undone }) => !undone);
}

/** How an import knows a row again: the key and the content, in the one column that records have for it. */
export const importKeyOf = (key: string, content: string): string => `${key}\n${content}`;

/** Rows that earlier imports brought into a build and that still stand. */
export function knownRows(connection: Connection, build: number): KnownRow[] {
  return all<{ key: string; id: string }>(
    connection,
    `SELECT import_key AS key, 'the part line “' || description || '”' AS id FROM parts
     WHERE build = ? AND gone = 0 AND import_key IS NOT NULL
     UNION ALL SELECT l.import_key, 'the order line “' || p.description || '”' FROM order_lines l JOIN parts p ON p.id = l.part
     WHERE l.build = ? AND l.gone = 0 AND l.import_key IS NOT NULL`,
    build,
    build,
  ).map(({ key, id }) => {
    const end = key.indexOf('\n');
    return { key: end < 0 ? key : key.slice(0, end), content: end < 0 ? '' : key.slice(end + 1), id };
  });
}

/** An order line that a list could be about: placed before, and not yet known from an orders file. */
export interface OpenOrderLine {
  readonly line: number;
  readonly order: number;
  readonly part: number;
  readonly vendor: number;
  readonly orderedOn: string;
  readonly number: string;
  readonly currency: string;
  readonly quantityMilli: number;
}

export function orderLinesNotYetKnown(connection: Connection, build: number): OpenOrderLine[] {
  return all<OpenOrderLine>(
    connection,
    `SELECT l.id AS line, l.order_id AS "order", l.part, o.vendor, o.ordered_on AS orderedOn, o.number, o.currency,
     l.quantity_milli AS quantityMilli FROM order_lines l JOIN orders o ON o.id = l.order_id
     WHERE o.build = ? AND l.gone = 0 AND o.gone = 0 AND l.import_key IS NULL ORDER BY l.id`,
    build,
  );
}

/** The latest day on which units of an order came, went back or were cancelled; its own day when none did. */
export function lastDayOfOrder(connection: Connection, order: number): string | undefined {
  return (
    first<{ day: string | null }>(
      connection,
      `SELECT max(on_day) AS day FROM entries WHERE order_id = ? AND kind IN ('ordered', 'received', 'over-delivered', 'cancelled')
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = entries.seq)`,
      order,
    )?.day ?? undefined
  );
}

/** Part lines as the matching of order lines sees them. */
export function partsForMatching(
  connection: Connection,
  build: number,
): {
  readonly id: number;
  readonly description: string;
  readonly partNumber: string;
  readonly vendor: string | null;
  readonly needMilli: number;
  readonly orderedOn: string | null;
}[] {
  return all(
    connection,
    `SELECT p.id, p.description, p.part_number AS partNumber, v.name AS vendor, q.need_milli AS needMilli,
     (SELECT min(o.ordered_on) FROM order_lines l JOIN orders o ON o.id = l.order_id WHERE l.part = p.id AND l.gone = 0) AS orderedOn
     FROM parts p JOIN positions q ON q.part = p.id LEFT JOIN vendors v ON v.id = p.vendor
     WHERE p.build = ? AND p.gone = 0 AND p.retired_on IS NULL ORDER BY p.id`,
    build,
  );
}
