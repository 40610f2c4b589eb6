/**
 * A forecast in days and sentences, from the facts of a build: the same in the program and in a window's worker, so that
 * the same seed says the same everywhere.
 */

import { dateOfDayNumber } from '../dates/calendar-date.ts';
import { dayWords } from '../dates/day-words.ts';
import { dateOfMinute, minutesPerDay } from '../dates/instant.ts';
import { Refusal } from '../refusal.ts';
import { worksToMidnight } from '../schedule/calendar.ts';
import { hasWorkingTime } from '../schedule/working-time.ts';
import { type ComingPart, daysAhead, type ForecastFacts, type ForecastGap, type ForecastTask } from './facts.ts';
import type { Forecast, ForecastResult, GateForecast } from './forecast.ts';
import { startForecast } from './forecast.ts';
import type { ForecastGate, ForecastNetwork } from './network.ts';
import { isNoHarder } from './no-harder.ts';

/** What held a gate in some of the runs. */
export interface ForecastHolder {
  readonly kind: 'job' | 'part';
  readonly id: number;
  readonly name: string;
  readonly criticality: number;
  readonly daysWon: number | null;
}

export interface ForecastGateView {
  readonly name: string;
  /** Its days and what holds them, in a sentence or two. */
  readonly says: string;
  readonly p10On: string;
  readonly p50On: string;
  readonly p80On: string;
  readonly p90On: string;
  readonly p50Band: [string, string];
  readonly p80Band: [string, string];
  readonly jobsOpen: number;
  readonly partsToCome: number;
  /** Runs by the day on which they reached the gate, in order of days. */
  readonly runsByDay: { readonly on: string; readonly runs: number }[];
  readonly heldBy: ForecastHolder[];
}

export interface ForecastAnswer {
  readonly answer: string;
  readonly runs: number;
  readonly seed: number;
  readonly beyondShare: number;
  readonly gates: ForecastGateView[];
  readonly coming: Omit<ComingPart, 'arrival' | 'vendor' | 'p50Days' | 'p80Days'>[];
  readonly gaps: ForecastGap[];
  readonly assumes: string[];
}

export interface ForecastChoice {
  /** Only this gate; all of the build's when left out. */
  readonly gate?: string | undefined;
  readonly runs: number;
  readonly seed: number;
  /** For how many of the most critical jobs and deliveries the days won are worked out; 12 when left out. */
  readonly daysWonFor?: number;
  /** What it is compared with: where nothing got harder since, no run comes later than there. */
  readonly comparedWith?: ForecastTask;
}

/** A forecast under way: `advance` and `progress` as of `startForecast`, and what can be said so far. */
export interface ForecastRun extends Pick<Forecast, 'advance' | 'progress'> {
  view(): ForecastAnswer;
}

/** What holds a gate is listed down to this share of runs. */
const leastCriticality = 0.01;

const assumes = [
  'Work left comes from the hours at best, likely and at worst, less the hours spent; where only one guess is given, at best three quarters of it and at worst twice.',
  'Deliveries of one vendor run late together, with a correlation of 0.3.',
  'Decisions, bolt groups, checks and the fitting of parts that belong to no job are not counted.',
];

const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/**
 * Begins the forecast of a build. Where there is nothing to run (nothing written down, or work and no hours), the view
 * says so and `advance` has nothing to do.
 * @throws Refusal `bad-input` for a gate that the build doesn't have, and as `startForecast` does.
 */
export function forecastRun({ facts, nowMinute }: ForecastTask, choice: ForecastChoice): ForecastRun {
  const gates = gatesOf(facts, choice.gate);
  const nothing = nothingToRun(facts);
  if (nothing !== null) {
    const { runs, seed } = choice;
    const view = { answer: nothing, runs, seed, beyondShare: 0, gates: [], coming: [], gaps: [...facts.gaps] };
    return { advance: () => false, progress: () => 1, view: () => ({ ...view, assumes: [] }) };
  }
  const { people, jobs, arrivals } = facts;
  const { comparedWith } = choice;
  const before =
    comparedWith !== undefined && isNoHarder({ facts, nowMinute }, comparedWith) ? comparedWith.facts : null;
  const keepable = before !== null && nothingToRun(before) === null ? keepableOf(before, gates, nowMinute) : undefined;
  const forecast = startForecast(
    { nowMinute, people, jobs, arrivals, gates },
    { ...choice, ...(keepable === undefined ? {} : { keepable }) },
  );
  return { ...forecast, view: () => forecastAnswer(facts, nowMinute, forecast.result()) };
}

/** The plan before, with the gates that are forecast now, in their order. */
function keepableOf(before: ForecastFacts, gates: readonly ForecastGate[], nowMinute: number): ForecastNetwork {
  const { people, jobs, arrivals } = before;
  const same = gates.flatMap(({ id }) => before.gates.find((gate) => gate.id === id) ?? []);
  return { nowMinute, people, jobs, arrivals, gates: same };
}

/** The whole forecast in one go. See `forecastRun`. */
export function wholeForecast(task: ForecastTask, choice: ForecastChoice): ForecastAnswer {
  const run = forecastRun(task, choice);
  while (run.advance(1000));
  return run.view();
}

/** The gates to forecast: a phase's gate that no open job stands before has no day, unless it is asked for. */
export function gatesOf(facts: ForecastFacts, asked: string | undefined): ForecastGate[] {
  const gates = facts.gates.filter(({ name, jobs }, index) =>
    asked === undefined ? index === 0 || jobs.length > 0 : name.toLowerCase() === asked.trim().toLowerCase(),
  );
  if (gates.length > 0) return gates;
  throw new Refusal('bad-input', `This build has no gate “${asked}”. Nothing was changed.`, {
    field: 'gate',
    accepted: facts.gates.map(({ name }) => name).join(', '),
  });
}

