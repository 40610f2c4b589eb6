import type { BarState, BarsView, PlanBar, PlanJob } from '../contract/plan.ts';
import { daysBetween } from '../dates/calendar-date.ts';
import { dateOfMinute, minutesPerDay } from '../dates/instant.ts';
import { quantile } from '../forecast/distribution.ts';
import type { ForecastFacts } from '../forecast/facts.ts';
import {
  type LevelledBar,
  type LevelledCalendar,
  levelCalendar,
  levellingRule,
  overAllocations,
} from '../schedule/calendar-levelling.ts';
import type { CalendarJob } from '../schedule/calendar-network.ts';
import { hasWorkingTime } from '../schedule/working-time.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { forecastFacts } from '../workbook/store/forecast-facts.ts';
import { type JobDays, jobDays } from '../workbook/store/job-days.ts';
import { planJobRows, planJobs, toolsAtHand } from '../workbook/store/plan.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { remembered } from '../workbook/store/remembered.ts';
import { type Context, needBuild } from './context.ts';
import { nowMinuteOf } from './forecast.ts';
import { barsAnswer, chainOf, dayAndTime, heldWords, notBeforeRelease, type Release } from './plan-bars-words.ts';

type Row = ReturnType<typeof planJobRows>[number];

const assumes = [
  'Each job takes its guess, less the hours spent; where those are used up, the middle of what is left at worst.',
  'Parts come on the day by which they come as likely as not; what isn’t ordered is counted as ordered today.',
  'There is one of each tool; a tool that is away comes back at noon of its day.',
];

function stateOf(job: PlanJob, row: Row, days: JobDays | undefined): BarState {
  if (job.done) return 'done';
  if (row.minutesSpent > 0 || days?.running === true) return 'in hand';
  if (job.needs.some(({ missingMilli }) => missingMilli > 0)) return 'waiting for parts';
  if (job.tools.some(({ atHand }) => !atHand)) return 'waiting for a tool';
  return job.earlier.some(({ done }) => !done) ? 'waiting for another job' : 'free';
}

/** Minutes that the plan counts for a job: what is left of the guess. */
function plannedMinutes(minutes: ForecastFacts['jobs'][number]['minutes']): number {
  if (minutes.kind === 'constant') return Math.round(minutes.value);
  const likely = minutes.kind === 'pert' ? Math.round(minutes.likely) : 0;
  return likely > 0 ? likely : Math.round(quantile(minutes, 0.5));
}

interface Facts {
  readonly facts: ForecastFacts;
  readonly rows: readonly Row[];
  readonly tools: ReturnType<typeof toolsAtHand>;
  readonly nowMinute: number;
}

/** What each job, and the gate, can't come before, with its words. */
function releasesOf({ facts, rows, tools, nowMinute }: Facts): {
  ofJob: Map<string, Release[]>;
  gate: Release[];
} {
  const coming = new Map(
    facts.coming.map((part): [string, Release] => {
      const minute = Math.max(nowMinute, Math.round(nowMinute + part.p50Days * minutesPerDay));
      const ordered = part.line === null ? 'once it is ordered, ' : '';
      return [
        part.arrival,
        {
          minute,
          says: `the part ${part.description}: ${ordered}as likely as not on ${dayWords(dateOfMinute(minute))}`,
        },
      ];
    }),
  );
  const arrivals = (ids: readonly string[]): Release[] =>
    ids.flatMap((id) => {
      const release = coming.get(id);
      return release === undefined ? [] : [release];
    });
  const rowOf = new Map(rows.map((row) => [String(row.id), row]));
  const ofJob = new Map(
    facts.jobs.map((job): [string, Release[]] => {
      const row = rowOf.get(job.id);
      const own = arrivals(job.arrivals);
      if (row?.notBefore != null) own.push(notBeforeRelease(row.notBefore));
      const minute = Math.max(nowMinute, job.notBeforeMinute ?? nowMinute);
      if (minute > nowMinute && !own.some((one) => one.minute === minute)) {
        const tool = row?.tools
          .map((id) => tools.get(id))
          .find((one) => one !== undefined && !one.atHand && one.dueOn === dateOfMinute(minute));
        const says =
          tool === undefined
            ? `the wait after an earlier job, until ${dayWords(dateOfMinute(minute))}`
            : `the ${tool.name}, due ${dayWords(dateOfMinute(minute))}`;
        own.push({ minute, says });
      }
      return [job.id, own];
    }),
  );
  return { ofJob, gate: arrivals(facts.gates[0]?.arrivals ?? []) };
}

