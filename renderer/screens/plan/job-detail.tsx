import { Button } from '@mantine/core';
import { IconCircleCheck, IconCircleDashed, IconHandOff, IconTool } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import { Link } from '../../app/route.tsx';
import { Quantity } from '../../parts/figures.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { State, type StateName, stateNames } from '../../parts/state.tsx';
import type { Typing } from './plan-window.tsx';

const isStateName = (text: string): text is StateName => (stateNames as readonly string[]).includes(text);

function Fact({ term, children }: { readonly term: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Needs({ job }: { readonly job: PlanJob }) {
  if (job.needs.length === 0) return 'no parts are set down for this job';
  return (
    <ul>
      {job.needs.map(({ part, description, standing, missingMilli, unit }) => (
        <li key={part}>
          <Link to="/parts" params={{ part }}>
            {description}
          </Link>{' '}
          {isStateName(standing) ? <State state={standing} /> : standing}
          {missingMilli > 0 && (
            <span className="job-missing">
              <Quantity quantityMilli={missingMilli} unit={unit} /> missing
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}

function Tools({ job }: { readonly job: PlanJob }) {
  if (job.tools.length === 0) return 'no special tools';
  return (
    <ul>
      {job.tools.map(({ id, name, atHand }) => {
        const Mark = atHand ? IconTool : IconHandOff;
        return (
          <li key={id}>
            <Link to="/lists" params={{ tool: id }}>
              {name}
            </Link>{' '}
            <span className="state" data-tone={atHand ? 'there' : 'waits'}>
              <Mark aria-hidden className="state-mark" stroke={1.8} /> {atHand ? 'at hand' : 'away'}
            </span>
          </li>
        );
      })}
    </ul>
  );
}

function Earlier({ job }: { readonly job: PlanJob }) {
  if (job.earlier.length === 0) return 'no earlier jobs';
  return (
    <ul>
      {job.earlier.map(({ id, title, done }) => {
        const Mark = done ? IconCircleCheck : IconCircleDashed;
        return (
          <li key={id}>
            <Link to="/plan" params={{ job: id }}>
              {title}
            </Link>{' '}
            <span className="state" data-tone={done ? 'done' : 'waits'}>
              <Mark aria-hidden className="state-mark" stroke={1.8} /> {done ? 'done' : 'still open'}
            </span>
          </li>
        );
      })}
    </ul>
  );
}

/** All that a job needs and what was written down about it, with the acts that are rarer than finishing it. */
export function JobDetail({ job, onType }: { readonly job: PlanJob; readonly onType: (typing: Typing) => void }) {
  const canAct = useCanAct();
  return (
    <div className="job-detail">
      <dl>
        <Fact term="Parts">
          <Needs job={job} />
        </Fact>
        <Fact term="Tools">
          <Tools job={job} />
        </Fact>
        <Fact term="After">
          <Earlier job={job} />
        </Fact>
        <Fact term="Stands before the hoist check">{job.beforeGate ? 'yes' : 'no'}</Fact>
        <Fact term="Sign-off">
          {job.needsSignOff
            ? job.done
              ? `signed off by ${job.signedBy === '' ? 'nobody named' : job.signedBy}`
              : 'must be signed off by name'
            : 'not asked'}
        </Fact>
        {job.note !== '' && (
          <Fact term="Note">
            <span className="job-note">{job.note}</span>
          </Fact>
        )}
      </dl>
      {canAct && (
        <span className="plan-acts not-printed">
          <Button onClick={() => onType({ what: 'hours', job })}>Add time</Button>
          <Button onClick={() => onType({ what: 'job', job, phase: job.phase })}>Edit the job</Button>
          <Button onClick={() => onType({ what: 'retire-job', job })}>Retire the job</Button>
        </span>
      )}
    </div>
  );
}
