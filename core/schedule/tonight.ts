/**
 * What can be done with some hours at the bench: which jobs go first by what they do for the date, which of them fill the
 * hours, and what would let the next ones begin. Our own rule, stated in `tonightRule`; no published source.
 */

/** Something other than an earlier job that a job waits for. */
export interface Want {
  readonly kind: 'part' | 'tool';
  readonly id: number;
}

/** An open job as this rule sees it. */
export interface BenchJob {
  readonly id: number;
  /** Whole minutes still to work, 0 or more; null when nobody has guessed, or the guess is used up. */
  readonly minutesLeft: number | null;
  /** Earlier jobs that are not done. */
  readonly earlier: readonly number[];
  readonly wants: readonly Want[];
  /** Its place on the hoist check's list from 0, and the days the gate gains by it; null when it isn't on the list. */
  readonly hold: { readonly place: number; readonly daysGained: number } | null;
  /** The smallest (most urgent) priority of its parts; 9 without one. */
  readonly priority: number;
  readonly sort: number;
  /** False while the place, a day of its own or a wait after a job that is done forbids it in this session. */
  readonly allowed: boolean;
  /** Those of `earlier` after which time must pass first, so that it isn't begun in the session that ends them. */
  readonly waitAfter: readonly number[];
  /** Taken whole or not at all. */
  readonly oneSitting: boolean;
  /** False for a cure or a stay at the machine shop: it is set going, and takes none of the hours. */
  readonly hands: boolean;
  /** Somebody is at it already, so it goes before all others. */
  readonly running: boolean;
}

/** One job of the plan, in the order of work. */
export interface BenchTurn {
  readonly id: number;
  /** Minutes from the beginning of the session, and the minutes worked on it. */
  readonly from: number;
  readonly minutes: number;
  /** Whether it is finished in the session. */
  readonly whole: boolean;
}

/** Things that together let jobs begin, best first. */
export interface Unlock {
  readonly wants: readonly Want[];
  readonly jobs: readonly number[];
}

export interface Tonight {
  readonly turns: readonly BenchTurn[];
  /** Jobs that can begin now, best first. */
  readonly ready: readonly number[];
  readonly unlocks: readonly Unlock[];
  /** Hours that no job fills. */
  readonly minutesOver: number;
  /** How many jobs wait for each, directly or through others. */
  readonly waiting: ReadonlyMap<number, number>;
}

/** The rule in words, for the page and the command line. */
export const tonightRule =
  'What somebody is at goes first. Then best first: the days that the hoist check gains, then jobs that stand before it, then how many jobs wait for it, then ' +
  'its place on the hoist check, then priority and the order of the plan. Each job that still fits is taken whole, also ' +
  'one that only waits for a job taken before it; what is left of the hours begins the best of the others, unless it must ' +
  'be done in one sitting. What runs without hands is set going and takes no hours.';

/** All jobs that wait for each, directly or through others; a ring is walked once. */
function waitingFor(jobs: readonly BenchJob[]): Map<number, number> {
  const after = new Map<number, number[]>();
  for (const { id, earlier } of jobs)
    for (const before of earlier) after.set(before, [...(after.get(before) ?? []), id]);
  return new Map(
    jobs.map(({ id }) => {
      const seen = new Set<number>();
      const open = [...(after.get(id) ?? [])];
      for (let next = open.pop(); next !== undefined; next = open.pop()) {
        if (next === id || seen.has(next)) continue;
        seen.add(next);
        open.push(...(after.get(next) ?? []));
      }
      return [id, seen.size];
    }),
  );
}

function bestFirst(waiting: ReadonlyMap<number, number>): (one: BenchJob, other: BenchJob) => number {
  const last = Number.MAX_SAFE_INTEGER;
  return (one, other) =>
    Number(other.running) - Number(one.running) ||
    (other.hold?.daysGained ?? 0) - (one.hold?.daysGained ?? 0) ||
    Number(one.hold === null) - Number(other.hold === null) ||
    (waiting.get(other.id) ?? 0) - (waiting.get(one.id) ?? 0) ||
    (one.hold?.place ?? last) - (other.hold?.place ?? last) ||
    one.priority - other.priority ||
    one.sort - other.sort ||
    one.id - other.id;
}

/**
 * Plans a session.
 * @param jobs all open jobs of the build.
 * @param minutes length of the session, whole, 0 or more.
 */
export function planTonight(jobs: readonly BenchJob[], minutes: number): Tonight {
  const waiting = waitingFor(jobs);
  const ranked = jobs.toSorted(bestFirst(waiting));
  const taken = new Set<number>();
  const turns: BenchTurn[] = [];
  let from = 0;
  // A job may begin once all that it waits for was taken, so each one taken can let others in: begin again from the best.
  const setGoing = new Set<number>();
  const mayBegin = ({ id, allowed, wants, earlier, waitAfter }: BenchJob): boolean =>
    allowed &&
    !taken.has(id) &&
    !setGoing.has(id) &&
    wants.length === 0 &&
    earlier.every((before) => taken.has(before) && !waitAfter.includes(before));
  const fits = ({ hands, minutesLeft }: BenchJob): boolean =>
    !hands || (minutesLeft !== null && from + minutesLeft <= minutes);
  const best = (): BenchJob | undefined => ranked.find((job) => mayBegin(job) && fits(job));
  for (let next = minutes > 0 ? best() : undefined; next !== undefined; next = best()) {
    const { id, hands, minutesLeft } = next;
    turns.push({ id, from, minutes: hands ? (minutesLeft ?? 0) : 0, whole: hands });
    if (hands) from += minutesLeft ?? 0;
    (hands ? taken : setGoing).add(id);
  }
  const begun =
    from < minutes
      ? ranked.find((job) => mayBegin(job) && job.minutesLeft !== null && !job.oneSitting && job.hands)
      : undefined;
  if (begun !== undefined) {
    turns.push({ id: begun.id, from, minutes: minutes - from, whole: false });
    from = minutes;
  }
  return {
    turns,
    ready: ranked
      .filter(({ allowed, wants, earlier }) => allowed && wants.length + earlier.length === 0)
      .map(({ id }) => id),
    unlocks: unlocksOf(ranked),
    minutesOver: minutes - from,
    waiting,
  };
}

/** Jobs that lack only parts or tools, put together by what they lack: the fewest things first, then the best job. */
function unlocksOf(ranked: readonly BenchJob[]): Unlock[] {
  const lacking = ranked.filter(({ allowed, wants, earlier }) => allowed && wants.length > 0 && earlier.length === 0);
  const together = Map.groupBy(lacking, ({ wants }) =>
    wants
      .map(({ kind, id }) => `${kind} ${id}`)
      .sort()
      .join(', '),
  );
  return [...together.values()]
    .map((group) => ({ wants: group[0]?.wants ?? [], jobs: group.map(({ id }) => id) }))
    .sort((one, other) => one.wants.length - other.wants.length);
}
