import { startOfDay } from '../../dates/instant.ts';
import type { Distribution } from '../../forecast/distribution.ts';
import type { ComingPart, ForecastFacts, ForecastGap } from '../../forecast/facts.ts';
import type { ForecastArrival, ForecastGate, ForecastJob } from '../../forecast/network.ts';
import type { WorkingPerson } from '../../schedule/calendar.ts';
import { longestWindow, showMinutes } from '../../schedule/working-time.ts';
import { allowedFrom } from './allowed-from.ts';
import { arrivalOutlooks, type Outlook, type OutlookDay } from './arrival-outlooks.ts';
import { peopleOf } from './calendar.ts';
import { all, type Connection, readSettings } from './connection.ts';
import { dueRows } from './order-due.ts';
import { positionsAsOf } from './part-rows.ts';
import { type JobRow, planJobRows, receivedOf, toolsAtHand } from './plan.ts';
import { type Position, positionSelect } from './positions.ts';
import { listRecords, readRecord } from './record-tables.ts';

export type { ForecastFacts };

/** From one guess: at best three quarters of it, at worst twice. This product's own, no published source. */
const bestShare = 0.75;
const worstShare = 2;

/** Minute of the day from which a borrowed tool can be used. Common practice, no published source. */
const toolMinuteOfDay = 12 * 60;

/**
 * Minutes left as three points, less the minutes spent; work beyond the guess leaves up to the worst case. What nobody
 * has said of the best and the worst comes from the guess.
 */
function minutesLeft(job: JobRow, guess: number): Distribution {
  const left = (minutes: number): number => Math.max(0, minutes - job.minutesSpent);
  const low = Math.min(guess, job.minutesLow ?? guess * bestShare);
  const high = Math.max(guess, job.minutesHigh ?? guess * worstShare);
  return { kind: 'pert', low: left(low), likely: left(guess), high: left(high) };
}

/** Why a job that must be done in one sitting can't be; it is then counted over several. */
function sittingGap(job: JobRow, people: readonly WorkingPerson[], now: number): ForecastGap | undefined {
  if (!job.oneSitting || !job.hands) return undefined;
  const left = (job.minutesGuess ?? 0) - job.minutesSpent;
  const who = people.filter(({ id }) => id === String(job.person));
  const longest = Math.max(0, ...(who.length > 0 ? who : people).map(({ time }) => longestWindow(time, now)));
  if (left <= longest || longest === 0) return undefined;
  const why = `a sitting of ${showMinutes(left)} never fits: the longest window is ${showMinutes(longest)}; counted over several`;
  return { kind: 'job', id: job.id, title: job.title, why };
}

interface PartRow {
  readonly id: number;
  readonly description: string;
  readonly job: number | null;
  readonly vendor: number | null;
  readonly vendor_name: string | null;
  readonly lead_days: number | null;
  readonly before_gate: number;
}

/** Part lines that the forecast looks at, with where their units are. Optional ones hold nothing. */
function partRowsOf(connection: Connection, build: number, asOf: string | undefined): (PartRow & Position)[] {
  const past = asOf === undefined ? undefined : positionsAsOf(connection, build, asOf);
  return all<PartRow & Position>(
    connection,
    `SELECT p.id, p.description, p.job, p.vendor, v.name AS vendor_name, v.lead_days,
     coalesce(j.before_gate, 1) AS before_gate, ${positionSelect} FROM parts p JOIN positions q ON q.part = p.id
     LEFT JOIN vendors v ON v.id = p.vendor LEFT JOIN jobs j ON j.id = p.job
     WHERE p.build = ? AND p.gone = 0 AND p.retired_on IS NULL AND p.optional = 0 ORDER BY p.id`,
    build,
  ).flatMap((row) => {
    const position = past === undefined ? row : past.get(row.id);
    return position === undefined ? [] : [{ ...row, ...position }];
  });
}

interface Deliveries {
  readonly arrivals: ForecastArrival[];
  readonly coming: ComingPart[];
  readonly gaps: ForecastGap[];
  /** Ids of the deliveries that each part line waits for. */
  readonly ofPart: Map<number, string[]>;
}

