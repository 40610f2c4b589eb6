import type { PlanJob } from '../../../core/contract/plan.ts';
import type { PlanPhase } from './reading.ts';

/** Which jobs are shown. */
export type Shown = 'tonight' | 'open' | 'all';

/** Whether nothing that the workbook knows of stands in the job's way. */
export const canBeDone = (job: PlanJob): boolean => !job.done && job.waitsFor.length === 0;

/** Whether a job belongs to what is shown. */
export const isShown = (job: PlanJob, shown: Shown): boolean =>
  shown === 'all' || (shown === 'open' ? !job.done : canBeDone(job));

/**
 * The order after one step up (-1) or down (1): beside the neighbour that is seen, past those that are hidden. Null when
 * there is no neighbour in that direction.
 */
export function moveBeside(
  all: readonly number[],
  seen: readonly number[],
  id: number,
  step: -1 | 1,
): readonly number[] | null {
  const at = seen.indexOf(id);
  const neighbour = at === -1 ? undefined : seen[at + step];
  if (neighbour === undefined || !all.includes(id)) return null;
  const without = all.filter((other) => other !== id);
  const place = without.indexOf(neighbour) + (step === 1 ? 1 : 0);
  return without.toSpliced(place, 0, id);
}

/** Jobs or phases in the order that is wanted. */
export interface Order {
  readonly kind: 'job' | 'phase';
  readonly ids: readonly number[];
}

/** The phases with their jobs, or themselves, in the order wanted; what the order doesn't name keeps its place at the end. */
export function inOrder(phases: readonly PlanPhase[], { kind, ids }: Order): readonly PlanPhase[] {
  const places = new Map(ids.map((id, place) => [id, place]));
  const placeOf = (id: number | null): number => (id === null ? undefined : places.get(id)) ?? ids.length;
  if (kind === 'phase') return phases.toSorted((a, b) => placeOf(a.id) - placeOf(b.id));
  return phases.map((phase) =>
    phase.jobs.some(({ id }) => places.has(id))
      ? { ...phase, jobs: phase.jobs.toSorted((a, b) => placeOf(a.id) - placeOf(b.id)) }
      : phase,
  );
}

/** What one act can put in order. */
const mostAtOnce = 500;

/**
 * The jobs to put in order when one phase's order changes. The whole plan is sent, phase by phase, so that the work is also
 * reckoned in that order; a plan too long for one act sends the phase alone.
 */
export function jobsInOrder(phases: readonly PlanPhase[], phase: number | null, order: readonly number[]): number[] {
  const whole = phases.flatMap((one) => (one.id === phase ? [...order] : one.jobs.map(({ id }) => id)));
  return whole.length <= mostAtOnce ? whole : [...order];
}

/** The place in the order for a job that is added to a phase: after its last one, or after all. */
export function sortAfter(phases: readonly PlanPhase[], phase: number | null): number {
  const own = phases.find(({ id }) => id === phase)?.jobs.at(-1);
  if (own !== undefined) return own.sort + 1;
  return Math.max(0, ...phases.flatMap(({ jobs }) => jobs.map(({ sort }) => sort + 10)));
}
