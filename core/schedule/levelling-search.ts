/**
 * Looks for an order of jobs that the serial scheme turns into a shorter schedule: sampled orders, each shifted right
 * and left again, then orders put together from two good ones. Fixed seed, fixed number of runs, no clock.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { OrderedLink } from './job-order.ts';
import { type SchemeJobs, serialScheme } from './serial-scheme.ts';

export interface SearchJobs extends SchemeJobs {
  readonly after: readonly (readonly OrderedLink[])[];
  /** Each job's place by id, which decides ties. */
  readonly ranks: readonly number[];
}

interface Plan {
  readonly starts: Float64Array;
  readonly makespan: number;
  /** Jobs by start. */
  readonly order: readonly number[];
}

export interface Search {
  /** Priority rules, best trusted first; smaller comes first. */
  readonly keys: readonly (readonly number[])[];
  /** A finish that can't be bettered: the search stops there. */
  readonly bound: number;
  readonly passes: number;
  readonly seed: number;
}

/** Plans kept to make others from. */
const kept = 50;

/** Of so many neighbours in a new order one pair is changed about. */
const nudgeOneIn = 10;

/**
 * Runs that take about a tenth of a second, or a few for very many jobs: the cost of one grows with their number, and
 * with its square beyond a thousand.
 */
export function defaultPasses(jobs: number): number {
  const linear = 120_000 / Math.max(1, jobs);
  return Math.max(3, Math.min(2500, Math.round(linear * Math.min(1, 1000 / Math.max(1, jobs)))));
}

/** The best starts found, and the latest starts that keep their sequence and finish. */
export function searchStarts(
  jobs: SearchJobs,
  { keys, bound, passes, seed }: Search,
): { starts: Float64Array; latest: Float64Array; makespan: number } {
  const count = jobs.durations.length;
  const duration = (job: number): number => jobs.durations[job] ?? 0;
  const forward = serialScheme(jobs);
  const backward = serialScheme({ ...jobs, before: jobs.after, notBefore: jobs.durations.map(() => 0) });
  const random = xoroshiro128plus(seed);
  const below = (limit: number): number => uniformInt(random, 0, limit - 1);
  let left = Math.max(1, passes);

  const plan = (order: ArrayLike<number>): Plan => {
    left -= 1;
    const starts = new Float64Array(count);
    const makespan = forward(order, starts);
    return { starts, makespan, order: byStart(starts, Array.from(order)) };
  };
  /**
   * Places are in order of work, so that jobs of no length still follow those that they wait for.
   * @param near an order that is nearly this one, which is sorted sooner; it is overwritten.
   */
  const byStart = (starts: Float64Array, near: number[]): number[] =>
    near.sort((a, b) => (starts[a] ?? 0) - (starts[b] ?? 0) || a - b);

  /** Every job as late as its later ones allow, last finish first; no start becomes earlier by it. */
  const shiftRight = ({ starts, makespan, order: placed }: Plan): Float64Array => {
    const ends = starts.map((start, job) => start + duration(job));
    const order = placed.toReversed().sort((a, b) => (ends[b] ?? 0) - (ends[a] ?? 0) || b - a);
    const mirrored = new Float64Array(count);
    backward(order, mirrored);
    return mirrored.map((start, job) => makespan - start - duration(job));
  };
  const justify = (from: Plan): Plan => {
    left -= 1;
    return plan(byStart(shiftRight(from), [...from.order]));
  };

  const first = keys.map((key, index) => (index === 0 || left > 0 ? plan(byPriority(jobs, key)) : undefined));
  let best = first[0] as Plan;
  let plans: Plan[] = [];
  const keep = (one: Plan): void => {
    const better = one.makespan > bound && left >= 2 ? justify(one) : one;
    if (better.makespan < best.makespan) best = better;
    if (plans.some(({ order }) => order.every((job, index) => job === better.order[index]))) return;
    plans.push(better);
    plans.sort((a, b) => a.makespan - b.makespan);
    if (plans.length > kept) plans.pop();
  };
  const going = (): boolean => left >= 3 && best.makespan > bound;

  for (const one of first) if (one !== undefined) keep(one);
  const starters = plans;
  while (going()) {
    // A fresh set of plans when the last one has stopped getting better.
    plans = [...starters];
    for (let sample = 0; sample < kept && going(); sample += 1) {
      keep(plan(sampled(jobs, keys[sample % keys.length] ?? [], below)));
    }
    let idle = 0;
    for (let shortest = best.makespan; idle < 20 * kept && going(); idle += 1) {
      keep(plan(nudged(jobs, crossed(plans, below), below)));
      if (best.makespan < shortest) {
        shortest = best.makespan;
        idle = 0;
      }
    }
  }
  return { starts: best.starts, latest: shiftRight(best), makespan: best.makespan };
}

