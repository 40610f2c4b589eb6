import { Button } from '@mantine/core';
import { IconCircleCheck } from '@tabler/icons-react';
import '../../parts/state.css';
import type { PlanPhase } from './reading.ts';

export interface PassedPhasesProps {
  readonly phases: readonly PlanPhase[];
  readonly onShow: () => void;
}

/** Phases without an open job, in one line, so that the open ones start at the top. */
export function PassedPhases({ phases, onShow }: PassedPhasesProps) {
  return (
    <p className="plan-passed">
      <span className="state" data-tone="done">
        <IconCircleCheck aria-hidden className="state-mark" stroke={1.8} />
        <span>all jobs done: {phases.map(({ name }) => name).join(', ')}</span>
      </span>
      <Button className="not-printed" variant="subtle" size="compact" onClick={onShow}>
        Show all jobs
      </Button>
    </p>
  );
}