function deliveriesOf(
  connection: Connection,
  build: number,
  rows: readonly (PartRow & Position)[],
  when: OutlookDay,
): Deliveries {
  const found: Deliveries = { arrivals: [], coming: [], gaps: [], ofPart: new Map() };
  const outlooks = arrivalOutlooks(connection, when);
  const due = Map.groupBy(dueRows(connection, build, when.today, when.asOf), ({ part }) => part);
  const add = (
    row: PartRow,
    about: Pick<ComingPart, 'vendor' | 'vendorName' | 'line'>,
    { days, grounds }: Outlook,
  ): void => {
    const arrival = about.line === null ? `part ${row.id}` : `line ${about.line}`;
    const { id: part, description } = row;
    found.arrivals.push({
      id: arrival,
      name: description,
      fromMinute: when.nowMinute,
      days,
      vendor: about.vendor === null ? null : String(about.vendor),
    });
    found.coming.push({ arrival, part, description, ...about, ...grounds });
    found.ofPart.set(part, [...(found.ofPart.get(part) ?? []), arrival]);
  };
  for (const row of rows) {
    const missing = row.needMilli - receivedOf(row);
    if (missing <= 0 && row.lentMilli === 0) continue;
    const lines = missing > 0 ? (due.get(row.id) ?? []) : [];
    for (const line of lines) {
      const stated = line.vendor === row.vendor ? row.lead_days : null;
      const about = { vendor: line.vendor, vendorName: line.vendorName, line: line.line };
      add(row, about, outlooks.ofLine(line, stated));
    }
    if (row.uncoveredMilli > 0) {
      const outlook = outlooks.ofOrder({ vendor: row.vendor, statedDays: row.lead_days });
      add(row, { vendor: row.vendor, vendorName: row.vendor_name ?? '', line: null }, outlook);
      if (!outlook.known) {
        const who =
          row.vendor === null ? 'no vendor is chosen' : `nothing is known of how long ${row.vendor_name} takes`;
        const { says } = outlook.grounds;
        found.gaps.push({ kind: 'part', id: row.id, title: row.description, why: `${who}; ${says}` });
      }
    }
    if (row.lentMilli > 0) {
      found.gaps.push({ kind: 'part', id: row.id, title: row.description, why: 'lent out, and no day for its return' });
    }
  }
  return found;
}

/** The jobs named and all open ones that they wait for. */
function withEarlier(ids: readonly number[], open: ReadonlyMap<number, JobRow>): Set<number> {
  const found = new Set<number>();
  const next = [...ids];
  for (let id = next.pop(); id !== undefined; id = next.pop()) {
    const job = open.get(id);
    if (job === undefined || found.has(id)) continue;
    found.add(id);
    next.push(...job.earlier);
  }
  return found;
}

/**
 * What the forecast is told about a build, now or at the end of a past day: the jobs still open before its gates with
 * the minutes left of them, and the deliveries that they and the gates wait for. The first gate is that of the hoist
 * check; a phase with a gate of another name adds that gate over its own jobs.
 * @param nowMinute the minute of wall time that the forecast begins at.
 * @param everyJob also the open jobs that stand before no gate.
 */
