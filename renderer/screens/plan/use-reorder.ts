import { useState } from 'react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { jobsInOrder, moveBeside } from './plan-order.ts';
import type { PlanPhase } from './reading.ts';
import { focusPlace, jobPlace, phasePlace } from './use-linked-place.ts';

export interface Reorder {
  /** What happened last, for those who hear it. */
  readonly said: string;
  readonly moveJob: (phase: PlanPhase, seen: readonly PlanJob[], job: PlanJob, step: -1 | 1) => Promise<void>;
  readonly movePhase: (phase: PlanPhase, step: -1 | 1) => Promise<void>;
}

/** Moves jobs and phases by one step; one move at a time, so that each starts from the order that the workbook has. */
export function useReorder(phases: readonly PlanPhase[]): Reorder {
  const { today } = useWorkspace();
  const [said, setSaid] = useState('');
  const act = useAct((key, input: { readonly kind: 'job' | 'phase'; readonly ids: number[] }) =>
    api.records.reorder({ key, on: today, ...input }),
  );
  const send = async (kind: 'job' | 'phase', ids: number[], place: string, words: string) => {
    if (act.busy) return;
    const had = document.activeElement;
    const done = await act.run({ kind, ids });
    setSaid(done === null ? 'It could not be moved.' : words);
    // Moving rows about takes the focus from them: it goes back to the same button, so that the next press moves on.
    setTimeout(() => {
      if (!(had instanceof HTMLElement) || had === document.body || !had.isConnected) focusPlace(place);
      else {
        had.focus({ preventScroll: true });
        had.scrollIntoView({ block: 'nearest' });
      }
    });
  };
  return {
    said: act.refusal?.message ?? said,
    async moveJob(phase, seen, job, step) {
      const seenIds = seen.map(({ id }) => id);
      const order = moveBeside(
        phase.jobs.map(({ id }) => id),
        seenIds,
        job.id,
        step,
      );
      if (order === null) {
        setSaid(`${job.title} is already the ${step === 1 ? 'last' : 'first'} shown in ${phase.name}.`);
        return;
      }
      const at = order.indexOf(job.id) + 1;
      const words = `${job.title} is now ${at} of ${order.length} in ${phase.name}.`;
      await send('job', jobsInOrder(phases, phase.id, order), jobPlace(job.id), words);
    },
    async movePhase(phase, step) {
      const ids = phases.flatMap(({ id }) => (id === null ? [] : [id]));
      const order = phase.id === null ? null : moveBeside(ids, ids, phase.id, step);
      if (order === null) {
        setSaid(`${phase.name} is already the ${step === 1 ? 'last' : 'first'} phase.`);
        return;
      }
      await send('phase', [...order], phasePlace(phase.id), `${phase.name} was moved ${step === 1 ? 'down' : 'up'}.`);
    },
  };
}
