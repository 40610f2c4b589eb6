import { ActionIcon, Button } from '@mantine/core';
import { IconArrowDown, IconArrowUp, IconChevronDown, IconChevronRight } from '@tabler/icons-react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import { hoursText } from '../../parts/minutes.ts';
import { useCanAct } from '../../parts/past-day.tsx';
import { JobDetail } from './job-detail.tsx';
import { JobState } from './job-state.tsx';
import { type Step, stepOfKey } from './phase-section.tsx';
import type { Typing } from './plan-window.tsx';
import { jobPlace } from './use-linked-place.ts';

/** "2 h guessed, 45 min spent". */
export function hoursOfJob(job: PlanJob): string {
  const guess = job.minutesGuess === null ? 'no guess' : `${hoursText(job.minutesGuess)} guessed`;
  return job.minutesSpent === 0 ? guess : `${guess}, ${hoursText(job.minutesSpent)} spent`;
}

export interface JobRowProps {
  readonly job: PlanJob;
  readonly opened: boolean;
  readonly onToggle: () => void;
  readonly onType: (typing: Typing) => void;
  readonly onMove: (step: Step) => void;
}

/** One job: its name, where it stands, its hours, and what can be done with it. Opened, all that it needs. */
export function JobRow({ job, opened, onToggle, onType, onMove }: JobRowProps) {
  const canAct = useCanAct();
  const Mark = opened ? IconChevronDown : IconChevronRight;
  return (
    <li
      className="job"
      data-done={job.done || undefined}
      onKeyDown={(event) => {
        const step = stepOfKey(event);
        if (step !== null && canAct) onMove(step);
      }}
    >
      <div className="job-line">
        <button
          type="button"
          id={jobPlace(job.id)}
          className="job-title"
          aria-expanded={opened}
          aria-keyshortcuts="Alt+ArrowUp Alt+ArrowDown"
          onClick={onToggle}
        >
          <Mark aria-hidden size="1.1em" className="job-mark" />
          <span>{job.title}</span>
        </button>
        <JobState job={job} />
        <span className="job-hours figure">{hoursOfJob(job)}</span>
        {canAct && (
          <span className="plan-acts not-printed">
            {job.done ? (
              <Button size="compact" variant="subtle" onClick={() => onType({ what: 'reopen', job })}>
                Reopen <span className="only-heard">{job.title}</span>
              </Button>
            ) : (
              <Button className="job-finish" onClick={() => onType({ what: 'finish', job })}>
                Finish <span className="only-heard">{job.title}</span>
              </Button>
            )}
            <ActionIcon className="job-move" aria-label={`Move ${job.title} up`} onClick={() => onMove(-1)}>
              <IconArrowUp aria-hidden size="1.2em" />
            </ActionIcon>
            <ActionIcon className="job-move" aria-label={`Move ${job.title} down`} onClick={() => onMove(1)}>
              <IconArrowDown aria-hidden size="1.2em" />
            </ActionIcon>
          </span>
        )}
      </div>
      {opened && <JobDetail job={job} onType={onType} />}
    </li>
  );
}