export function forecastFacts(
  connection: Connection,
  build: number,
  today: string,
  asOf: string | undefined,
  nowMinute: number,
  everyJob = false,
): ForecastFacts {
  const rows = partRowsOf(connection, build, asOf);
  const planned = planJobRows(connection, build, asOf);
  const deliveries = deliveriesOf(connection, build, rows, { today, asOf, nowMinute });
  const gateName = String(readRecord(connection, 'builds', build)?.['gateName'] ?? 'engine-in');
  const people = peopleOf(connection, build, readSettings(connection));
  const byId = new Map(planned.map((job) => [job.id, job]));
  const open = new Map(planned.filter(({ done }) => !done).map((job) => [job.id, job]));
  const waits = (part: PartRow): readonly string[] => deliveries.ofPart.get(part.id) ?? [];
  const phaseGates = new Map<string, Set<number>>();
  for (const phase of listRecords(connection, 'phases', 'build = ? AND retired_on IS NULL', build)) {
    const name = String(phase['gate']).trim();
    if (name === '' || name === gateName) continue;
    phaseGates.set(name, (phaseGates.get(name) ?? new Set()).add(phase.id));
  }
  const gates: ForecastGate[] = [
    {
      id: gateName,
      name: gateName,
      jobs: [...open.values()].filter(({ beforeGate }) => beforeGate).map(({ id }) => String(id)),
      arrivals: rows.filter((row) => row.before_gate === 1).flatMap(waits),
    },
    ...[...phaseGates].map(([name, phases]) => ({
      id: name,
      name,
      jobs: [...open.values()].filter(({ phase }) => phase !== null && phases.has(phase)).map(({ id }) => String(id)),
    })),
  ];
  const counted = withEarlier(everyJob ? [...open.keys()] : gates.flatMap(({ jobs }) => jobs.map(Number)), open);
  const tools = toolsAtHand(connection, build, asOf);
  const partsOf = Map.groupBy(rows, ({ job }) => job);
  const gaps: ForecastGap[] = [];
  const jobs = [...open.values()]
    .filter(({ id }) => counted.has(id))
    .map((job): ForecastJob => {
      const away = job.tools.flatMap((id) => {
        const tool = tools.get(id);
        return tool === undefined || tool.atHand ? [] : [{ id, ...tool }];
      });
      for (const { id, name, dueOn } of away) {
        if (dueOn === null && !gaps.some((gap) => gap.kind === 'tool' && gap.id === id)) {
          gaps.push({ kind: 'tool', id, title: name, why: 'not at hand, and no day for it; counted as at hand' });
        }
      }
      const toolMinutes = away.flatMap(({ dueOn }) => (dueOn === null ? [] : [startOfDay(dueOn) + toolMinuteOfDay]));
      const sitting = sittingGap(job, people, nowMinute);
      if (sitting !== undefined) gaps.push(sitting);
      if (job.minutesGuess === null) {
        gaps.push({
          kind: 'job',
          id: job.id,
          title: job.title,
          why: 'nobody has guessed how long it takes; counted as nothing',
        });
      }
      return {
        id: String(job.id),
        name: job.title,
        minutes: job.minutesGuess === null ? { kind: 'constant', value: 0 } : minutesLeft(job, job.minutesGuess),
        // What takes no time needs no hands, so that it can be done without free hours.
        hands: job.hands && job.minutesGuess !== null,
        oneSitting: job.oneSitting,
        person: people.some(({ id }) => id === String(job.person)) ? String(job.person) : null,
        notBeforeMinute: Math.max(allowedFrom(job, byId, people, nowMinute), ...toolMinutes),
        after: job.earlier
          .filter((id) => counted.has(id))
          .flatMap((id) => {
            const own = job.lags.filter((one) => one.job === id);
            // Of two lags after one job both hold, so the longer one counts.
            return own.length === 0
              ? [{ job: String(id), lagMinutes: 0, lagOn: 'clock' as const }]
              : own.map(({ minutes, on }) => ({ job: String(id), lagMinutes: minutes, lagOn: on }));
          }),
        arrivals: (partsOf.get(job.id) ?? []).flatMap(waits),
      };
    });
  const beforeGate = new Set(rows.filter((row) => row.before_gate === 1).map(({ id }) => id));
  const used = new Set([
    ...jobs.flatMap(({ arrivals }) => arrivals),
    ...gates.flatMap(({ arrivals = [] }) => arrivals),
  ]);
  return {
    people,
    jobs,
    arrivals: deliveries.arrivals.filter(({ id }) => used.has(id)),
    gates,
    coming: deliveries.coming.filter(({ arrival }) => used.has(arrival)),
    gaps: [...gaps, ...deliveries.gaps.filter(({ id }) => beforeGate.has(id))],
    anything: planned.length > 0 || rows.length > 0,
  };
}