/** Jobs by key, each after its earlier ones; ties by id. */
function byPriority(jobs: SearchJobs, key: readonly number[]): number[] {
  const before = (a: number, b: number): number =>
    (key[a] ?? 0) - (key[b] ?? 0) || (jobs.ranks[a] ?? 0) - (jobs.ranks[b] ?? 0);
  return choosing(jobs, (ready) =>
    ready.reduce((best, job, index) => (before(job, ready[best] ?? 0) < 0 ? index : best), 0),
  );
}

/** Jobs by key most of the time: of two or three drawn from those that are ready, the one of the smallest key. */
function sampled(jobs: SearchJobs, key: readonly number[], below: (limit: number) => number): number[] {
  return choosing(jobs, (ready) => {
    let best = below(ready.length);
    for (let draw = 0; draw < 2; draw += 1) {
      const other = below(ready.length);
      if ((key[ready[other] ?? 0] ?? 0) < (key[ready[best] ?? 0] ?? 0)) best = other;
    }
    return best;
  });
}

function choosing(jobs: SearchJobs, choose: (ready: readonly number[]) => number): number[] {
  const waiting = jobs.before.map((before) => before.length);
  const ready = waiting.flatMap((links, job) => (links === 0 ? [job] : []));
  const order: number[] = [];
  while (ready.length > 0) {
    const [job = 0] = ready.splice(choose(ready), 1);
    order.push(job);
    for (const { at } of jobs.after[job] ?? []) {
      waiting[at] = (waiting[at] ?? 0) - 1;
      if (waiting[at] === 0) ready.push(at);
    }
  }
  return order;
}

/**
 * The order of one plan with a stretch in the order of another; either parent keeps earlier jobs first, so the child
 * does. Source: two-point crossover of activity lists, Hartmann 1998.
 */
function crossed(plans: readonly Plan[], below: (limit: number) => number): number[] {
  // Better plans stand in front and are drawn more often.
  const draw = (): Plan => plans[Math.min(below(plans.length), below(plans.length))] as Plan;
  const [one, other] = [draw().order, draw().order];
  const [a, b] = [below(one.length + 1), below(one.length + 1)];
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  const child = one.slice(0, from);
  const taken = new Set(child);
  const take = (list: readonly number[], until: number): void => {
    for (const job of list) {
      if (child.length >= until) return;
      if (taken.has(job)) continue;
      taken.add(job);
      child.push(job);
    }
  };
  take(other, to);
  take(one, one.length);
  return child;
}

/** Some neighbours changed about, where the later doesn't wait for the earlier: keeps the plans from becoming alike. */
function nudged(jobs: SearchJobs, order: number[], below: (limit: number) => number): number[] {
  for (let index = 1; index < order.length; index += 1) {
    if (below(nudgeOneIn) > 0) continue;
    const [earlier = 0, later = 0] = [order[index - 1], order[index]];
    if (jobs.before[later]?.some(({ at }) => at === earlier) === true) continue;
    order[index - 1] = later;
    order[index] = earlier;
  }
  return order;
}
