/**
 * A levelled schedule: jobs that share hands, a lift, a stand or a machine, none of which is ever used above what there
 * is. Priority rule: of the jobs whose earlier jobs are placed, the one of latest finish comes first, ties by smaller
 * id. The search that follows never makes that answer later.
 * Sources: serial scheme, Kolisch 1996; shifting right and left again (justification), Valls, Ballestín & Quintanilla
 * 2005. Terms and details from memory.
 */
import { compareIds, type NetworkJob, type OrderedJob, orderJobs, refusedJob } from './job-order.ts';
import { defaultPasses, type SearchJobs, searchStarts } from './levelling-search.ts';
import { networkDates } from './network.ts';

export interface LevelledJob extends NetworkJob {
  /** Whole amounts of the resources that it holds from start to finish. */
  readonly uses?: Readonly<Record<string, number>>;
}

export interface LevelledTime {
  readonly id: string;
  readonly start: number;
  readonly finish: number;
  /**
   * How far the job can move right without moving the finish, if no job begins before one that it follows now; jobs
   * behind it may have to move too.
   */
  readonly slack: number;
}

export interface LevelledSchedule {
  /** Last finish, from 0. */
  readonly makespan: number;
  /** No schedule ends sooner: the network's own finish, or all work of one resource at full use. */
  readonly bound: number;
  /** As the jobs were given. */
  readonly jobs: readonly LevelledTime[];
}

export interface LevellingOptions {
  readonly rule?: 'latest-finish' | 'latest-start';
  /**
   * How many times the serial scheme may run; 1 gives the priority rule alone. When left out, as many as take about a
   * tenth of a second of a present-day processor. The answer depends on this number, never on the clock.
   */
  readonly passes?: number;
  readonly seed?: number;
}

const needed = {
  uses: 'whole amounts, 0 or more, of listed resources, none above what there is',
  resources: 'whole amounts, 0 or more, by name',
};

/**
 * Levels jobs over resources. The same jobs, passes and seed give the same answer on every machine.
 * @param resources how much there is of each, by name; whole, 0 or more.
 * @throws Refusal `bad-input` as `orderJobs` does, and for a resource that isn't listed or is used above what there is.
 */
export function levelJobs(
  jobs: readonly LevelledJob[],
  resources: Readonly<Record<string, number>>,
  { rule = 'latest-finish', passes, seed = 1 }: LevellingOptions = {},
): LevelledSchedule {
  const ordered = orderJobs(jobs);
  const input = readJobs(ordered, resources);
  const { lateFinish, finish } = networkDates(ordered);
  const lateStart = lateFinish.map((late, at) => late - (input.durations[at] ?? 0));
  const bound = Math.max(finish, ...input.capacities.map((_, resource) => fullUse(input, resource)));
  const keys = rule === 'latest-start' ? [lateStart, lateFinish] : [lateFinish, lateStart];
  const found = searchStarts(input, { keys, bound, passes: passes ?? defaultPasses(ordered.length), seed });
  const place = new Map(ordered.map(({ job }, at) => [job.id, at]));
  return {
    makespan: found.makespan,
    bound,
    jobs: jobs.map(({ id, duration }) => {
      const at = place.get(id) ?? 0;
      const start = found.starts[at] ?? 0;
      return { id, start, finish: start + duration, slack: (found.latest[at] ?? 0) - start };
    }),
  };
}

function readJobs(
  ordered: readonly OrderedJob<LevelledJob>[],
  resources: Readonly<Record<string, number>>,
): SearchJobs {
  const names = Object.keys(resources);
  const capacities = names.map((name) => amount(resources[name], 'resources', `There can't be`, name));
  const needs = ordered.map(({ job }) => {
    const unknown = Object.keys(job.uses ?? {}).find((name) => !Object.hasOwn(resources, name));
    if (unknown !== undefined) {
      const reason = `Job “${job.id}” uses “${unknown}”, which is not among the resources.`;
      throw refusedJob('uses', reason, names.length === 0 ? needed.uses : `one of: ${names.join(', ')}`);
    }
    return names.map((name, index) => {
      const own = job.uses !== undefined && Object.hasOwn(job.uses, name) ? job.uses[name] : 0;
      const uses = amount(own, 'uses', `Job “${job.id}” can't use`, name);
      const most = capacities[index] ?? 0;
      if (uses <= most) return uses;
      throw refusedJob(
        'uses',
        `Job “${job.id}” uses ${uses} of “${name}”; there ${most === 1 ? 'is' : 'are'} ${most}.`,
        `0 to ${most}`,
      );
    });
  });
  const ids = ordered.map(({ job }) => job.id).sort(compareIds);
  const ranks = new Map(ids.map((id, rank) => [id, rank]));
  return {
    durations: ordered.map(({ duration }) => duration),
    notBefore: ordered.map(({ notBefore }) => notBefore),
    before: ordered.map(({ before }) => before),
    after: ordered.map(({ after }) => after),
    needs,
    capacities,
    ranks: ordered.map(({ job }) => ranks.get(job.id) ?? 0),
  };
}

function amount(value: number | undefined, field: 'uses' | 'resources', cant: string, name: string): number {
  if (value !== undefined && Number.isSafeInteger(value) && value >= 0) return value;
  throw refusedJob(field, `${cant} ${value} of “${name}”.`, needed[field]);
}

/** Time that all work of one resource takes when none of it is ever idle. */
function fullUse({ durations, needs, capacities }: SearchJobs, resource: number): number {
  const capacity = capacities[resource] ?? 0;
  const work = durations.reduce((sum, duration, at) => sum + duration * (needs[at]?.[resource] ?? 0), 0);
  return capacity === 0 ? 0 : Math.ceil(work / capacity);
}