/** Jobs that the gate waits for, directly or through others. */
function withEarlier({ gates, jobs }: ForecastFacts): Set<string> {
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const found = new Set<string>();
  const open = [...(gates[0]?.jobs ?? [])];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    open.push(...(byId.get(id)?.after ?? []).map(({ job }) => job));
  }
  return found;
}

function calendarJobs(given: Facts, releases: ReadonlyMap<string, Release[]>): CalendarJob[] {
  const rowOf = new Map(given.rows.map((row) => [String(row.id), row]));
  const gate = withEarlier(given.facts);
  return given.facts.jobs.map((job) => {
    const row = rowOf.get(job.id);
    return {
      id: job.id,
      minutes: plannedMinutes(job.minutes),
      hands: job.hands,
      oneSitting: job.oneSitting === true,
      person: job.person ?? null,
      releaseMinute: Math.max(given.nowMinute, ...(releases.get(job.id) ?? []).map(({ minute }) => minute)),
      after: job.after.map(({ job: id, lagMinutes, lagOn }) => ({ job: id, lagMinutes, lagOn })),
      tools: (row?.tools ?? []).map(String),
      beforeGate: gate.has(job.id),
    };
  });
}

/** Jobs that no day can be said of: they need the hands of somebody without hours, or wait for such a job. */
function undated(jobs: readonly CalendarJob[], bars: readonly LevelledBar[]): Set<string> {
  const whoOf = new Map(bars.map(({ id, who }) => [id, who]));
  const found = new Set(
    jobs.filter(({ id, hands, minutes }) => hands && minutes > 0 && whoOf.get(id) === null).map(({ id }) => id),
  );
  for (let before = -1; before !== found.size; ) {
    before = found.size;
    for (const { id, after } of jobs) if (after.some(({ job }) => found.has(job))) found.add(id);
  }
  return found;
}

/** Every job of a build over the calendar, levelled over people and tools, now or at the end of a past day. */
export function barsOf(context: Context, build: number, asOf: string | undefined): BarsView {
  needBuild(context, build);
  const { connection } = context.book();
  const today = context.today();
  const past = asOf !== undefined && asOf < today ? asOf : undefined;
  const nowMinute = nowMinuteOf(context, past);
  const hours = JSON.stringify(context.settings().weekWindows);
  return remembered(connection, `bars ${build} ${past} ${nowMinute} ${hours}`, () => {
    const given: Facts = {
      facts: forecastFacts(connection, build, today, past, nowMinute, true),
      rows: planJobRows(connection, build, past),
      tools: toolsAtHand(connection, build, past),
      nowMinute,
    };
    const releases = releasesOf(given);
    const jobs = calendarJobs(given, releases.ofJob);
    const gateFrom = Math.max(nowMinute, ...releases.gate.map(({ minute }) => minute));
    const levelled = levelCalendar(jobs, given.facts.people, nowMinute, gateFrom);
    const none = undated(jobs, levelled.bars);
    const bars = planBars(given, planJobs(connection, build, today, past), levelled, releases.ofJob, none, {
      days: jobDays(connection, build, past),
    });
    const phases = listRecords(connection, 'phases', 'build = ? AND retired_on IS NULL', build).sort(
      (a, b) => Number(a['sort']) - Number(b['sort']) || a.id - b.id,
    );
    const [gate] = given.facts.gates;
    const dated = !jobs.some(({ id, beforeGate }) => beforeGate && none.has(id));
    const view = {
      rule: levellingRule,
      assumes: [...assumes],
      today: past ?? today,
      gate: {
        name: gate?.name ?? 'engine-in',
        on: dated ? dayAndTime(levelled.gateMinute, true).on : null,
        networkOn: dated ? dayAndTime(levelled.networkMinute, true).on : null,
      },
      chain: dated
        ? chainOf(levelled.bars, levelled.gateMinute, releases.gate, new Map(bars.map((bar) => [String(bar.id), bar])))
        : [],
      people: given.facts.people.filter(({ time }) => hasWorkingTime(time)).map(({ name }) => name),
      overAllocated: overAllocations(jobs, levelled.bars),
      phases: [
        ...phases.map((phase) => ({ id: phase.id as number | null, name: String(phase['name']) })),
        { id: null, name: 'No phase' },
      ],
      bars,
    };
    return { answer: barsAnswer(view), ...view };
  });
}

