/** What a forecast is made over: jobs, deliveries, people and gates; checked and laid out for many quick trials. */
import { Refusal } from '../refusal.ts';
import { hasWorkingTime, type WorkingTime } from '../schedule/working-time.ts';
import { type Distribution, moments, quantile, requireDistribution } from './distribution.ts';
import { type WorkClock, workClock } from './work-clock.ts';

export interface ForecastLink {
  readonly job: string;
  /** Zero or more; on the clock (a cure) or in the first person's working time. */
  readonly lagMinutes: number;
  readonly lagOn: 'clock' | 'work';
}

export interface ForecastJob {
  readonly id: string;
  readonly name: string;
  /** Minutes left: of work for a job that takes hands, else on the clock (a cure, a stay at the machine shop). */
  readonly minutes: Distribution;
  readonly hands: boolean;
  /** Whether the work must fit into one window; a draw longer than every window is split. */
  readonly oneSitting?: boolean;
  /** Who does it; null or left out: anyone. */
  readonly person?: string | null;
  /** Minute of wall time before which it can't begin (a tool's day, a decision). */
  readonly notBeforeMinute?: number;
  readonly after: readonly ForecastLink[];
  /** Ids of the deliveries it needs. */
  readonly arrivals: readonly string[];
}

export interface ForecastArrival {
  readonly id: string;
  readonly name: string;
  /** The minute that `days` counts from: now for a line that is open, the planned order for one that isn't placed. */
  readonly fromMinute: number;
  readonly days: Distribution;
  /** Deliveries of one vendor may run late together. */
  readonly vendor?: string | null;
}

export interface ForecastGate {
  readonly id: string;
  readonly name: string;
  readonly jobs: readonly string[];
  readonly arrivals?: readonly string[];
  /** A wished-for instant, to state the chance of meeting it. */
  readonly targetMinute?: number | null;
}

export interface ForecastPerson {
  readonly id: string;
  readonly time: WorkingTime;
}

export interface ForecastNetwork {
  readonly nowMinute: number;
  /** In order: who begins when several could. */
  readonly people: readonly ForecastPerson[];
  readonly jobs: readonly ForecastJob[];
  readonly arrivals: readonly ForecastArrival[];
  readonly gates: readonly ForecastGate[];
}

/** Jobs in order of urgency, so that the lower number goes first; links as flat lists. */
export interface CompiledNetwork {
  readonly now: number;
  readonly clocks: readonly WorkClock[];
  readonly jobs: readonly ForecastJob[];
  readonly arrivals: readonly ForecastArrival[];
  readonly gates: readonly { readonly jobs: Int32Array; readonly arrivals: Int32Array }[];
  readonly hands: Uint8Array;
  readonly oneSitting: Uint8Array;
  /** 0 anyone, else the person's place from 1. */
  readonly queue: Int32Array;
  readonly notBefore: Float64Array;
  readonly earlierCount: Int32Array;
  readonly laterFrom: Int32Array;
  readonly laterJob: Int32Array;
  readonly laterLag: Float64Array;
  readonly laterLagIsWork: Uint8Array;
  readonly needFrom: Int32Array;
  readonly need: Int32Array;
}

const minutesPerWeek = 10080;

/**
 * Checks a network and lays it out. Among jobs that could begin, the one with the longest way to the first gate goes
 * first; jobs that lead to no gate go last.
 * @throws Refusal `bad-input` for an id entered twice, a link to what isn't listed, jobs that wait for each other (the
 * ring is named), a lag below zero, no gate, or work without working time.
 */
export function compileNetwork(network: ForecastNetwork): CompiledNetwork {
  for (const job of network.jobs) requireDistribution(job.minutes, `time left of “${job.name}”`);
  for (const arrival of network.arrivals) requireDistribution(arrival.days, `wait for “${arrival.name}”`);
  const order = sequence(network.jobs);
  const clocks = network.people.map((person) => workClock(person.time, network.nowMinute));
  checkHands(network);
  const jobs = byUrgency(network, order, clocks);
  const place = places(jobs, 'job');
  const arrivalPlace = places(network.arrivals, 'arrival');
  places(network.gates, 'gate');
  const personPlace = places(network.people, 'person');
  if (network.gates.length === 0) throw refused('gates', 'There is no gate to forecast.', 'at least one gate');

  const find = (known: ReadonlyMap<string, number>, id: string, what: string, by: string): number => {
    const at = known.get(id);
    if (at === undefined)
      throw refused(what, `“${by}” names the ${what} ${id}, which is not listed.`, `a listed ${what}`);
    return at;
  };
  const later: { job: number; lag: number; isWork: boolean }[][] = jobs.map(() => []);
  jobs.forEach((job, index) => {
    for (const link of job.after) {
      const from = find(place, link.job, 'earlier job', job.name);
      later[from]?.push({ job: index, lag: link.lagMinutes, isWork: link.lagOn === 'work' && link.lagMinutes > 0 });
    }
  });
  const needs = jobs.map((job) => job.arrivals.map((id) => find(arrivalPlace, id, 'arrival', job.name)));
  const flat = later.flat();
  return {
    now: network.nowMinute,
    clocks,
    jobs,
    arrivals: network.arrivals,
    gates: network.gates.map((gate) => ({
      jobs: Int32Array.from(gate.jobs, (id) => find(place, id, 'job', gate.name)),
      arrivals: Int32Array.from(gate.arrivals ?? [], (id) => find(arrivalPlace, id, 'arrival', gate.name)),
    })),
    hands: Uint8Array.from(jobs, (job) => (job.hands ? 1 : 0)),
    oneSitting: Uint8Array.from(jobs, (job) => (job.oneSitting === true ? 1 : 0)),
    queue: Int32Array.from(jobs, (job) =>
      job.person === undefined || job.person === null ? 0 : find(personPlace, job.person, 'person', job.name) + 1,
    ),
    notBefore: Float64Array.from(jobs, (job) => Math.max(network.nowMinute, job.notBeforeMinute ?? network.nowMinute)),
    earlierCount: Int32Array.from(jobs, (job) => job.after.length),
    laterFrom: offsets(later),
    laterJob: Int32Array.from(flat, (link) => link.job),
    laterLag: Float64Array.from(flat, (link) => link.lag),
    laterLagIsWork: Uint8Array.from(flat, (link) => (link.isWork ? 1 : 0)),
    needFrom: offsets(needs),
    need: Int32Array.from(needs.flat()),
  };
}

