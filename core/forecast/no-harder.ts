/** Whether a plan can be kept as it was: what is compared then never comes later by the luck of a sequence alone. */
import { isWider } from '../schedule/calendar.ts';
import { longestWindow } from '../schedule/working-time.ts';
import { quantile } from './distribution.ts';
import type { ForecastTask } from './facts.ts';
import type { ForecastJob } from './network.ts';

/**
 * Whether everything that could be done before can be done now, at the same instants or sooner: the same work or less of
 * it, nothing more to wait for, and the same people with the same hours or more. In every run with the same luck, the
 * course of the one before then stays open.
 */
export function isNoHarder(now: ForecastTask, before: ForecastTask): boolean {
  const people = new Map(now.facts.people.map((person) => [person.id, person]));
  const jobs = new Map(before.facts.jobs.map((job) => [job.id, job]));
  const gates = new Map(before.facts.gates.map((gate) => [gate.id, gate]));
  const arrivals = new Map(before.facts.arrivals.map((arrival) => [arrival.id, arrival]));
  return (
    now.nowMinute === before.nowMinute &&
    // Waits in hours of work run in the first person's.
    now.facts.people[0]?.id === before.facts.people[0]?.id &&
    before.facts.people.every(({ id, time }) => {
      const same = people.get(id);
      return same !== undefined && isWider(same.time, time);
    }) &&
    now.facts.gates.every(({ id, jobs: own, arrivals: parts = [] }) => {
      const gate = gates.get(id);
      return gate !== undefined && isWithin(own, gate.jobs) && isWithin(parts, gate.arrivals ?? []);
    }) &&
    now.facts.arrivals.every((arrival) => isSame(arrival, arrivals.get(arrival.id))) &&
    now.facts.jobs.every((job) => {
      const was = jobs.get(job.id);
      return was !== undefined && jobIsNoHarder(job, was, before.nowMinute) && fitsOneSitting(was, before);
    })
  );
}

function jobIsNoHarder(job: ForecastJob, was: ForecastJob, nowMinute: number): boolean {
  return (
    isSame(job.minutes, was.minutes) &&
    job.hands === was.hands &&
    (job.oneSitting !== true || was.oneSitting === true) &&
    (job.person == null || job.person === was.person) &&
    (job.notBeforeMinute ?? nowMinute) <= Math.max(nowMinute, was.notBeforeMinute ?? nowMinute) &&
    isWithin(job.arrivals, was.arrivals) &&
    job.after.every((link) =>
      was.after.some(
        (other) => other.job === link.job && other.lagOn === link.lagOn && other.lagMinutes >= link.lagMinutes,
      ),
    )
  );
}

/** A sitting longer than every window is split, and no longer where a window takes it whole: that can come later. */
function fitsOneSitting(job: ForecastJob, { facts, nowMinute }: ForecastTask): boolean {
  if (job.oneSitting !== true || !job.hands) return true;
  const longest = facts.people
    .filter(({ id }) => job.person == null || id === job.person)
    .map(({ time }) => longestWindow(time, nowMinute));
  return quantile(job.minutes, 1) <= Math.min(...longest);
}

const isWithin = (few: readonly string[], many: readonly string[]): boolean => {
  const known = new Set(many);
  return few.every((id) => known.has(id));
};

const isSame = (one: object, other: object | undefined): boolean => JSON.stringify(one) === JSON.stringify(other);
