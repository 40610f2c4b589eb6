import { ActionIcon, Button } from '@mantine/core';
import { IconArrowDown, IconArrowUp, IconCircleCheck } from '@tabler/icons-react';
import type { KeyboardEvent } from 'react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import '../../parts/state.css';
import { AskedFigure } from '../../parts/asked-figure.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { counted } from '../../parts/formats.ts';
import { hoursText } from '../../parts/minutes.ts';
import { useCanAct } from '../../parts/past-day.tsx';
import { JobRow } from './job-row.tsx';
import type { Typing } from './plan-window.tsx';
import type { PlanPhase, Reading } from './reading.ts';
import { phasePlace } from './use-linked-place.ts';

export type Step = -1 | 1;

/** Alt with an arrow moves what has the focus; null for any other key. */
export function stepOfKey(event: KeyboardEvent): Step | null {
  if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return null;
  event.preventDefault();
  event.stopPropagation();
  return event.key === 'ArrowUp' ? -1 : 1;
}

export interface PhaseSectionProps {
  readonly phase: PlanPhase;
  /** Those of its jobs that are shown now. */
  readonly seen: readonly PlanJob[];
  readonly reading: Reading;
  readonly opened: ReadonlySet<number>;
  readonly onToggle: (job: number) => void;
  readonly onType: (typing: Typing) => void;
  readonly onMoveJob: (job: PlanJob, step: Step) => void;
  readonly onMovePhase: (step: Step) => void;
}

/** "4 of 9 jobs, 6 h left, 2 without a guess"; "11 of 11 jobs, all done". */
export function progressWords(phase: PlanPhase): string {
  if (phase.jobsTotal === 0) return 'no jobs yet';
  const parts = [
    `${phase.jobsDone} of ${counted(phase.jobsTotal, 'job', 'jobs')}${phase.jobsDone === phase.jobsTotal ? ', all done' : ''}`,
  ];
  if (phase.jobsDone < phase.jobsTotal) parts.push(`${hoursText(phase.minutesLeft)} left`);
  if (phase.jobsWithoutGuess > 0) parts.push(`${phase.jobsWithoutGuess} without a guess`);
  return parts.join(', ');
}

function Dates({ phase }: { readonly phase: PlanPhase }) {
  const { plannedStart: start, plannedEnd: end } = phase;
  if (start === null && end === null) return null;
  return (
    <span>
      planned {start !== null && <DateText date={start} />}
      {end !== null && (
        <>
          {' '}
          to <DateText date={end} />
        </>
      )}
    </span>
  );
}

/** One phase: what must be true before it counts as passed, how far it is, its money, and its jobs in order. */
export function PhaseSection(props: PhaseSectionProps) {
  const { phase, seen, reading, opened, onToggle, onType, onMoveJob, onMovePhase } = props;
  const canAct = useCanAct();
  const allDone = phase.jobsTotal > 0 && phase.jobsDone === phase.jobsTotal;
  const about = { ...reading, phase: phase.id };
  const pressed = (event: KeyboardEvent) => {
    const step = stepOfKey(event);
    if (step !== null && canAct) onMovePhase(step);
  };
  return (
    <section className="plan-phase" aria-labelledby={phasePlace(phase.id)}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys belong to the buttons inside, whichever has the focus */}
      <div className="phase-head" onKeyDown={pressed}>
        <h2 id={phasePlace(phase.id)} tabIndex={-1}>
          {phase.name}
        </h2>
        <p className="phase-facts">
          <span className="state" data-tone={allDone ? 'done' : 'moves'}>
            {allDone && <IconCircleCheck aria-hidden className="state-mark" stroke={1.8} />}
            <span>{progressWords(phase)}</span>
          </span>
          <Dates phase={phase} />
          <span>
            cost{' '}
            <AskedFigure of={`cost, ${phase.name}`} why={{ ...about, figure: 'cost' }}>
              <Money amountMinor={phase.costMinor} />
            </AskedFigure>
            , estimate{' '}
            <AskedFigure of={`estimate at completion, ${phase.name}`} why={{ ...about, figure: 'forecast' }}>
              <Money amountMinor={phase.forecastMinor} />
            </AskedFigure>
          </span>
        </p>
        {phase.gate !== '' && (
          <p className="phase-gate">
            <strong>Passed when:</strong> {phase.gate}
          </p>
        )}
        {canAct && (
          <span className="plan-acts not-printed">
            <Button size="compact" variant="subtle" onClick={() => onType({ what: 'job', job: null, phase: phase.id })}>
              Add a job <span className="only-heard">to {phase.name}</span>
            </Button>
            {phase.id !== null && (
              <>
                <Button size="compact" variant="subtle" onClick={() => onType({ what: 'phase', phase })}>
                  Edit <span className="only-heard">the phase {phase.name}</span>
                </Button>
                <Button size="compact" variant="subtle" onClick={() => onType({ what: 'retire-phase', phase })}>
                  Retire <span className="only-heard">the phase {phase.name}</span>
                </Button>
                <ActionIcon aria-label={`Move the phase ${phase.name} up`} onClick={() => onMovePhase(-1)}>
                  <IconArrowUp aria-hidden size="1.2em" />
                </ActionIcon>
                <ActionIcon aria-label={`Move the phase ${phase.name} down`} onClick={() => onMovePhase(1)}>
                  <IconArrowDown aria-hidden size="1.2em" />
                </ActionIcon>
              </>
            )}
          </span>
        )}
      </div>
      {seen.length > 0 && (
        <ol className="job-list">
          {seen.map((job) => (
            <JobRow
              key={job.id}
              job={job}
              opened={opened.has(job.id)}
              onToggle={() => onToggle(job.id)}
              onType={onType}
              onMove={(step) => onMoveJob(job, step)}
            />
          ))}
        </ol>
      )}
    </section>
  );
}