function offsets(lists: readonly (readonly unknown[])[]): Int32Array {
  const from = new Int32Array(lists.length + 1);
  lists.forEach((list, index) => {
    from[index + 1] = (from[index] as number) + list.length;
  });
  return from;
}

function places(records: readonly { readonly id: string }[], what: string): Map<string, number> {
  const place = new Map<string, number>();
  records.forEach((record, index) => {
    if (place.has(record.id)) throw refused(what, `The ${what} ${record.id} is listed twice.`, 'each id once');
    place.set(record.id, index);
  });
  return place;
}

function checkHands(network: ForecastNetwork): void {
  const anyone = network.people.some((person) => hasWorkingTime(person.time));
  for (const job of network.jobs) {
    if (!job.hands) continue;
    const who = job.person ?? null;
    const person = network.people.find((each) => each.id === who);
    if (who === null ? !anyone : person !== undefined && !hasWorkingTime(person.time)) {
      throw refused('working time', `“${job.name}” needs hands, and there is no working time.`, 'at least one window');
    }
  }
}

/** Jobs, earlier before later. */
function sequence(jobs: readonly ForecastJob[]): ForecastJob[] {
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const done = new Set<string>();
  const ordered: ForecastJob[] = [];
  for (const first of jobs) {
    // A path of its own rather than recursion: chains of thousands of jobs are no reason to fail.
    const path: { job: ForecastJob; next: number }[] = done.has(first.id) ? [] : [{ job: first, next: 0 }];
    const onPath = new Set<string>([first.id]);
    for (let step = path.at(-1); step !== undefined; step = path.at(-1)) {
      const link = step.job.after[step.next];
      step.next += 1;
      if (link === undefined) {
        path.pop();
        onPath.delete(step.job.id);
        done.add(step.job.id);
        ordered.push(step.job);
        continue;
      }
      if (!(link.lagMinutes >= 0)) {
        throw refused('lag', `“${step.job.name}” has a lag of ${link.lagMinutes} minutes.`, 'a lag of 0 or more');
      }
      const earlier = byId.get(link.job);
      if (earlier === undefined || done.has(earlier.id)) continue;
      if (onPath.has(earlier.id)) {
        const ring = path.slice(path.findIndex((each) => each.job.id === earlier.id)).map((each) => each.job.name);
        throw refused(
          'earlier jobs',
          `Jobs wait for each other: ${[...ring, earlier.name].reverse().join(' > ')}.`,
          'jobs that do not wait for this one',
        );
      }
      onPath.add(earlier.id);
      path.push({ job: earlier, next: 0 });
    }
  }
  return ordered;
}

/** Sorted by expected clock minutes from a job's start to the first gate, longest first. */
function byUrgency(
  network: ForecastNetwork,
  order: readonly ForecastJob[],
  clocks: readonly WorkClock[],
): ForecastJob[] {
  const perWeek = clocks[0]?.perWeek ?? 0;
  const stretch = perWeek > 0 ? minutesPerWeek / perWeek : 1;
  const tails = new Map<string, number>();
  network.gates.forEach((gate, index) => {
    for (const id of gate.jobs) if (index === 0 || !tails.has(id)) tails.set(id, index === 0 ? 0 : -1e12);
  });
  for (const job of order.toReversed()) {
    const after = tails.get(job.id) ?? -1e15;
    const whole = after + expected(job.minutes) * (job.hands ? stretch : 1);
    tails.set(job.id, whole);
    for (const link of job.after) {
      const through = whole + link.lagMinutes * (link.lagOn === 'work' ? stretch : 1);
      tails.set(link.job, Math.max(tails.get(link.job) ?? -1e15, through));
    }
  }
  const listed = new Map(network.jobs.map((job, index) => [job.id, index]));
  return [...network.jobs].sort(
    (a, b) => (tails.get(b.id) ?? 0) - (tails.get(a.id) ?? 0) || (listed.get(a.id) ?? 0) - (listed.get(b.id) ?? 0),
  );
}

function expected(distribution: Distribution): number {
  return moments(distribution)?.mean ?? quantile(distribution, 0.5);
}

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}
