import { type JudgedConnection, judgeConnection, worstFirst } from '../../fit/kept/connection.ts';
import { type JudgedDeclared, judgeDeclared, worstDeclaredFirst } from '../../fit/kept/declared.ts';
import type {
  Acceptance,
  FitContext,
  FitPart,
  FitValue,
  KeptConnection,
  KeptDeclaredFit,
  KeptPort,
  KeptSide,
} from '../../fit/kept/records.ts';
import type { PortRole } from '../../fit/port.ts';
import type { FitFact } from '../../gate/facts.ts';
import { standingOfPart } from './checks.ts';
import { recordsAsOf } from './checks-past.ts';
import type { Connection } from './connection.ts';
import { keptPositions, type Position, positionOf } from './positions.ts';
import { listRecords, type RecordValuesRow } from './record-tables.ts';
import { remembered } from './remembered.ts';
import { statesAsOf } from './states.ts';

/** Everything of a build that fits are judged by, now or at the end of a past day. */
interface BuildFits {
  readonly context: FitContext;
  readonly connections: readonly KeptConnection[];
  readonly declared: readonly KeptDeclaredFit[];
}

type FitTable = 'ports' | 'connections' | 'declaredFits' | 'targets';

const keptPort = (record: RecordValuesRow, asOf: string | undefined): KeptPort => ({
  id: record.id,
  revision: record.revision,
  name: String(record['name']),
  part: record['part'] as number | null,
  place: String(record['place'] ?? ''),
  role: record['role'] as PortRole,
  medium: String(record['medium'] ?? ''),
  designation: String(record['designation']),
  retired: isRetired(record, asOf),
  note: String(record['note'] ?? ''),
});

/** A connection as the record keeps it. */
export const keptConnection = (record: RecordValuesRow): KeptConnection => ({
  id: record.id,
  revision: record.revision,
  title: String(record['title']),
  one: record['one'] as unknown as KeptSide,
  other: record['other'] as unknown as KeptSide,
  role: record['role'] as PortRole,
  medium: String(record['medium'] ?? ''),
  pressureBar: record['pressureBar'] as number | null,
  accepted: record['accepted'] as unknown as Acceptance | null,
  adapter: record['adapter'] as unknown as KeptConnection['adapter'],
  beforeGate: record['beforeGate'] === true,
  note: String(record['note'] ?? ''),
});

/** A declared fit as the record keeps it. */
export const keptDeclaredFit = (record: RecordValuesRow): KeptDeclaredFit => ({
  id: record.id,
  revision: record.revision,
  title: String(record['title']),
  shipped: String(record['shipped'] ?? ''),
  rule: record['rule'] as unknown as KeptDeclaredFit['rule'],
  things: (record['things'] ?? {}) as unknown as Record<string, number>,
  values: (record['values'] ?? []) as unknown as FitValue[],
  accepted: record['accepted'] as unknown as Acceptance | null,
  beforeGate: record['beforeGate'] === true,
  note: String(record['note'] ?? ''),
});

const isRetired = ({ retiredOn }: RecordValuesRow, asOf: string | undefined): boolean =>
  retiredOn !== null && (asOf === undefined || retiredOn <= asOf);

function partsOf(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  wanted: ReadonlySet<number>,
  standings: boolean,
): Map<number, FitPart> {
  const ids = [...wanted];
  const records =
    asOf === undefined
      ? listRecords(
          connection,
          'parts',
          'build = ? AND id IN (SELECT value FROM json_each(?))',
          build,
          JSON.stringify(ids),
        )
      : recordsAsOf(connection, build, 'parts', asOf).filter(({ id }) => wanted.has(id));
  const positions: ReadonlyMap<number, Position> = !standings
    ? new Map()
    : asOf === undefined
      ? keptPositions(connection, build)
      : new Map(
          [...statesAsOf(connection, build, asOf, ids)].map(([id, state]) => [id, positionOf(state, new Map(), 0)]),
        );
  return new Map(
    records.map((record) => {
      const position = positions.get(record.id);
      return [
        record.id,
        {
          id: record.id,
          description: String(record['description']),
          standing: (position === undefined ? undefined : standingOfPart(position)) ?? '',
          listed: !isRetired(record, asOf),
          facts: (record['facts'] ?? []) as unknown as FitPart['facts'],
        },
      ];
    }),
  );
}

