/**
 * When jobs can begin and end over the calendar if nobody and no tool is ever short: the two passes of `networkTimes`, with
 * work that flows through people's hours and waits that run on the clock. All instants are minutes of wall time.
 */
import { type WorkClock, workClock } from '../forecast/work-clock.ts';
import type { WorkingPerson } from './calendar.ts';
import { orderJobs } from './job-order.ts';
import { hasWorkingTime, type WorkingTime } from './working-time.ts';

export interface CalendarLink {
  readonly job: string;
  /** 0 or more; on the clock (a cure), or in the first person's working time. */
  readonly lagMinutes: number;
  readonly lagOn: 'clock' | 'work';
}

export interface CalendarJob {
  readonly id: string;
  /** Whole minutes left: of work when it takes hands, else on the clock. */
  readonly minutes: number;
  readonly hands: boolean;
  /** One that is longer than every window is split. */
  readonly oneSitting: boolean;
  /** Who does it; null: anyone. */
  readonly person: string | null;
  /** It can't begin before: a part's arrival, a tool's return, a day of its own. */
  readonly releaseMinute: number;
  readonly after: readonly CalendarLink[];
  /** Tools that it holds from start to finish; there is one of each. */
  readonly tools: readonly string[];
  /** Whether the gate waits for it. */
  readonly beforeGate: boolean;
}

export interface CalendarTimes {
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  /** Working minutes that it can move without moving the gate (or, behind the gate, the last finish); clock minutes without hands. */
  readonly floatMinutes: number;
  readonly critical: boolean;
}

/** A job's place in the calendar. */
export interface Placing {
  /** Place of the person in the list; -1 for none. */
  readonly who: number;
  readonly first: number;
  readonly finish: number;
}

/** Jobs in an order of work over people with hours, with the two ways of placing one. */
export interface CalendarNetwork {
  readonly jobs: readonly CalendarJob[];
  readonly now: number;
  readonly clocks: readonly WorkClock[];
  /** Links by place; `from` is the earlier job's. */
  readonly before: readonly (readonly { readonly from: number; readonly link: CalendarLink }[])[];
  readonly after: readonly (readonly { readonly to: number; readonly link: CalendarLink }[])[];
  /** Who may do each job, by place; empty for one without hands, or when nobody who may has hours. */
  readonly may: readonly (readonly number[])[];
  /** Begins at `ready` or as soon after it as this person's hours allow. */
  place(job: number, who: number, ready: number): Placing;
  /** The latest beginning that ends by `end`. */
  latest(job: number, who: number, end: number): number;
  /** When the wait after an earlier job that ends at `finish` is over. */
  over(link: CalendarLink, finish: number): number;
}

/**
 * Lays jobs out over people's hours.
 * @throws Refusal `bad-input` as `orderJobs` does: a ring is named with its path.
 */
export function calendarNetwork(
  given: readonly CalendarJob[],
  people: readonly WorkingPerson[],
  now: number,
): CalendarNetwork {
  const ordered = orderJobs(
    given.map((job) => ({
      id: job.id,
      duration: Math.round(job.minutes),
      after: job.after.map((link) => ({ id: link.job, lag: Math.round(link.lagMinutes) })),
      own: job,
    })),
  );
  const jobs = ordered.map(({ job }) => job.own);
  const place = new Map(jobs.map(({ id }, at) => [id, at]));
  const clocks = people.map(({ time }) => clockOf(time, now));
  const working = people.flatMap(({ time }, at) => (hasWorkingTime(time) ? [at] : []));
  const before = jobs.map(({ after }) => after.map((link) => ({ from: place.get(link.job) ?? 0, link })));
  const after: { to: number; link: CalendarLink }[][] = jobs.map(() => []);
  before.forEach((links, to) => {
    for (const { from, link } of links) after[from]?.push({ to, link });
  });
  const worked = (job: number): boolean => jobs[job]?.hands === true && (jobs[job]?.minutes ?? 0) > 0;
  const first = clocks[0];
  return {
    jobs,
    now,
    clocks,
    before,
    after,
    may: jobs.map(({ person }, at) =>
      !worked(at) ? [] : working.filter((who) => person === null || people[who]?.id === person),
    ),
    place(at, who, ready) {
      const job = jobs[at] as CalendarJob;
      const clock = clocks[who];
      if (!worked(at) || clock === undefined) return { who: -1, first: ready, finish: ready + job.minutes };
      let work = clock.workAt(ready);
      if (job.oneSitting) work = clock.sittingFrom(work, job.minutes);
      return { who, first: clock.startOf(work), finish: clock.finishOf(work + job.minutes) };
    },
    latest(at, who, end) {
      const job = jobs[at] as CalendarJob;
      const clock = clocks[who];
      if (!worked(at) || clock === undefined) return end - job.minutes;
      const work = Math.max(0, clock.workAt(end) - job.minutes);
      return clock.startOf(job.oneSitting ? lastSitting(clock, work, job.minutes) : work);
    },
    over(link, finish) {
      if (link.lagOn === 'clock' || first === undefined || link.lagMinutes === 0) return finish + link.lagMinutes;
      return first.finishOf(first.workAt(finish) + link.lagMinutes);
    },
  };
}

