/**
 * The serial scheme: jobs one after another in a given order, each at the first time at which its earlier jobs are over
 * and every resource is free for its whole duration. Source: Kolisch 1996 (serial schedule generation).
 */
import type { OrderedLink } from './job-order.ts';

/** Jobs by place; every resource's need by job and its capacity. Times are whole and from 0. */
export interface SchemeJobs {
  readonly durations: readonly number[];
  readonly notBefore: readonly number[];
  readonly before: readonly (readonly OrderedLink[])[];
  /** By job, then by resource. */
  readonly needs: readonly (readonly number[])[];
  readonly capacities: readonly number[];
}

/**
 * A placer over one set of jobs; its working arrays are kept from call to call, since a search calls it thousands of
 * times.
 * @returns a function that places jobs in the order given (earlier jobs first) and writes their starts; it returns the
 * last finish.
 */
export function serialScheme(jobs: SchemeJobs): (order: ArrayLike<number>, starts: Float64Array) => number {
  const count = jobs.durations.length;
  const resources = jobs.capacities.length;
  const durations = Float64Array.from(jobs.durations);
  const capacities = Float64Array.from(jobs.capacities);
  const needs = Float64Array.from(jobs.needs.flat());
  const needsAny = jobs.needs.map((need) => need.some((amount) => amount > 0));
  const links = jobs.before.flat();
  const linkAt = Int32Array.from(links, ({ at }) => at);
  const linkLag = Float64Array.from(links, ({ lag }) => lag);
  const linkFrom = new Int32Array(count + 1);
  jobs.before.forEach((before, job) => {
    linkFrom[job + 1] = (linkFrom[job] ?? 0) + before.length;
  });
  // Stretches of time between which use changes: stretch k lasts from times[k] to times[k + 1], the last for ever.
  const times = new Float64Array(2 * count + 2);
  const used = new Float64Array((2 * count + 2) * resources);
  let stretches = 1;

  const fits = (stretch: number, job: number): boolean => {
    for (let resource = 0; resource < resources; resource += 1) {
      const use = (used[stretch * resources + resource] ?? 0) + (needs[job * resources + resource] ?? 0);
      if (use > (capacities[resource] ?? 0)) return false;
    }
    return true;
  };

  /** The stretch that holds this time. @param from the stretch looked from; it begins no later. */
  const stretchAt = (time: number, from: number): number => {
    let low = from;
    let beyond = stretches;
    while (beyond - low > 1) {
      const middle = (low + beyond) >> 1;
      if ((times[middle] ?? 0) <= time) low = middle;
      else beyond = middle;
    }
    return low;
  };

  /** The stretch that begins at this time, cut out of the one that holds it. */
  const cut = (time: number, from: number): number => {
    const stretch = stretchAt(time, from);
    if (times[stretch] === time) return stretch;
    times.copyWithin(stretch + 2, stretch + 1, stretches);
    used.copyWithin((stretch + 1) * resources, stretch * resources, stretches * resources);
    times[stretch + 1] = time;
    stretches += 1;
    return stretch + 1;
  };

  const place = (job: number, soonest: number): number => {
    const duration = durations[job] ?? 0;
    if (duration === 0 || needsAny[job] !== true) return soonest;
    let start = soonest;
    let first = stretchAt(start, 0);
    for (let stretch = first; stretch < stretches; stretch += 1) {
      if (stretch > first && (times[stretch] ?? 0) >= start + duration) break;
      if (fits(stretch, job)) continue;
      // The last stretch is always free, so there is one after this.
      first = stretch + 1;
      start = times[first] ?? 0;
    }
    const from = cut(start, first);
    const to = cut(start + duration, from);
    for (let stretch = from; stretch < to; stretch += 1) {
      for (let resource = 0; resource < resources; resource += 1) {
        const at = stretch * resources + resource;
        used[at] = (used[at] ?? 0) + (needs[job * resources + resource] ?? 0);
      }
    }
    return start;
  };

  return (order, starts) => {
    stretches = 1;
    times[0] = 0;
    used.fill(0, 0, resources);
    let finish = 0;
    for (let index = 0; index < count; index += 1) {
      const job = order[index] ?? 0;
      let soonest = jobs.notBefore[job] ?? 0;
      for (let link = linkFrom[job] ?? 0, end = linkFrom[job + 1] ?? 0; link < end; link += 1) {
        const at = linkAt[link] ?? 0;
        soonest = Math.max(soonest, (starts[at] ?? 0) + (durations[at] ?? 0) + (linkLag[link] ?? 0));
      }
      const start = place(job, soonest);
      starts[job] = start;
      finish = Math.max(finish, start + (durations[job] ?? 0));
    }
    return finish;
  };
}