/**
 * The ports, connections and declared fits of a build with what they are judged by.
 * @param also part lines that are wanted besides those that the records name
 * @param standings whether it is asked how far each part line has come, which costs more than all the rest on a past day
 */
export function buildFits(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  { also = [], standings = false }: { readonly also?: readonly number[]; readonly standings?: boolean } = {},
): BuildFits {
  const read = (table: FitTable): RecordValuesRow[] =>
    asOf === undefined
      ? listRecords(connection, table, 'build = ?', build)
      : recordsAsOf(connection, build, table, asOf);
  const inUse = (table: FitTable): RecordValuesRow[] => read(table).filter((record) => !isRetired(record, asOf));
  const ports = read('ports')
    .sort((a, b) => Number(a['sort'] ?? 0) - Number(b['sort'] ?? 0) || a.id - b.id)
    .map((record) => keptPort(record, asOf));
  const connections = inUse('connections').map(keptConnection);
  const declared = inUse('declaredFits').map(keptDeclaredFit);
  const wanted = new Set<number>([
    ...also,
    ...ports.flatMap(({ part }) => (part === null ? [] : [part])),
    ...connections.flatMap(({ adapter }) => adapter?.parts ?? []),
    ...declared.flatMap(({ things }) => Object.values(things)),
  ]);
  return {
    context: {
      ports: new Map(ports.map((port) => [port.id, port])),
      parts: wanted.size === 0 ? new Map() : partsOf(connection, build, asOf, wanted, standings),
      targets: inUse('targets').map((line) => ({
        name: String(line['name']),
        value: String(line['value']),
        unit: String(line['unit'] ?? ''),
      })),
    },
    connections,
    declared,
  };
}

export interface JudgedFits extends BuildFits {
  /** The worst first. */
  readonly judged: readonly JudgedConnection[];
  readonly judgedDeclared: readonly JudgedDeclared[];
}

/** Every fit of a build judged; kept until the next act. */
export function judgedFits(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  standings = false,
): JudgedFits {
  return remembered(connection, `fits ${build} ${asOf ?? 'now'} ${standings}`, () => {
    const fits = buildFits(connection, build, asOf, { standings });
    return {
      ...fits,
      judged: fits.connections.map((one) => judgeConnection(one, fits.context)).sort(worstFirst),
      judgedDeclared: fits.declared.map((one) => judgeDeclared(one, fits.context)).sort(worstDeclaredFirst),
    };
  });
}

/** What would settle a connection, for the hoist check. */
const clearsConnection = ({ stands, fit, adapter }: JudgedConnection): string =>
  stands === 'unknown'
    ? `Settle first: ${fit.missing.join('; ')}.`
    : adapter !== null
      ? 'Put the adapter back on the parts list, choose another, or accept the fit with a reason.'
      : fit.adapters.length > 0
        ? 'Change one of the parts, choose an adapter, or accept the fit with a reason.'
        : 'Change one of the parts, or accept the fit with a reason.';

/** What the hoist check is told of the fits that stand before it. */
export function fitFacts(connection: Connection, build: number, asOf: string | undefined): FitFact[] {
  const { judged, judgedDeclared } = judgedFits(connection, build, asOf);
  return [
    ...judged
      .filter(({ connection: { beforeGate } }) => beforeGate)
      .map(
        (one): FitFact => ({
          kind: 'connection',
          id: one.connection.id,
          title: one.connection.title,
          verdict: one.stands,
          standing: one.standing,
          says: one.says,
          clears: clearsConnection(one),
        }),
      ),
    ...judgedDeclared
      .filter(({ fit: { beforeGate } }) => beforeGate)
      .map(
        (one): FitFact => ({
          kind: 'declared-fit',
          id: one.fit.id,
          title: one.fit.title,
          verdict: one.stands,
          standing: one.stands === 'unknown' ? 'something is not known' : 'does not fit',
          says: one.says,
          clears:
            one.stands === 'unknown'
              ? `Enter ${one.missing.map(({ label }) => label).join(', ') || 'values that compare'}.`
              : 'Change one of the parts or its values, or accept the fit with a reason.',
        }),
      ),
  ];
}
