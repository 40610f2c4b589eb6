import { minutesPerDay, startOfDay } from '../../dates/instant.ts';
import type { WorkingPerson } from '../../schedule/calendar.ts';
import { hasWorkingTime, placeWork } from '../../schedule/working-time.ts';
import type { JobRow } from './plan.ts';

/**
 * From when on a job may begin by the lags after jobs that are done. Of those only the day is known: the end of it
 * counts, or now.
 */
function lagsOver(
  job: JobRow,
  jobs: ReadonlyMap<number, JobRow>,
  people: readonly WorkingPerson[],
  now: number,
): number {
  const ends = job.lags.flatMap(({ job: id, minutes, on }) => {
    const before = jobs.get(id);
    if (before?.doneOn === undefined || before.doneOn === null || !job.earlier.includes(id)) return [];
    const from = Math.min(now, startOfDay(before.doneOn) + minutesPerDay);
    const [first] = people;
    // Like the lags of open jobs, those in hours of work run in the first person's.
    if (on === 'clock' || first === undefined || !hasWorkingTime(first.time)) return [from + minutes];
    return [placeWork(first.time, from, minutes).finish];
  });
  return Math.max(now, ...ends);
}

/** The first minute that a job may begin by its own day and by the waits after jobs that are done; `now` when it may. */
export function allowedFrom(
  job: JobRow,
  jobs: ReadonlyMap<number, JobRow>,
  people: readonly WorkingPerson[],
  now: number,
): number {
  return Math.max(lagsOver(job, jobs, people, now), job.notBefore === null ? now : startOfDay(job.notBefore));
}
