import type { DueRow } from '../../contract/orders.ts';
import type { ArrivalGrounds } from '../../forecast/facts.ts';
import type { BlockerKind, BlockerSubject } from '../../gate/blocker.ts';
import type { BoltGroupFact, DecisionFact, GateFacts, PartFact, WaiverFact } from '../../gate/facts.ts';
import { isUnit } from '../../units/quantity.ts';
import { allowedFrom } from './allowed-from.ts';
import { type ArrivalOutlooks, arrivalOutlooks, type OutlookDay } from './arrival-outlooks.ts';
import { peopleOf } from './calendar.ts';
import { checkFacts } from './checks.ts';
import { all, type Connection, readSettings } from './connection.ts';
import { lacksEstimate } from './money.ts';
import { dueRows } from './order-due.ts';
import { positionsAsOf } from './part-rows.ts';
import { planJobRows, receivedOf, toolsAtHand } from './plan.ts';
import { type Position, positionSelect } from './positions.ts';
import { listRecords, readRecord } from './record-tables.ts';
import { subjectSums } from './states.ts';

interface PartWords {
  readonly id: number;
  readonly description: string;
  readonly unit: string;
  readonly optional: number;
  readonly needs_verification: number;
  readonly vendor: number | null;
  readonly lead_days: number | null;
  /** 0 when the job that it is wanted for comes after the engine is in. */
  readonly before_gate: number;
}

/**
 * Leaves out lines that nothing can be found about: enough of their own is on for good, nothing of them is on for trial
 * or borrowed, and they need no verifying. Of the others the hoist check says which stand in the way; towards the end of
 * a build they are few.
 */
const mayStandInTheWay = `(q.need_milli > q.fitted_milli + q.snug_milli + q.verified_milli OR q.trial_milli > 0
  OR q.borrowed_on_milli > 0 OR p.needs_verification = 1)`;

/**
 * When what a part line lacks is here, by the forecast of its deliveries: the latest of them, with what is not ordered
 * counted as ordered now. Null where nothing is to come, or nothing is known of what is still to be ordered.
 */
function partArrivals(
  connection: Connection,
  build: number,
  when: OutlookDay,
): (part: PartWords, position: Position) => ArrivalGrounds | null {
  // Towards the end of a build nothing is to come, and then no record has to be read.
  let known: { readonly outlooks: ArrivalOutlooks; readonly due: ReadonlyMap<number, readonly DueRow[]> } | undefined;
  return (part, position) => {
    const onOrder = position.needMilli > receivedOf(position);
    if (!onOrder && position.uncoveredMilli <= 0 && position.borrowedOnMilli <= 0) return null;
    known ??= {
      outlooks: arrivalOutlooks(connection, when),
      due: Map.groupBy(dueRows(connection, build, when.today, when.asOf), (row) => row.part),
    };
    const { outlooks, due } = known;
    const found = (due.get(part.id) ?? []).map(
      (line) => outlooks.ofLine(line, line.vendor === part.vendor ? part.lead_days : null).grounds,
    );
    if (position.uncoveredMilli > 0) {
      const order = outlooks.ofOrder({ vendor: part.vendor, statedDays: part.lead_days });
      if (!order.known) return null;
      found.push(order.grounds);
    }
    const [latest] = found.toSorted((a, b) => b.p50Days - a.p50Days);
    if (latest === undefined) return null;
    const latestBy80 =
      found
        .map(({ p80On }) => p80On)
        .toSorted()
        .at(-1) ?? latest.p80On;
    return { ...latest, p80On: latestBy80 };
  };
}

function partFacts(
  connection: Connection,
  build: number,
  when: OutlookDay,
  positions: ReadonlyMap<number, Position> | undefined,
): PartFact[] {
  const arrivals = partArrivals(connection, build, when);
  return all<PartWords & Position>(
    connection,
    `SELECT p.id, p.description, p.unit, p.optional, p.needs_verification, p.vendor, v.lead_days,
     coalesce(j.before_gate, 1) AS before_gate, ${positionSelect} FROM parts p JOIN positions q ON q.part = p.id
     LEFT JOIN vendors v ON v.id = p.vendor LEFT JOIN jobs j ON j.id = p.job
     WHERE p.build = ? AND p.gone = 0 AND p.retired_on IS NULL${positions === undefined ? ` AND ${mayStandInTheWay}` : ''}
     ORDER BY p.id`,
    build,
  ).flatMap((part) => {
    const position = positions === undefined ? part : positions.get(part.id);
    if (position === undefined) return [];
    // A part for a job after the gate isn't required for it, but what is on for trial or borrowed must still come off.
    if (part.before_gate === 0 && position.trialMilli === 0 && position.borrowedOnMilli === 0) return [];
    const expected = arrivals(part, position);
    return [
      {
        id: part.id,
        description: part.description,
        unit: isUnit(part.unit) ? part.unit : 'each',
        needMilli: position.needMilli,
        fittedMilli: position.fittedMilli,
        snugMilli: position.snugMilli,
        verifiedMilli: position.verifiedMilli,
        trialFittedMilli: position.trialMilli,
        borrowedOnMilli: Math.max(0, position.borrowedOnMilli - position.trialMilli),
        lentMilli: position.lentMilli,
        rejectedUnsettledMilli: position.rejectedMilli + position.returnedUnsettledMilli,
        inHandMilli: Math.max(
          0,
          position.shelfMilli + position.allocatedMilli - (position.borrowedMilli - position.borrowedOnMilli),
        ),
        inspectionMilli: position.inspectionMilli,
        onOrderMilli: position.placedMilli + position.acknowledgedMilli + position.inTransitMilli,
        backOrderedMilli: position.backOrderedMilli,
        backOrderedOn: position.backOrderedOn,
        needsVerification: part.needs_verification === 1,
        optional: part.optional === 1,
        promisedOn: position.promisedOn,
        expectedOn: expected?.p50On ?? null,
        expectedLateOn: expected?.p80On ?? null,
        expectedSays: expected?.says ?? '',
        costToComeMinor: position.commitmentMinor + position.remainingMinor,
        estimateKnown: !lacksEstimate(position),
      },
    ];
  });
}

