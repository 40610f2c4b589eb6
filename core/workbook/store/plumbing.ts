import type { RecordValues } from '../../contract/records.ts';
import type { StepEntry } from '../../plumbing/made.ts';
import { recordsAsOf } from './checks-past.ts';
import { all, type Connection } from './connection.ts';
import { positionsAsOf } from './part-rows.ts';
import { keptPositions, type Position } from './positions.ts';
import { listRecords, type RecordValuesRow } from './record-tables.ts';

/** What lines, their ports and their making have in the workbook. */

type Stored<K extends keyof RecordValues> = RecordValues[K] & {
  readonly id: number;
  readonly revision: number;
  readonly retiredOn: string | null;
};

type BuildTable = 'hoseLines' | 'ports' | 'connections' | 'billParts' | 'parts';

/** Records of a build, now or at the end of a past day, retired or not. */
function stored<K extends keyof RecordValues>(
  connection: Connection,
  table: BuildTable,
  build: number,
  asOf: string | undefined,
): Stored<K>[] {
  const records: RecordValuesRow[] =
    asOf === undefined
      ? listRecords(connection, table, 'build = ?', build)
      : recordsAsOf(connection, build, table, asOf);
  return records as unknown as Stored<K>[];
}

export interface StoredPlumbing {
  /** In use. */
  readonly lines: readonly Stored<'hoseLine'>[];
  readonly ports: ReadonlyMap<number, Stored<'port'>>;
  /** Descriptions by part line, dropped or not. */
  readonly parts: ReadonlyMap<number, string>;
  /** In use. */
  readonly connections: readonly Stored<'connection'>[];
  readonly steps: ReadonlyMap<number, readonly StepEntry[]>;
}

/** Lines of a build with what they stand on, now or at the end of a past day. */
export function storedPlumbing(connection: Connection, build: number, asOf: string | undefined): StoredPlumbing {
  const inUse = ({ retiredOn }: { readonly retiredOn: string | null }): boolean => retiredOn === null;
  return {
    lines: stored<'hoseLine'>(connection, 'hoseLines', build, asOf).filter(inUse),
    ports: new Map(stored<'port'>(connection, 'ports', build, asOf).map((port) => [port.id, port])),
    parts: new Map(
      all<{ id: number; description: string }>(
        connection,
        'SELECT id, description FROM parts WHERE build = ? AND gone = 0',
        build,
      ).map(({ id, description }) => [id, description]),
    ),
    connections: stored<'connection'>(connection, 'connections', build, asOf).filter(inUse),
    steps: lineSteps(connection, build, asOf),
  };
}

type StepPayload = Partial<Omit<StepEntry, 'on'>>;

/** Steps of making that were ticked off or opened again, line by line in the order in which they were written. */
function lineSteps(connection: Connection, build: number, asOf: string | undefined): Map<number, StepEntry[]> {
  const rows = all<{ subject: number; on_day: string; payload: string }>(
    connection,
    `SELECT subject, on_day, payload FROM entries e WHERE subject_kind = 'hose-line' AND +build = ? AND kind = 'line-step'
     AND on_day <= ? AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY seq`,
    build,
    asOf ?? '9999-12-31',
  );
  const steps = new Map<number, StepEntry[]>();
  for (const { subject, on_day, payload } of rows) {
    const said = JSON.parse(payload) as StepPayload;
    const own = steps.get(subject) ?? [];
    steps.set(subject, own);
    own.push({
      step: said.step ?? '',
      copy: said.copy ?? 1,
      done: said.done === true,
      by: said.by ?? '',
      note: said.note ?? '',
      on: on_day,
      cutMm: said.cutMm ?? null,
      hose: said.hose ?? '',
      offList: said.offList ?? [],
    });
  }
  return steps;
}

/** A part line on the list, with its position. */
export interface ListedPartRow {
  readonly id: number;
  readonly description: string;
  readonly unit: string;
  readonly position: Position;
}

/** Part lines that are on the list, and which things of the lines' bill somebody said that they are. */
export function listedParts(
  connection: Connection,
  build: number,
  asOf: string | undefined,
): { readonly parts: readonly ListedPartRow[]; readonly billParts: readonly Stored<'billPart'>[] } {
  const positions = asOf === undefined ? keptPositions(connection, build) : positionsAsOf(connection, build, asOf);
  const retired = asOf === undefined ? 'retired_on IS NULL' : '(retired_on IS NULL OR retired_on > ?)';
  const parts = all<Omit<ListedPartRow, 'position'>>(
    connection,
    `SELECT id, description, unit FROM parts WHERE build = ? AND gone = 0 AND ${retired} ORDER BY id`,
    ...(asOf === undefined ? [build] : [build, asOf]),
  ).flatMap((part) => {
    const position = positions.get(part.id);
    return position === undefined ? [] : [{ ...part, position }];
  });
  return {
    parts,
    billParts: stored<'billPart'>(connection, 'billParts', build, asOf).filter(({ retiredOn }) => retiredOn === null),
  };
}

/** Hose at hand that is on no parts list, as it is now: its records belong to no build. */
export const hoseLengths = (connection: Connection): readonly Stored<'hoseLength'>[] =>
  listRecords(connection, 'hoseLengths', 'retired_on IS NULL') as unknown as Stored<'hoseLength'>[];