/** Laying out ten years of hours takes longer than a plan of a few jobs, and one plan asks for the same hours often. */
const laidOut = new WeakMap<WorkingTime, { readonly now: number; readonly clock: WorkClock }>();

function clockOf(time: WorkingTime, now: number): WorkClock {
  const known = laidOut.get(time);
  if (known?.now === now) return known.clock;
  const clock = workClock(time, now);
  laidOut.set(time, { now, clock });
  return clock;
}

/** The last place, at or before `work`, where a sitting of this length begins. */
function lastSitting(clock: WorkClock, work: number, length: number): number {
  let [low, high] = [0, work];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (clock.sittingFrom(middle, length) <= work) low = middle;
    else high = middle - 1;
  }
  return clock.sittingFrom(low, length);
}

/** Latest end of an earlier job that keeps a later one's start. */
export function latestEnd(network: CalendarNetwork, link: CalendarLink, laterStart: number): number {
  const first = network.clocks[0];
  if (link.lagOn === 'clock' || first === undefined || link.lagMinutes === 0) return laterStart - link.lagMinutes;
  return first.startOf(Math.max(0, first.workAt(laterStart) - link.lagMinutes));
}

/**
 * Early and late dates of every job by its place.
 * @param gateFrom the gate is not reached before this (a part that no job needs).
 */
export function calendarTimes(network: CalendarNetwork, gateFrom: number): CalendarTimes[] {
  const { jobs, now, may, before, after } = network;
  const early: Placing[] = [];
  jobs.forEach((job, at) => {
    const ready = (before[at] ?? []).reduce(
      (latest, { from, link }) => Math.max(latest, network.over(link, early[from]?.finish ?? now)),
      Math.max(now, job.releaseMinute),
    );
    const placings = (may[at]?.length === 0 ? [-1] : (may[at] ?? [])).map((who) => network.place(at, who, ready));
    early[at] = placings.reduce((best, one) => (one.finish < best.finish ? one : best));
  });
  const last = Math.max(gateFrom, now, ...early.map(({ finish }) => finish));
  const gate = early.reduce(
    (latest, { finish }, at) => (jobs[at]?.beforeGate === true ? Math.max(latest, finish) : latest),
    Math.max(gateFrom, now),
  );
  const times: CalendarTimes[] = [];
  const late: number[] = [];
  for (let at = jobs.length - 1; at >= 0; at -= 1) {
    const job = jobs[at] as CalendarJob;
    const end = (after[at] ?? []).reduce(
      (soonest, { to, link }) => Math.min(soonest, latestEnd(network, link, late[to] ?? last)),
      job.beforeGate ? gate : last,
    );
    const starts = (may[at]?.length === 0 ? [-1] : (may[at] ?? [])).map((who) => network.latest(at, who, end));
    late[at] = Math.max(...starts);
    const { who, first, finish } = early[at] as Placing;
    const clock = network.clocks[who];
    const lateStart = Math.max(first, late[at] ?? first);
    const floatMinutes = clock === undefined ? lateStart - first : clock.workAt(lateStart) - clock.workAt(first);
    times[at] = {
      earlyStart: first,
      earlyFinish: finish,
      lateStart,
      lateFinish: Math.max(finish, end),
      floatMinutes,
      critical: floatMinutes <= 0,
    };
  }
  return times;
}
