import type { PlanView } from '../../../core/contract/plan.ts';

/** A build and the day that it is shown at; without a day, today. */
export interface Reading {
  readonly build: number;
  readonly asOf?: string;
}

/** One phase of the plan with its jobs; without an id, the jobs that belong to none. */
export type PlanPhase = PlanView['phases'][number];
