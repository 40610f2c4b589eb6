import type { PartRow } from '../../contract/parts.ts';
import { all, type Connection } from './connection.ts';
import { pageOfParts } from './part-order.ts';
import { type Position, positionOf, positionSelect } from './positions.ts';
import { lineWords } from './promises.ts';
import { standingOf } from './standing.ts';
import { statesAsOf } from './states.ts';

/** A part line as typed, straight from its row. */
interface TypedRow {
  readonly id: number;
  readonly build: number;
  readonly revision: number;
  readonly retiredOn: string | null;
  readonly description: string;
  readonly partNumber: string;
  readonly maker: string;
  readonly link: string;
  readonly unit: string;
  readonly system: number | null;
  readonly phase: number | null;
  readonly job: number | null;
  readonly vendor: number | null;
  readonly bin: number | null;
  readonly priority: number;
  readonly neededBy: string | null;
  readonly optional: number;
  readonly needsVerification: number;
  readonly stretchOnce: number;
  readonly attention: string;
  readonly note: string;
  readonly kind: string;
}

const typedSelect = `p.id, p.build, p.revision, p.retired_on AS retiredOn, p.description, p.part_number AS partNumber, p.maker, p.link,
  p.unit, p.system, p.phase, p.job, p.vendor, p.bin, p.priority, p.needed_by AS neededBy, p.optional,
  p.needs_verification AS needsVerification, p.stretch_once AS stretchOnce, p.attention, p.note,
  p.kind`;

const order = 'ORDER BY coalesce(s.sort, 1000000), p.system, coalesce(f.sort, 1000000), p.phase, p.id';
const source = `FROM parts p LEFT JOIN systems s ON s.id = p.system LEFT JOIN phases f ON f.id = p.phase
  JOIN positions q ON q.part = p.id`;

function rowOf(typed: TypedRow, position: Position, today: string): PartRow {
  const dropped = typed.retiredOn !== null;
  const { standing, text } = standingOf(position, { unit: typed.unit, dropped }, today);
  return {
    id: typed.id,
    build: typed.build,
    revision: typed.revision,
    dropped,
    description: typed.description,
    partNumber: typed.partNumber,
    maker: typed.maker,
    link: typed.link,
    unit: typed.unit,
    system: typed.system,
    phase: typed.phase,
    job: typed.job,
    vendor: typed.vendor,
    bin: typed.bin,
    priority: typed.priority,
    neededBy: typed.neededBy,
    optional: typed.optional === 1,
    needsVerification: typed.needsVerification === 1,
    stretchOnce: typed.stretchOnce === 1,
    attention: typed.attention,
    note: typed.note,
    kind: typed.kind,
    needMilli: position.needMilli,
    estimateEachE4: position.estimateEachE4,
    standing,
    standingText: text,
    onOrderMilli:
      position.placedMilli + position.acknowledgedMilli + position.backOrderedMilli + position.inTransitMilli,
    placedMilli: position.placedMilli,
    acknowledgedMilli: position.acknowledgedMilli,
    backOrderedMilli: position.backOrderedMilli,
    inTransitMilli: position.inTransitMilli,
    inspectionMilli: position.inspectionMilli,
    shelfMilli: position.shelfMilli,
    allocatedMilli: position.allocatedMilli,
    trialMilli: position.trialMilli,
    fittedMilli: position.fittedMilli,
    snugMilli: position.snugMilli,
    verifiedMilli: position.verifiedMilli,
    rejectedMilli: position.rejectedMilli,
    lentMilli: position.lentMilli,
    borrowedMilli: position.borrowedMilli,
    borrowedOnMilli: position.borrowedOnMilli,
    uncoveredMilli: position.uncoveredMilli,
    costMinor: position.costMinor,
    commitmentMinor: position.commitmentMinor,
    remainingMinor: position.remainingMinor,
    paidMinor: position.paidMinor,
    stillToPayMinor: position.commitmentMinor + position.vendorOwedMinor - position.claimsMinor,
    forecastMinor: position.costMinor + position.commitmentMinor + position.remainingMinor,
    promisedOn: position.promisedOn,
    backOrderedOn: position.backOrderedOn,
  };
}

/** Positions of all part lines of a build at the end of a day: the same figures as the kept ones, from the same function. */
export function positionsAsOf(connection: Connection, build: number, asOf: string): Map<number, Position> {
  const words = lineWords(connection, build, asOf);
  const quotes = new Map(
    all<{ part: number; quotes: number }>(
      connection,
      `SELECT part, count(*) AS quotes FROM entries e WHERE +build = ? AND kind = 'quoted' AND on_day <= ? AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) GROUP BY part`,
      build,
      asOf,
    ).map(({ part, quotes: count }) => [part, count]),
  );
  const positions = new Map<number, Position>();
  for (const [part, state] of statesAsOf(connection, build, asOf)) {
    positions.set(part, positionOf(state, words, quotes.get(part) ?? 0));
  }
  return positions;
}

export interface PartRowsQuestion {
  readonly build: number;
  readonly asOf?: string | undefined;
  readonly today: string;
  /** Also lines that were dropped. */
  readonly dropped?: boolean | undefined;
  readonly from?: number;
  readonly count?: number;
  readonly ids?: readonly number[];
}

/** Part lines of a build with their positions, in the order of system, phase and number. */
export function partRows(connection: Connection, question: PartRowsQuestion): PartRow[] {
  const { build, asOf, today } = question;
  const where = ['p.build = ?', 'p.gone = 0'];
  const values: unknown[] = [build];
  const past = asOf !== undefined && asOf < today ? asOf : undefined;
  if (past === undefined && question.ids === undefined && question.count !== undefined) {
    const ids = pageOfParts(connection, build, question.dropped === true, question.from ?? 0, question.count);
    return all<TypedRow & Position>(
      connection,
      // The cross join makes the page drive the query, in the order in which the page was put.
      `SELECT ${typedSelect}, ${positionSelect} FROM json_each(?) page CROSS JOIN parts p ON p.id = page.value
       JOIN positions q ON q.part = p.id ORDER BY page.key`,
      JSON.stringify(ids),
    ).map((row) => rowOf(row, row, today));
  }
  if (past !== undefined) {
    where.push('EXISTS (SELECT 1 FROM entries e WHERE e.part = p.id AND e.on_day <= ?)');
    values.push(past);
  }
  if (question.dropped !== true && question.ids === undefined) {
    where.push(past === undefined ? 'p.retired_on IS NULL' : '(p.retired_on IS NULL OR p.retired_on > ?)');
    if (past !== undefined) values.push(past);
  }
  if (question.ids !== undefined) {
    where.push('p.id IN (SELECT value FROM json_each(?))');
    values.push(JSON.stringify(question.ids));
  }
  const page = question.count === undefined ? '' : ' LIMIT ? OFFSET ?';
  if (question.count !== undefined) values.push(question.count, question.from ?? 0);
  const rows = all<TypedRow & Position>(
    connection,
    `SELECT ${typedSelect}, ${positionSelect} ${source} WHERE ${where.join(' AND ')} ${order}${page}`,
    ...values,
  );
  if (past === undefined) return rows.map((row) => rowOf(row, row, today));
  const positions = positionsAsOf(connection, build, past);
  return rows.flatMap((row) => {
    const position = positions.get(row.id);
    return position === undefined ? [] : [rowOf(row, position, past)];
  });
}
