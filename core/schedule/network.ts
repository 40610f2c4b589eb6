/**
 * When jobs can begin and end if hands and tools are never short: the forward and the backward pass over the network.
 * Source: critical path method, Kelley & Walker 1959. Float here is only an upper bound once hands are shared; see
 * `levelledSlack`.
 */
import { type NetworkJob, type OrderedJob, orderJobs } from './job-order.ts';

/** What set a job's earliest start: the earlier job with its lag, its own earliest start, or nothing (`start`). */
export type HeldBy =
  | { readonly by: 'job'; readonly id: string; readonly lag: number }
  | { readonly by: 'notBefore' }
  | { readonly by: 'start' };

export interface JobTimes {
  readonly id: string;
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  /** How far the job can move without moving the finish; negative when the target can't be met. */
  readonly totalFloat: number;
  /** How far the job can move without moving any other job. */
  readonly freeFloat: number;
  readonly critical: boolean;
  /** All that tie. */
  readonly heldBy: readonly HeldBy[];
}

export interface NetworkTimes {
  readonly finish: number;
  /** In an order of work: no job before those that it waits for. */
  readonly jobs: readonly JobTimes[];
  /** The chain that holds the finish, first job first; of chains that tie, the one of smaller ids. */
  readonly criticalPath: readonly string[];
}

interface Dates {
  readonly earlyStart: readonly number[];
  readonly lateFinish: readonly number[];
  readonly finish: number;
}

/** Earliest starts and latest finishes of ordered jobs, by place. @param target the finish to count back from. */
export function networkDates(jobs: readonly OrderedJob<NetworkJob>[], target?: number): Dates {
  const earlyStart: number[] = [];
  let finish = 0;
  jobs.forEach(({ duration, notBefore, before }, at) => {
    const start = before.reduce(
      (latest, { at: from, lag }) => Math.max(latest, (earlyStart[from] ?? 0) + (jobs[from]?.duration ?? 0) + lag),
      notBefore,
    );
    earlyStart[at] = start;
    finish = Math.max(finish, start + duration);
  });
  const lateFinish: number[] = [];
  for (let at = jobs.length - 1; at >= 0; at -= 1) {
    lateFinish[at] = (jobs[at]?.after ?? []).reduce(
      (soonest, { at: to, lag }) => Math.min(soonest, (lateFinish[to] ?? 0) - (jobs[to]?.duration ?? 0) - lag),
      target ?? finish,
    );
  }
  return { earlyStart, lateFinish, finish };
}

/**
 * Early and late dates, floats and the critical path, in the caller's unit of time from 0.
 * @param target a finish to count back from; the network's own when left out. Float is negative when it is too soon.
 * @throws Refusal `bad-input` as `orderJobs` does.
 */
export function networkTimes(jobs: readonly NetworkJob[], target?: number): NetworkTimes {
  const ordered = orderJobs(jobs);
  const { earlyStart, lateFinish, finish } = networkDates(ordered, target);
  const start = (at: number): number => earlyStart[at] ?? 0;
  const end = (at: number): number => start(at) + (ordered[at]?.duration ?? 0);
  const times = ordered.map(({ job, duration, notBefore, before, after }, at): JobTimes => {
    const held: HeldBy[] = before
      .filter(({ at: from, lag }) => end(from) + lag === start(at))
      .map(({ at: from, lag }) => ({ by: 'job', id: ordered[from]?.job.id ?? '', lag }));
    if (notBefore === start(at) && notBefore > 0) held.push({ by: 'notBefore' });
    if (held.length === 0) held.push({ by: 'start' });
    const lateStart = (lateFinish[at] ?? 0) - duration;
    const totalFloat = lateStart - start(at);
    const next = Math.min(target ?? finish, ...after.map(({ at: to, lag }) => start(to) - lag));
    return {
      id: job.id,
      earlyStart: start(at),
      earlyFinish: end(at),
      lateStart,
      lateFinish: lateFinish[at] ?? 0,
      totalFloat,
      freeFloat: next - end(at),
      critical: totalFloat <= 0,
      heldBy: held,
    };
  });
  return { finish, jobs: times, criticalPath: criticalPath(ordered, start, end, finish) };
}

/** Back from the last finish, each time to the earlier job that set the start. */
function criticalPath(
  jobs: readonly OrderedJob<NetworkJob>[],
  start: (at: number) => number,
  end: (at: number) => number,
  finish: number,
): string[] {
  const path: string[] = [];
  // A job with no later one, where there is one: an empty end job belongs to the path.
  let at = jobs.findLastIndex(({ after }, place) => after.length === 0 && end(place) === finish);
  while (at >= 0) {
    path.push(jobs[at]?.job.id ?? '');
    at = Math.min(
      ...(jobs[at]?.before ?? []).filter(({ at: from, lag }) => end(from) + lag === start(at)).map((link) => link.at),
      Number.POSITIVE_INFINITY,
    );
    if (at === Number.POSITIVE_INFINITY) break;
  }
  return path.reverse();
}