function decisionFacts(connection: Connection, build: number, asOf: string | undefined): DecisionFact[] {
  const sums = subjectSums(connection, build, 'decision', asOf);
  return listRecords(connection, 'decisions', 'build = ?', build)
    .filter(
      ({ id, beforeGate }) => beforeGate === true && (sums.get(id)?.get('decision-listed')?.quantityMilli ?? 0) > 0,
    )
    .map((record) => {
      const costs = (record['options'] as unknown as { costMinor: number | null }[])
        .map(({ costMinor }) => costMinor)
        .filter((cost) => cost !== null);
      return {
        id: record.id,
        title: String(record['title']),
        open: (sums.get(record.id)?.get('decision-made')?.quantityMilli ?? 0) === 0,
        neededBy: record['neededBy'] as string | null,
        costSpreadMinor: costs.length < 2 ? null : Math.max(...costs) - Math.min(...costs),
      };
    });
}

function boltFacts(connection: Connection, build: number, asOf: string | undefined): BoltGroupFact[] {
  const sums = subjectSums(connection, build, 'bolt-group', asOf);
  const count = (id: number, account: 'bolts' | 'bolts-snug' | 'bolts-final'): number =>
    (sums.get(id)?.get(account)?.quantityMilli ?? 0) / 1000;
  return listRecords(connection, 'boltGroups', 'build = ?', build)
    .filter(({ id, beforeGate }) => beforeGate === true && count(id, 'bolts') > 0)
    .map((record) => {
      const torque = record['torqueMilliNm'] !== null;
      const method = String(record['method']);
      return {
        id: record.id,
        name: String(record['name']),
        count: count(record.id, 'bolts'),
        snugCount: count(record.id, 'bolts-snug'),
        finalCount: count(record.id, 'bolts-final'),
        methodKnown: method === 'stretch' || (torque && (method === 'torque' || record['angleDeg'] !== null)),
      };
    });
}

interface WaiverPayload {
  readonly kind: BlockerKind;
  readonly subject: BlockerSubject;
  readonly reason?: string;
  readonly by?: string;
  readonly until?: string | null;
}

/** Waivers that were given and not ended, up to a day. */
export function standingWaivers(connection: Connection, build: number, asOf: string | undefined): WaiverFact[] {
  const rows = all<{ seq: number; kind: string; on_day: string; payload: string }>(
    connection,
    `SELECT seq, kind, on_day, payload FROM entries e WHERE +build = ? AND kind IN ('waived', 'waiver-ended') AND on_day <= ?
     AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY seq`,
    build,
    asOf ?? '9999-12-31',
  );
  const standing = new Map<string, WaiverFact>();
  for (const row of rows) {
    const said = JSON.parse(row.payload) as WaiverPayload;
    const key = `${said.kind} ${said.subject.kind} ${said.subject.id}`;
    if (row.kind === 'waiver-ended') standing.delete(key);
    else {
      standing.set(key, {
        kind: said.kind,
        subject: said.subject,
        reason: said.reason ?? '',
        by: said.by ?? '',
        on: row.on_day,
        until: said.until ?? null,
        seq: row.seq,
      });
    }
  }
  return [...standing.values()];
}

/** What the hoist check is told about a build, now or at the end of a past day. */
export function gateFacts(connection: Connection, build: number, when: OutlookDay): GateFacts {
  const { asOf } = when;
  const positions = asOf === undefined ? undefined : positionsAsOf(connection, build, asOf);
  const record = readRecord(connection, 'builds', build);
  const partsOf = Map.groupBy(
    all<{ id: number; job: number }>(
      connection,
      'SELECT id, job FROM parts WHERE +build = ? AND gone = 0 AND retired_on IS NULL AND job IS NOT NULL',
      build,
    ),
    ({ job }) => job,
  );
  const planned = planJobRows(connection, build, asOf);
  const byId = new Map(planned.map((job) => [job.id, job]));
  const people = peopleOf(connection, build, readSettings(connection));
  const jobs = planned.map((job) => ({
    id: job.id,
    title: job.title,
    done: job.done,
    minutesGuess: job.minutesGuess === null ? null : Math.max(0, job.minutesGuess - job.minutesSpent),
    beforeGate: job.beforeGate,
    earlier: job.earlier,
    parts: (partsOf.get(job.id) ?? []).map(({ id }) => id),
    tools: job.tools,
    ...(job.done ? {} : { fromMinute: allowedFrom(job, byId, people, when.nowMinute) }),
    hands: job.hands,
    oneSitting: job.oneSitting,
    lags: job.lags.filter((lag) => job.earlier.includes(lag.job)),
  }));
  return {
    gateName: String(record?.['gateName'] ?? 'engine-in'),
    parts: partFacts(connection, build, when, positions),
    jobs,
    tools: [...toolsAtHand(connection, build, asOf)]
      .filter(([, tool]) => tool.listed)
      .map(([id, { name, atHand, dueOn, hireMinor }]) => ({ id, name, atHand, dueOn, hireMinor: hireMinor ?? 0 })),
    decisions: decisionFacts(connection, build, asOf),
    boltGroups: boltFacts(connection, build, asOf),
    checks: checkFacts(connection, build, asOf, positions),
    waivers: standingWaivers(connection, build, asOf),
  };
}
