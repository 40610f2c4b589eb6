import { all, type Connection } from './connection.ts';
import { type Edit, editsOf, type RecordTable } from './edits.ts';
import { listRecords, type RecordValuesRow } from './record-tables.ts';
import { remembered } from './remembered.ts';

interface DatedEdit extends Edit {
  readonly seq: number;
  readonly on: string;
}

/** Every change of records of a build, oldest act first, with the day that it counts from. */
function datedEdits(connection: Connection, build: number): readonly DatedEdit[] {
  return remembered(connection, `edits ${build}`, () =>
    all<{ seq: number; on_day: string; payload: string }>(
      connection,
      `SELECT seq, on_day, payload FROM entries WHERE build = ? AND payload LIKE '%"edits":%' ORDER BY seq`,
      build,
    ).flatMap(({ seq, on_day, payload }) =>
      editsOf(JSON.parse(payload) as { edits?: unknown }).map((edit) => ({ ...edit, seq, on: on_day })),
    ),
  );
}

/**
 * Records of a table as they stood at the end of a day: every change is taken back from what stands now, and those up
 * to the day are made again in the order of their days.
 */
export function recordsAsOf(
  connection: Connection,
  build: number,
  table: RecordTable,
  asOf: string,
): RecordValuesRow[] {
  const edits = Map.groupBy(
    datedEdits(connection, build).filter((edit) => edit.table === table),
    ({ id }) => id,
  );
  const now = listRecords(connection, table, 'build = ?', build);
  return now.flatMap((record) => {
    const own = edits.get(record.id) ?? [];
    const past: Record<string, unknown> = { ...record };
    for (const { before } of own.toReversed()) Object.assign(past, before);
    const upTo = own
      .filter(({ on }) => on <= asOf)
      .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.seq - b.seq));
    for (const { after } of upTo) Object.assign(past, after);
    const was = past as RecordValuesRow;
    return was.gone ? [] : [was];
  });
}

/** Days on which a record of these tables changed, or something happened to one of these part lines; each once, in order. */
export function daysOfChange(
  connection: Connection,
  build: number,
  tables: readonly RecordTable[],
  parts: readonly number[],
): string[] {
  const wanted = new Set<string>(tables);
  const ids = new Set(parts);
  const days = new Set(
    datedEdits(connection, build)
      .filter(({ table, id }) => wanted.has(table) || (table === 'parts' && ids.has(id)))
      .map(({ on }) => on),
  );
  for (const { day } of all<{ day: string }>(
    connection,
    `SELECT DISTINCT on_day AS day FROM entries WHERE build = ? AND (kind = 'measured' OR part IN (SELECT value FROM json_each(?)))`,
    build,
    JSON.stringify(parts),
  )) {
    days.add(day);
  }
  return [...days].sort();
}
