import { useEffect, useEffectEvent, useRef } from 'react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import { useRoute } from '../../app/route.tsx';

export const jobPlace = (id: number): string => `job-${id}`;
export const phasePlace = (id: number | null): string => `phase-${id ?? 'none'}`;

/** Bring a job or phase into view and put the focus on it; says whether it is there. */
export function focusPlace(id: string): boolean {
  const place = document.getElementById(id);
  if (place === null) return false;
  place.scrollIntoView({ block: 'center' });
  place.focus({ preventScroll: true });
  return true;
}

/**
 * Honours `/plan?job=ID` and `/plan?phase=ID`: once the plan is there, `reveal` shows the job (null: a phase was asked for),
 * and the place takes the focus.
 * A link is followed once, so that later readings of the plan leave the focus where it is.
 */
export function useLinkedPlace(jobs: readonly PlanJob[], reveal: (job: PlanJob | null) => void): void {
  const { params } = useRoute();
  const { job: jobParam, phase: phaseParam } = params;
  const followed = useRef('');
  const follow = useEffectEvent((wanted: string, place: string) => {
    if (followed.current === wanted) return;
    followed.current = wanted;
    reveal(jobs.find(({ id }) => jobPlace(id) === place) ?? null);
    // After the next drawing: the job may only just have been let into view.
    setTimeout(() => focusPlace(place));
  });
  useEffect(() => {
    if (jobParam !== undefined) follow(`job ${jobParam}`, `job-${jobParam}`);
    else if (phaseParam !== undefined) follow(`phase ${phaseParam}`, `phase-${phaseParam}`);
    else followed.current = '';
  }, [jobParam, phaseParam]);
}
