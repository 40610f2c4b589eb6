import { useRef, useState } from 'react';
import type { PlanJob } from '../../../core/contract/plan.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { inOrder, jobsInOrder, moveBeside, type Order } from './plan-order.ts';
import type { PlanPhase } from './reading.ts';
import { focusPlace, jobPlace, phasePlace } from './use-linked-place.ts';

export interface Reorder {
  /** The phases as they were put in order here, before the workbook has answered. */
  readonly phases: readonly PlanPhase[];
  /** What happened last, for those who hear it. */
  readonly said: string;
  readonly moveJob: (phase: PlanPhase, seen: readonly PlanJob[], job: PlanJob, step: -1 | 1) => void;
  readonly movePhase: (phase: PlanPhase, step: -1 | 1) => void;
}

/** Moving rows about takes the focus from them: it goes back to the same button, so that the next press moves on. */
function giveFocusBack(had: Element | null, place: string): void {
  setTimeout(() => {
    if (!(had instanceof HTMLElement) || had === document.body || !had.isConnected) {
      focusPlace(place);
      return;
    }
    had.focus({ preventScroll: true });
    had.scrollIntoView({ block: 'nearest' });
  });
}

/**
 * Moves jobs and phases by one step. The new order is seen at once; while the workbook is busy with one, further steps are
 * gathered and sent as the next, so that quick presses are never lost.
 */
export function useReorder(given: readonly PlanPhase[]): Reorder {
  const { today } = useWorkspace();
  const [said, setSaid] = useState('');
  const [wanted, setWanted] = useState<Order | null>(null);
  const latest = useRef<Order | null>(null);
  const sending = useRef(false);
  const phases = wanted === null ? given : inOrder(given, wanted);
  const act = useAct((key, { kind, ids }: Order) => api.records.reorder({ key, on: today, kind, ids: [...ids] }));

  const send = async () => {
    sending.current = true;
    for (let order = latest.current; order !== null; order = latest.current === order ? null : latest.current) {
      const done = await act.run(order);
      if (done === null) {
        setSaid('It could not be moved.');
        break;
      }
    }
    sending.current = false;
    latest.current = null;
    setWanted(null);
  };
  const want = (order: Order, place: string, words: string) => {
    // A job's order and a phase's are two acts; the second waits for another press rather than undoing the first.
    if (sending.current && latest.current?.kind !== order.kind) return;
    latest.current = order;
    setWanted(order);
    setSaid(words);
    giveFocusBack(document.activeElement, place);
    if (!sending.current) void send();
  };
  return {
    phases,
    said: act.refusal?.message ?? said,
    moveJob(phase, seen, job, step) {
      const own = phase.jobs.map(({ id }) => id);
      const seenIds = seen.map(({ id }) => id);
      const order = moveBeside(own, seenIds, job.id, step);
      if (order === null) {
        setSaid(`${job.title} is already the ${step === 1 ? 'last' : 'first'} shown in ${phase.name}.`);
        return;
      }
      const words = `${job.title} is now ${order.indexOf(job.id) + 1} of ${order.length} in ${phase.name}.`;
      want({ kind: 'job', ids: jobsInOrder(phases, phase.id, order) }, jobPlace(job.id), words);
    },
    movePhase(phase, step) {
      const ids = phases.flatMap(({ id }) => (id === null ? [] : [id]));
      const order = phase.id === null ? null : moveBeside(ids, ids, phase.id, step);
      if (order === null) {
        setSaid(`${phase.name} is already the ${step === 1 ? 'last' : 'first'} phase.`);
        return;
      }
      want(
        { kind: 'phase', ids: order },
        phasePlace(phase.id),
        `${phase.name} was moved ${step === 1 ? 'down' : 'up'}.`,
      );
    },
  };
}
