/**
 * Jobs that wait for each other, in an order in which each comes after all that it waits for. Jobs become numbers here
 * (their place in that order), so that what computes over them runs over arrays.
 */
import { Refusal } from '../refusal.ts';

/** An earlier job, and how long after its finish the later one may begin (a cure, a cool-down). */
export interface EarlierJob {
  readonly id: string;
  /** Whole units of time, 0 or more; 0 when left out. */
  readonly lag?: number;
}

export interface NetworkJob {
  readonly id: string;
  /** Whole units of time, 0 or more; the caller says which unit. */
  readonly duration: number;
  readonly after?: readonly (string | EarlierJob)[];
  /** Earliest start: a part's arrival, a tool's return, a day not to begin before; 0 when left out. */
  readonly notBefore?: number;
}

export interface OrderedLink {
  /** The other job's place in the order. */
  readonly at: number;
  readonly lag: number;
}

/** One job at its place in the order. */
export interface OrderedJob<J extends NetworkJob> {
  readonly job: J;
  readonly duration: number;
  readonly notBefore: number;
  readonly before: readonly OrderedLink[];
  readonly after: readonly OrderedLink[];
}

const accepted = {
  duration: 'a whole number from 0 to 1000000000000',
  lag: 'a whole number from 0 to 1000000000000; a job that may overlap an earlier one is two jobs',
  id: 'a name that no other job has',
  after: 'ids of jobs in the list that do not wait for this one',
};

/** Later sums of times stay exact below this. */
const longest = 1e12;

export function refusedJob(field: string, reason: string, takes: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted: takes });
}

/** @throws Refusal `bad-input` unless the time is a whole number from 0 to 10^12. */
function needTime(value: number, field: string, of: string, takes: string): number {
  if (Number.isInteger(value) && value >= 0 && value <= longest) return value;
  throw refusedJob(field, `The ${field} of ${of} can't be ${value}.`, takes);
}

/** Ids by number when they are numbers, and numbers before names: 2 before 10 before a. */
export function compareIds(a: string, b: string): number {
  const numbers = [/^\d+$/.test(a), /^\d+$/.test(b)];
  if (numbers[0] !== numbers[1]) return numbers[0] === true ? -1 : 1;
  return (numbers[0] === true ? Number(a) - Number(b) : 0) || (a < b ? -1 : a > b ? 1 : 0);
}

/**
 * Checks the jobs and orders them: earlier jobs first, else by id. Of two links between the same jobs the larger lag
 * holds.
 * @throws Refusal `bad-input` for an id that is empty or used twice, a duration, lag or earliest start that is not whole
 * or is negative, an earlier job that isn't listed, a job that waits for itself, or a ring (its path is named).
 */
export function orderJobs<J extends NetworkJob>(jobs: readonly J[]): OrderedJob<J>[] {
  const byId = new Map<string, J>();
  for (const job of jobs) {
    if (job.id === '') throw refusedJob('id', 'A job has no id.', accepted.id);
    if (byId.has(job.id)) throw refusedJob('id', `Two jobs have the id “${job.id}”.`, accepted.id);
    needTime(job.duration, 'duration', `job “${job.id}”`, accepted.duration);
    needTime(job.notBefore ?? 0, 'notBefore', `job “${job.id}”`, accepted.duration);
    byId.set(job.id, job);
  }
  const links = new Map([...byId.values()].map((job) => [job.id, readLinks(job, byId)]));
  const order = sortJobs([...byId.keys()].sort(compareIds), links);
  const place = new Map(order.map((id, at) => [id, at]));
  const after = order.map((): OrderedLink[] => []);
  const before = order.map((id, at) =>
    [...(links.get(id) ?? [])].map(([earlier, lag]) => {
      const from = place.get(earlier) as number;
      after[from]?.push({ at, lag });
      return { at: from, lag };
    }),
  );
  return order.map((id, at) => {
    const job = byId.get(id) as J;
    const { duration, notBefore = 0 } = job;
    return { job, duration, notBefore, before: before[at] ?? [], after: after[at] ?? [] };
  });
}

function readLinks(job: NetworkJob, byId: ReadonlyMap<string, NetworkJob>): Map<string, number> {
  const lags = new Map<string, number>();
  for (const link of job.after ?? []) {
    const { id, lag = 0 } = typeof link === 'string' ? { id: link } : link;
    if (!byId.has(id)) {
      throw refusedJob('after', `Job “${job.id}” waits for job “${id}”, which is not in the list.`, accepted.after);
    }
    if (id === job.id) throw refusedJob('after', `Job “${id}” waits for itself.`, accepted.after);
    needTime(lag, 'lag', `job “${job.id}” after job “${id}”`, accepted.lag);
    lags.set(id, Math.max(lag, lags.get(id) ?? 0));
  }
  return lags;
}

/** Earlier jobs first. Walks with its own stack, so that a chain of any length is sorted. */
function sortJobs(ids: readonly string[], links: ReadonlyMap<string, ReadonlyMap<string, number>>): string[] {
  const state = new Map<string, 'open' | 'done'>();
  const order: string[] = [];
  for (const first of ids) {
    if (state.has(first)) continue;
    const path = [{ id: first, rest: [...(links.get(first)?.keys() ?? [])].reverse() }];
    state.set(first, 'open');
    for (let step = path.at(-1); step !== undefined; step = path.at(-1)) {
      const next = step.rest.pop();
      if (next === undefined) {
        state.set(step.id, 'done');
        order.push(step.id);
        path.pop();
      } else if (state.get(next) === 'open') {
        const from = path.findIndex(({ id }) => id === next);
        throw ring(path.slice(from).map(({ id }) => id));
      } else if (!state.has(next)) {
        state.set(next, 'open');
        path.push({ id: next, rest: [...(links.get(next)?.keys() ?? [])].reverse() });
      }
    }
  }
  return order;
}

/** @param waits each job waits for the next, the last for the first; told the other way round, in order of work. */
function ring(waits: readonly string[]): Refusal {
  const work = [...waits].reverse();
  const start = work.indexOf([...work].sort(compareIds)[0] ?? '');
  const path = [...work.slice(start), ...work.slice(0, start)];
  path.push(path[0] ?? '');
  const shown = path.length > 12 ? [...path.slice(0, 9), '…', ...path.slice(-2)] : path;
  return new Refusal('bad-input', `Jobs wait for each other: ${shown.join(' > ')}. Nothing was changed.`, {
    field: 'after',
    accepted: accepted.after,
    detail: { path },
  });
}
