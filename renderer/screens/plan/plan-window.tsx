import type { PlanJob } from '../../../core/contract/plan.ts';
import { FinishForm } from '../../parts/job-finish-form.tsx';
import { HoursForm } from '../../parts/job-hours-form.tsx';
import { JobForm } from './job-form.tsx';
import { PhaseForm } from './phase-form.tsx';
import type { PlanPhase } from './reading.ts';
import { ReopenForm } from './reopen-form.tsx';
import { RetireForm } from './retire-form.tsx';

/** What is being typed on this page. */
export type Typing =
  | { readonly what: 'finish' | 'reopen' | 'hours' | 'retire-job'; readonly job: PlanJob }
  | { readonly what: 'job'; readonly job: PlanJob | null; readonly phase: number | null }
  | { readonly what: 'phase'; readonly phase: PlanPhase | null }
  | { readonly what: 'retire-phase'; readonly phase: PlanPhase };

export interface PlanWindowProps {
  readonly typing: Typing;
  readonly phases: readonly PlanPhase[];
  readonly build: number;
  readonly onClose: () => void;
}

/** The one window of the page, for whichever act was begun. */
export function PlanWindow({ typing, phases, build, onClose }: PlanWindowProps) {
  switch (typing.what) {
    case 'finish':
      return <FinishForm job={typing.job} onClose={onClose} />;
    case 'reopen':
      return <ReopenForm job={typing.job} onClose={onClose} />;
    case 'hours':
      return <HoursForm job={typing.job} onClose={onClose} />;
    case 'job':
      return <JobForm job={typing.job} phase={typing.phase} phases={phases} build={build} onClose={onClose} />;
    case 'phase':
      return <PhaseForm phase={typing.phase} build={build} onClose={onClose} />;
    case 'retire-job':
      return <RetireForm kind="job" id={typing.job.id} name={typing.job.title} onClose={onClose} />;
    case 'retire-phase':
      return typing.phase.id === null ? null : (
        <RetireForm kind="phase" id={typing.phase.id} name={typing.phase.name} onClose={onClose} />
      );
  }
}