function nothingToRun(facts: ForecastFacts): string | null {
  if (!facts.anything) return 'Nothing is written down yet: jobs with a guess of hours and parts give a forecast.';
  const work = facts.jobs.filter(({ hands }) => hands).length;
  if (work === 0 || facts.people.some(({ time }) => hasWorkingTime(time))) return null;
  return `No forecast: ${counted(work, 'job needs', 'jobs need')} hands, and no free hours are set in the settings.`;
}

/** What a result says of the facts that it was run over. */
function forecastAnswer(facts: ForecastFacts, nowMinute: number, result: ForecastResult): ForecastAnswer {
  const gates = gateViews(facts, nowMinute, result);
  return {
    answer: gates[0]?.says ?? 'There is no gate to forecast.',
    runs: result.runs,
    seed: result.seed,
    beyondShare: result.beyondShare,
    gates,
    coming: facts.coming.map(({ arrival: _, vendor: __, p50Days: ___, p80Days: ____, ...row }) => row),
    gaps: [...facts.gaps],
    assumes: [workedBy(facts), ...assumes],
  };
}

function gateViews(facts: ForecastFacts, nowMinute: number, result: ForecastResult): ForecastGateView[] {
  // Work that fills a window up to midnight is done on the day that ends there.
  const toMidnight = worksToMidnight(facts.people);
  const last = nowMinute + daysAhead * minutesPerDay;
  const dayOf = (minute: number): string =>
    dateOfMinute(
      toMidnight && minute > nowMinute && minute % minutesPerDay === 0 ? minute - 1 : Math.min(minute, last),
    );
  const partOf = new Map(facts.coming.map(({ arrival, part }) => [arrival, part]));
  return result.gates.map((gate) => {
    const plan = facts.gates.find(({ id }) => id === gate.id);
    const wanted = new Set(plan?.jobs);
    const deliveries = new Set([
      ...(plan?.arrivals ?? []),
      ...facts.jobs.filter(({ id }) => wanted.has(id)).flatMap(({ arrivals }) => arrivals),
    ]);
    const view = {
      name: gate.name,
      p10On: dayOf(gate.p10Minute),
      p50On: dayOf(gate.p50Minute),
      p80On: dayOf(gate.p80Minute),
      p90On: dayOf(gate.p90Minute),
      jobsOpen: wanted.size,
      partsToCome: new Set([...deliveries].map((arrival) => partOf.get(arrival))).size,
      runsByDay: daysOf(gate, Math.floor(last / minutesPerDay)),
      heldBy: holdersOf(gate, partOf),
    } satisfies Omit<ForecastGateView, 'says' | 'p50Band' | 'p80Band'>;
    return {
      ...view,
      p50Band: [dayOf(gate.p50Band[0]), dayOf(gate.p50Band[1])],
      p80Band: [dayOf(gate.p80Band[0]), dayOf(gate.p80Band[1])],
      says: saysOf(view, facts.gaps.length),
    };
  });
}

/** Runs by day; those that lie beyond the last day looked ahead count on it. */
function daysOf({ runsByDay }: GateForecast, lastDay: number): ForecastGateView['runsByDay'] {
  const within = runsByDay.filter(({ day }) => day < lastDay);
  const beyond = runsByDay.filter(({ day }) => day >= lastDay).reduce((sum, { runs }) => sum + runs, 0);
  const days = beyond === 0 ? within : [...within, { day: lastDay, runs: beyond }];
  return days.map(({ day, runs }) => ({ on: dateOfDayNumber(day), runs }));
}

function holdersOf(gate: GateForecast, partOf: ReadonlyMap<string, number>): ForecastHolder[] {
  return gate.heldBy
    .filter(({ criticality }) => criticality >= leastCriticality)
    .map(({ kind, id, name, criticality, daysWon }) => ({
      kind: kind === 'job' ? 'job' : 'part',
      id: kind === 'job' ? Number(id) : (partOf.get(id) ?? 0),
      name,
      criticality,
      daysWon: daysWon === null ? null : Math.round(daysWon * 10) / 10,
    }));
}

type Said = Pick<ForecastGateView, 'name' | 'p50On' | 'p80On' | 'jobsOpen' | 'partsToCome' | 'heldBy'>;

function saysOf({ name, p50On, p80On, jobsOpen, partsToCome, heldBy }: Said, gaps: number): string {
  if (jobsOpen + partsToCome === 0) {
    return `No open job and no part still to come stands before ${name}, as far as it is written down.`;
  }
  const [holder] = heldBy;
  const named = holder === undefined ? '' : `${holder.kind === 'job' ? 'The job' : 'The part'} “${holder.name}”`;
  const held = holder === undefined ? '' : ` ${named} holds it in ${Math.round(holder.criticality * 100)} of 100 runs.`;
  const lacking = gaps === 0 ? '' : ` ${counted(gaps, 'thing')} lacked a guess or a day.`;
  return `${name}: as likely as not by ${dayWords(p50On)}, four times of five by ${dayWords(p80On)}.${held}${lacking}`;
}

/** Who does the work, and where their hours stand. */
function workedBy({ people }: ForecastFacts): string {
  const [only] = people;
  return people.length === 1 && only !== undefined
    ? `Work is done by one person${only.id === 'builder' ? '' : `, ${only.name},`} in the hours of the calendar.`
    : `Work is done by ${people.map(({ name }) => name).join(', ')}, each in their own hours of the calendar; a job that names nobody by who is free first.`;
}
