/**
 * The days of one builder: jobs one after another, each when it is ready, none interrupted by another. Running the
 * ready job of earliest release always gives the shortest finish when no job must be done in one sitting.
 * Source: Lawler's result for one machine with release dates and precedence.
 */
import { Refusal } from '../refusal.ts';
import { hasWorkingTime, placeWork, type WorkingTime } from './working-time.ts';

export interface BuilderJob {
  readonly id: string;
  /** Decides between jobs that are ready at the same minute. */
  readonly name: string;
  /** Minute of wall time from which the job may begin. */
  readonly readyMinute: number;
  /** Hands-on minutes; 0 takes no hands and is over as soon as it may begin. */
  readonly minutes: number;
  readonly oneSitting?: boolean;
  /** Ids of the jobs that must be finished first. */
  readonly after?: readonly string[];
  /** False: the minutes run on the clock and take no hands (a cure, a stay at the machine shop). True when left out. */
  readonly hands?: boolean;
  /** Waits after jobs named in `after`, on the clock or in working time. */
  readonly lags?: readonly { readonly after: string; readonly minutes: number; readonly on: 'clock' | 'work' }[];
}

export interface PlacedJob {
  readonly id: string;
  readonly firstMinute: number;
  readonly finishMinute: number;
}

/**
 * Places every job at or after `now`, by release (raised to that of the jobs before it), then name, then id.
 * @returns the jobs in the order they are begun; empty for no jobs.
 * @throws Refusal `bad-input` when jobs wait for each other (the ring is named), wait for a job that isn't listed, or
 * find no working time.
 */
export function placeJobs(jobs: readonly BuilderJob[], time: WorkingTime, now: number): PlacedJob[] {
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const release = releases(byId, now);
  if (jobs.some(waits)) return placeWhenReady(jobs, release, time, now);
  const order = [...jobs].sort(
    (a, b) => (release.get(a.id) ?? 0) - (release.get(b.id) ?? 0) || compare(a.name, b.name) || compare(a.id, b.id),
  );
  const finished = new Map<string, number>();
  const placed: PlacedJob[] = [];
  let handsFree = now;

  const place = (job: BuilderJob): void => {
    if (finished.has(job.id)) return;
    // Jobs before this one have releases no later than its own; a tie may still have sorted them behind it.
    for (const before of job.after ?? []) place(byId.get(before) as BuilderJob);
    const before = Math.max(...(job.after ?? []).map((id) => finished.get(id) ?? now), release.get(job.id) ?? now);
    const start = job.minutes === 0 ? before : Math.max(before, handsFree);
    const { first, finish } = placeWork(time, start, job.minutes, job.oneSitting);
    if (job.minutes > 0) handsFree = finish;
    finished.set(job.id, finish);
    placed.push({ id: job.id, firstMinute: first, finishMinute: finish });
  };
  for (const job of order) place(job);
  return placed;
}

const waits = ({ hands, lags }: BuilderJob): boolean => hands === false || (lags !== undefined && lags.length > 0);

/**
 * With waits on the way nothing can be told from releases alone: of the jobs whose earlier jobs are placed, the one that
 * can begin first is next, then by release, name and id. Without waits this is the order of `placeJobs`.
 */
function placeWhenReady(
  jobs: readonly BuilderJob[],
  release: ReadonlyMap<string, number>,
  time: WorkingTime,
  now: number,
): PlacedJob[] {
  const releaseOf = (job: BuilderJob): number => release.get(job.id) ?? 0;
  const order = jobs.toSorted((a, b) => releaseOf(a) - releaseOf(b) || compare(a.name, b.name) || compare(a.id, b.id));
  const isWork = ({ minutes, hands }: BuilderJob): boolean => minutes > 0 && hands !== false;
  const [work, waiting] = [new Set(order.filter(isWork)), new Set(order.filter((job) => !isWork(job)))];
  const finished = new Map<string, number>();
  const ready = new Map<string, number>();
  const placed: PlacedJob[] = [];
  let handsFree = now;
  const readyOf = (job: BuilderJob): number => {
    const known = ready.get(job.id);
    if (known !== undefined) return known;
    const after = job.after ?? [];
    if (after.some((id) => !finished.has(id))) return Number.POSITIVE_INFINITY;
    const ends = after.flatMap((id) => {
      const end = finished.get(id) ?? now;
      return [end, ...(job.lags ?? []).filter((lag) => lag.after === id).map((lag) => over(lag, end))];
    });
    const from = Math.max(now, job.readyMinute, ...ends);
    ready.set(job.id, from);
    return from;
  };
  const over = ({ minutes, on }: { minutes: number; on: 'clock' | 'work' }, end: number): number =>
    on === 'clock' || !hasWorkingTime(time) ? end + minutes : placeWork(time, end, minutes).finish;
  while (work.size + waiting.size > 0) {
    let next: BuilderJob | undefined;
    let start = Number.POSITIVE_INFINITY;
    for (const [left, free] of [[waiting, now] as const, [work, handsFree] as const]) {
      for (const job of left) {
        // Nothing behind it in the list can begin sooner.
        if (start <= Math.max(releaseOf(job), free)) break;
        const own = Math.max(readyOf(job), free);
        if (next === undefined || own < start) [next, start] = [job, own];
      }
    }
    const job = next as BuilderJob;
    work.delete(job);
    waiting.delete(job);
    const { first, finish } =
      job.hands === false
        ? { first: start, finish: start + job.minutes }
        : placeWork(time, start, job.minutes, job.oneSitting);
    if (job.minutes > 0 && job.hands !== false) handsFree = finish;
    finished.set(job.id, finish);
    placed.push({ id: job.id, firstMinute: first, finishMinute: finish });
  }
  return placed;
}

/** Every job's release: its own ready time, `now`, and the releases of all jobs before it, whichever is latest. */
function releases(byId: ReadonlyMap<string, BuilderJob>, now: number): Map<string, number> {
  const known = new Map<string, number>();
  const path: string[] = [];
  const visit = (id: string, asked: string): number => {
    const before = known.get(id);
    if (before !== undefined) return before;
    const job = byId.get(id);
    if (job === undefined) {
      throw refused(`“${byId.get(asked)?.name ?? asked}” waits for the job ${id}, which is not listed.`);
    }
    if (path.includes(id)) {
      const ring = [...path.slice(path.indexOf(id)), id].map((step) => byId.get(step)?.name ?? step);
      throw refused(`Jobs wait for each other: ${ring.join(' > ')}.`);
    }
    path.push(id);
    const latest = Math.max(now, job.readyMinute, ...(job.after ?? []).map((earlier) => visit(earlier, id)));
    path.pop();
    known.set(id, latest);
    return latest;
  };
  for (const id of byId.keys()) visit(id, id);
  return known;
}

function refused(reason: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, {
    field: 'earlier jobs',
    accepted: 'jobs of this build that do not wait for this one',
  });
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
