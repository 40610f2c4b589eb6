import { IconCircleCheck, IconHourglass, IconPlayerPlay } from '@tabler/icons-react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import { DateText } from '../../parts/figures.tsx';
import { waitingWords } from '../../parts/waiting-words.ts';
import '../../parts/state.css';

/** Where a job stands: done, to be done tonight, or what it waits for. Icon and words. */
export function JobState({ job }: { readonly job: PlanJob }) {
  if (job.done) {
    return (
      <span className="state" data-tone="done">
        <IconCircleCheck aria-hidden className="state-mark" stroke={1.8} />
        <span>
          done {job.doneOn !== null && <DateText date={job.doneOn} />}
          {job.signedBy !== '' && `, ${job.needsSignOff ? 'signed off by' : 'by'} ${job.signedBy}`}
        </span>
      </span>
    );
  }
  if (job.waitsFor.length === 0) {
    return (
      <span className="state" data-tone="there">
        <IconPlayerPlay aria-hidden className="state-mark" stroke={1.8} />
        <span>can be done tonight</span>
      </span>
    );
  }
  return (
    <span className="state job-waits" data-tone="waits">
      <IconHourglass aria-hidden className="state-mark" stroke={1.8} />
      <span>waits for {waitingWords(job.waitsFor)}</span>
    </span>
  );
}
