/**
 * How long it is from a job's start to the gate: the tail that stands behind a part once it has arrived. It is the gate
 * less the job's latest start in the network, or, where that is longer, all work that waits for the job at the pace of
 * those who work: few hands can't do two jobs at once. Work is laid out at the pace of an average week, so that a tail is
 * a length of time and not a date.
 * Source: critical path method, Kelley & Walker 1959; the bound by hands is the energy bound of textbooks on scheduling.
 */
import { networkTimes } from '../schedule/network.ts';

export interface TailJob {
  readonly id: string;
  /** Minutes left: of work where it takes hands, else on the clock. */
  readonly minutes: number;
  readonly hands: boolean;
  /** Days from today before which it can't begin; 0 when nothing holds it. */
  readonly notBeforeDays: number;
  readonly after: readonly { readonly job: string; readonly lagMinutes: number; readonly lagOn: 'clock' | 'work' }[];
}

export interface JobTails {
  /** Days from the job's latest start to the gate, by job. */
  readonly days: ReadonlyMap<string, number>;
  /** Days until the gate if every part lay here already: the longest chain, or all work one after the other. */
  readonly leastDays: number;
}

const minutesPerDay = 1440;
const minutesPerWeek = 7 * minutesPerDay;

/**
 * @param weekly working minutes of an average week: of the one who works most, for a chain is worked through by one at a
 * time, and of all together. With 0 nothing can be said of work, which then takes no time.
 * @throws Refusal `bad-input` for jobs that wait for each other.
 */
export function jobTails(jobs: readonly TailJob[], weekly: { readonly one: number; readonly all: number }): JobTails {
  const laidOut = (minutes: number, minutesAWeek: number): number =>
    minutesAWeek > 0 ? Math.round((minutes * minutesPerWeek) / minutesAWeek) : 0;
  const onClock = (minutes: number, isWork: boolean): number =>
    isWork ? laidOut(minutes, weekly.one) : Math.round(minutes);
  const listed = new Set(jobs.map(({ id }) => id));
  const times = networkTimes(
    jobs.map(({ id, minutes, hands, notBeforeDays, after }) => ({
      id,
      duration: onClock(minutes, hands),
      notBefore: Math.max(0, Math.round(notBeforeDays * minutesPerDay)),
      // Of two lags after one job both hold: the longer one counts.
      after: [...Map.groupBy(after, ({ job }) => job)]
        .filter(([job]) => listed.has(job))
        .map(([job, links]) => ({
          id: job,
          lag: Math.max(...links.map(({ lagMinutes, lagOn }) => onClock(lagMinutes, lagOn === 'work'))),
        })),
    })),
  );
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const later = Map.groupBy(
    jobs.flatMap(({ id, after }) => after.map(({ job }) => ({ job, id }))),
    ({ job }) => job,
  );
  const workOf = (ids: Iterable<string>): number =>
    [...ids].reduce((sum, id) => sum + (byId.get(id)?.hands === true ? (byId.get(id)?.minutes ?? 0) : 0), 0);
  /** A job and all that waits for it, one way or another. */
  const behind = (id: string): Set<string> => {
    const found = new Set([id]);
    for (const job of found) for (const next of later.get(job) ?? []) found.add(next.id);
    return found;
  };
  return {
    days: new Map(
      times.jobs.map(({ id, lateStart }) => [
        id,
        Math.max(times.finish - lateStart, laidOut(workOf(behind(id)), weekly.all)) / minutesPerDay,
      ]),
    ),
    leastDays: Math.max(times.finish, laidOut(workOf(byId.keys()), weekly.all)) / minutesPerDay,
  };
}