function planBars(
  { facts, rows, tools }: Facts,
  planned: readonly PlanJob[],
  { bars }: LevelledCalendar,
  releases: ReadonlyMap<string, Release[]>,
  none: ReadonlySet<string>,
  { days }: { readonly days: ReadonlyMap<number, JobDays> },
): PlanBar[] {
  const barOf = new Map(bars.map((bar) => [bar.id, bar]));
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  const names = new Map(facts.people.map(({ id, name }) => [id, name]));
  const titleOf = (id: string): string => rowOf.get(Number(id))?.title ?? id;
  const gate = withEarlier(facts);
  const toolName = (id: string): string => tools.get(Number(id))?.name ?? id;
  return planned.flatMap((job): PlanBar[] => {
    const row = rowOf.get(job.id);
    if (row === undefined) return [];
    const ran = days.get(job.id);
    const bar = job.done || none.has(String(job.id)) ? undefined : barOf.get(String(job.id));
    const begun = ran?.begunOn ?? null;
    const start = bar === undefined ? undefined : dayAndTime(bar.startMinute, false);
    const finish = bar === undefined ? undefined : dayAndTime(bar.finishMinute, bar.finishMinute > bar.startMinute);
    const day = (minute: number | undefined, isEnd: boolean): string | null =>
      minute === undefined ? null : dayAndTime(minute, isEnd).on;
    const doneStart = begun !== null && job.doneOn !== null && begun < job.doneOn ? begun : job.doneOn;
    const who = bar?.who == null ? '' : (names.get(bar.who) ?? '');
    const earlyStartOn = day(bar?.earlyStart, false);
    const lateStartOn = day(bar?.lateStart, false);
    return [
      {
        id: job.id,
        title: job.title,
        phase: job.phase,
        state: stateOf(job, row, ran),
        // Work that has begun began on its own day, whatever is left of it.
        startOn: job.done ? doneStart : (begun ?? start?.on ?? null),
        startAt: job.done || begun !== null ? null : (start?.at ?? null),
        finishOn: job.done ? job.doneOn : (finish?.on ?? null),
        finishAt: finish?.at ?? null,
        earlyStartOn,
        earlyFinishOn: day(bar?.earlyFinish, (bar?.earlyFinish ?? 0) > (bar?.earlyStart ?? 0)),
        lateStartOn,
        lateFinishOn: day(bar?.lateFinish, (bar?.lateFinish ?? 0) > (bar?.lateStart ?? 0)),
        floatMinutes: bar?.floatMinutes ?? null,
        floatDays: earlyStartOn === null || lateStartOn === null ? null : daysBetween(earlyStartOn, lateStartOn),
        slackMinutes: bar?.slackMinutes ?? null,
        critical: bar?.critical === true && gate.has(String(job.id)),
        beforeGate: job.beforeGate,
        who,
        person: row.person,
        hands: row.hands,
        oneSitting: row.oneSitting,
        minutesLeft: job.done || row.minutesGuess === null ? null : Math.max(0, row.minutesGuess - row.minutesSpent),
        minutesGuess: row.minutesGuess,
        minutesLow: row.minutesLow,
        minutesHigh: row.minutesHigh,
        notBefore: row.notBefore,
        after: job.earlier.map(({ id }) => {
          const lags = row.lags.filter((lag) => lag.job === id).sort((a, b) => b.minutes - a.minutes);
          return { job: id, minutes: lags[0]?.minutes ?? 0, on: lags[0]?.on ?? ('clock' as const) };
        }),
        waitsFor: job.waitsFor,
        heldBy: bar === undefined ? '' : heldWords(bar, releases.get(String(job.id)) ?? [], titleOf, toolName, who),
        revision: job.revision,
      },
    ];
  });
}
