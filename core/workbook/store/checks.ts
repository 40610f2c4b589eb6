import type { Answer } from '../../calculators/run.ts';
import { evaluateCheck, type WorkedCheck } from '../../checks/evaluate.ts';
import { type Run, runKept } from '../../checks/resolve.ts';
import type {
  CheckContext,
  CheckPart,
  CheckPlan,
  CheckSource,
  PartStanding,
  SheetFigure,
  SheetFigures,
} from '../../checks/source.ts';
import type { CheckFact } from '../../gate/facts.ts';
import { type SheetSetup, workOutSheet } from '../../measuring/sheet.ts';
import type { Refusal } from '../../refusal.ts';
import { standingReadings } from './bench.ts';
import { recordsAsOf } from './checks-past.ts';
import { all, type Connection } from './connection.ts';
import { type Position, positionOf, positionSelect } from './positions.ts';
import { listRecords, type RecordValuesRow } from './record-tables.ts';
import { remembered } from './remembered.ts';
import { statesAsOf } from './states.ts';

/** A check as the workbook keeps it. */
export interface KeptCheck extends CheckPlan {
  readonly id: number;
  readonly revision: number;
  readonly system: number | null;
  readonly shipped: string;
  readonly beforeGate: boolean;
  readonly note: string;
}

export interface BuildChecks {
  readonly checks: readonly KeptCheck[];
  readonly targets: readonly RecordValuesRow[];
  readonly context: CheckContext;
}

/** What every calculator run of a workbook answered: a check is worked out again only when its inputs changed. */
const runs = new WeakMap<Connection, Run>();

/** The runner of a workbook, which remembers. */
export function runOf(connection: Connection): Run {
  let run = runs.get(connection);
  if (run === undefined) {
    run = runKept(new Map<string, Answer | Refusal>());
    runs.set(connection, run);
  }
  return run;
}

/** How far a line has come; undefined when nothing of it is needed, here or on the way. */
export function standingOfPart(position: Position): PartStanding | undefined {
  if (position.fittedMilli + position.snugMilli + position.verifiedMilli > 0) return 'fitted';
  if (position.shelfMilli + position.allocatedMilli + position.trialMilli + position.inspectionMilli > 0)
    return 'in hand';
  if (position.placedMilli + position.acknowledgedMilli + position.backOrderedMilli + position.inTransitMilli > 0) {
    return 'on order';
  }
  return position.needMilli > 0 ? 'needed' : undefined;
}

type Facts = CheckPart['facts'];

const isTold = ({ kind, facts }: { kind: unknown; facts: unknown }): boolean =>
  String(kind ?? '') !== '' || (Array.isArray(facts) && facts.length > 0);

function partsNow(connection: Connection, build: number, named: ReadonlySet<number>): CheckPart[] {
  return all<{ id: number; description: string; kind: string; facts: string } & Position>(
    connection,
    `SELECT p.id, p.description, p.kind, p.facts, ${positionSelect} FROM parts p JOIN positions q ON q.part = p.id
     WHERE p.build = ? AND p.gone = 0 AND p.retired_on IS NULL
       AND (p.kind <> '' OR p.facts <> '[]' OR p.id IN (SELECT value FROM json_each(?))) ORDER BY p.id`,
    build,
    JSON.stringify([...named]),
  ).flatMap((row) => {
    const standing = standingOfPart(row);
    if (standing === undefined) return [];
    return [
      { id: row.id, description: row.description, kind: row.kind, facts: JSON.parse(row.facts) as Facts, standing },
    ];
  });
}

function partsAsOf(
  connection: Connection,
  build: number,
  asOf: string,
  named: ReadonlySet<number>,
  positions: ReadonlyMap<number, Position> | undefined,
): CheckPart[] {
  const records = recordsAsOf(connection, build, 'parts', asOf).filter(
    (record) =>
      (record.retiredOn === null || record.retiredOn > asOf) &&
      (named.has(record.id) || isTold({ kind: record['kind'], facts: record['facts'] })),
  );
  const ids = records.map(({ id }) => id);
  const states = positions === undefined ? statesAsOf(connection, build, asOf, ids) : undefined;
  return records.flatMap((record) => {
    const state = states?.get(record.id);
    const position = state === undefined ? positions?.get(record.id) : positionOf(state, new Map(), 0);
    const standing = position === undefined ? undefined : standingOfPart(position);
    if (standing === undefined) return [];
    const facts = (record['facts'] ?? []) as unknown as Facts;
    return [
      {
        id: record.id,
        description: String(record['description']),
        kind: String(record['kind'] ?? ''),
        facts,
        standing,
      },
    ];
  });
}

const setupOf = (sheet: RecordValuesRow): SheetSetup => sheet as unknown as SheetSetup;

/** Figures of every measuring sheet, in its unit, from the readings that stand. */
function sheetFigures(
  connection: Connection,
  build: number,
  sheets: readonly RecordValuesRow[],
  asOf: string | undefined,
): Map<number, SheetFigures> {
  if (sheets.length === 0) return new Map();
  const readings = standingReadings(connection, build, asOf);
  const alone = new Map(sheets.map((sheet) => [sheet.id, workOutSheet(setupOf(sheet), readings.get(sheet.id) ?? [])]));
  return new Map(
    sheets.map((sheet) => {
      const less = sheets.find(({ id }) => id === sheet['less']);
      const places =
        less === undefined
          ? (alone.get(sheet.id)?.places ?? [])
          : workOutSheet(setupOf(sheet), readings.get(sheet.id) ?? [], {
              setup: setupOf(less),
              places: alone.get(less.id)?.places ?? [],
            }).places;
      const known = (values: readonly (number | null)[]): number[] => values.filter((value) => value !== null);
      const figures: Partial<Record<SheetFigure, number>> = {};
      const clearances = known(places.map(({ clearance }) => clearance));
      const least = known(places.map((place) => place.least));
      const most = known(places.map((place) => place.most));
      const mean = alone.get(sheet.id)?.mean ?? null;
      if (mean !== null) figures.mean = mean;
      if (least.length > 0) figures.least = Math.min(...least);
      if (most.length > 0) figures.most = Math.max(...most);
      if (clearances.length > 0) {
        figures['clearance mean'] = clearances.reduce((sum, value) => sum + value, 0) / clearances.length;
        figures['clearance least'] = Math.min(...clearances);
        figures['clearance most'] = Math.max(...clearances);
      }
      return [sheet.id, { title: String(sheet['title']), unit: String(sheet['unit']), figures }];
    }),
  );
}

function keptCheck(record: RecordValuesRow): KeptCheck {
  return {
    id: record.id,
    revision: record.revision,
    title: String(record['title']),
    calculator: String(record['calculator']),
    inputs: record['inputs'] as unknown as Record<string, CheckSource>,
    output: String(record['output']),
    limit: record['limit'] as unknown as CheckPlan['limit'],
    system: record['system'] as number | null,
    shipped: String(record['shipped'] ?? ''),
    beforeGate: record['beforeGate'] === true,
    note: String(record['note'] ?? ''),
  };
}

/** Part lines that sources name outright. */
export function partsNamed(plan: CheckPlan): number[] {
  const bounds = [plan.limit.leastFrom, plan.limit.mostFrom].filter((one) => one !== undefined);
  return [...Object.values(plan.inputs), ...bounds].flatMap((source) =>
    source.from === 'fact' && source.part !== null ? [source.part] : [],
  );
}

/** The checks of a build with all that they read, now or at the end of a past day. */
export function buildChecks(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  also: readonly CheckPlan[] = [],
  positions?: ReadonlyMap<number, Position>,
): BuildChecks {
  const read = (table: 'checks' | 'targets' | 'measuringSheets'): RecordValuesRow[] =>
    asOf === undefined
      ? listRecords(connection, table, 'build = ? AND retired_on IS NULL', build)
      : recordsAsOf(connection, build, table, asOf).filter(({ retiredOn }) => retiredOn === null || retiredOn > asOf);
  const checks = read('checks').map(keptCheck);
  const targets = read('targets');
  if (checks.length + also.length === 0) {
    return { checks, targets, context: { parts: [], targets: [], measurements: new Map() } };
  }
  const named = new Set([...checks, ...also].flatMap(partsNamed));
  const parts =
    asOf === undefined ? partsNow(connection, build, named) : partsAsOf(connection, build, asOf, named, positions);
  const context: CheckContext = {
    parts,
    targets: targets.map((line) => ({
      name: String(line['name']),
      value: String(line['value']),
      unit: String(line['unit'] ?? ''),
    })),
    measurements: sheetFigures(connection, build, read('measuringSheets'), asOf),
  };
  return { checks, targets, context };
}

export interface WorkedBuild extends BuildChecks {
  readonly worked: readonly { readonly check: KeptCheck; readonly result: WorkedCheck }[];
}

/** Every check of a build worked out; kept until the next act. */
export function workedChecks(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  positions?: ReadonlyMap<number, Position>,
): WorkedBuild {
  return remembered(connection, `checks ${build} ${asOf ?? 'now'}`, () => {
    const all = buildChecks(connection, build, asOf, [], positions);
    return { ...all, worked: workedOnce(connection, all) };
  });
}

/** Verdicts by what went in, the latest few: from one week to the next often nothing that a check reads has changed. */
const verdicts = new WeakMap<Connection, Map<string, WorkedBuild['worked']>>();
const mostVerdicts = 6;

function workedOnce(connection: Connection, { checks, context }: BuildChecks): WorkedBuild['worked'] {
  const key = JSON.stringify([checks, context.parts, context.targets, [...context.measurements]]);
  const kept = verdicts.get(connection) ?? new Map<string, WorkedBuild['worked']>();
  verdicts.set(connection, kept);
  const run = runOf(connection);
  const worked = kept.get(key) ?? checks.map((check) => ({ check, result: evaluateCheck(check, context, run) }));
  kept.delete(key);
  kept.set(key, worked);
  if (kept.size > mostVerdicts) kept.delete(kept.keys().next().value as string);
  return worked;
}

/** What the hoist check is told: checks that stand before it. `positions` are those of the day, where they are at hand. */
export function checkFacts(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  positions: ReadonlyMap<number, Position> | undefined,
): CheckFact[] {
  return workedChecks(connection, build, asOf, positions)
    .worked.filter(({ check }) => check.beforeGate)
    .map(({ check, result }) => ({ id: check.id, title: check.title, verdict: result.verdict, says: result.says }));
}
