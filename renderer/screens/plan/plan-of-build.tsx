import { Button } from '@mantine/core';
import { useState } from 'react';
import type { PlanView } from '../../../core/contract/plan.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useRoute } from '../../app/route.tsx';
import { useWhy } from '../../app/why.tsx';
import { KeyHints, Tabs, Toolbar } from '../../parts/furniture.tsx';
import { Empty } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { Bars } from './bars.tsx';
import { Measures } from './measures.tsx';
import { PassedPhases } from './passed-phases.tsx';
import { PhaseSection } from './phase-section.tsx';
import { canBeDone, isShown, type Shown } from './plan-order.ts';
import { PlanWindow, type Typing } from './plan-window.tsx';
import { ProgressChart } from './progress-chart.tsx';
import type { PlanPhase, Reading } from './reading.ts';
import { focusPlace, phasePlace, useLinkedPlace } from './use-linked-place.ts';
import { useReorder } from './use-reorder.ts';

/** The plan of one build, read once for all that stands on the page. */
export function PlanOfBuild({ reading }: { readonly reading: Reading }) {
  const why = useWhy();
  const plan = useRead(['plan', reading.build, reading.asOf ?? null, 'view'], () => api.plan.view(reading));
  return (
    <Page
      title="Plan"
      answer={
        plan.state === 'ready' && (
          <Answer onWhy={() => why({ ...reading, figure: 'jobs-share' })}>{plan.value.answer}</Answer>
        )
      }
    >
      <PastDayNote />
      <ReadView read={plan} label="Reading the plan">
        {(view) => (
          <>
            <Jobs view={view} reading={reading} />
            <Measures measures={view.measures} reading={reading} />
            <ProgressChart reading={reading} />
          </>
        )}
      </ReadView>
    </Page>
  );
}

const noJobs: Readonly<Record<Shown, string>> = {
  tonight: 'Nothing can be done tonight: every open job waits for a part, a tool or an earlier job.',
  open: 'Every job is done.',
  all: 'The jobs of the build stand here in the order in which they are done.',
};

/** A job that is finished may leave the list together with the button that had the focus: then its phase takes it. */
function keepFocus(typing: Typing): void {
  setTimeout(() => {
    if (document.activeElement !== document.body && document.activeElement !== null) return;
    const phase = 'job' in typing && typing.job !== null ? typing.job.phase : null;
    if (!focusPlace(phasePlace(phase)))
      document.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]')?.focus();
  }, 50);
}

function Jobs({ view, reading }: { readonly view: PlanView; readonly reading: Reading }) {
  const canAct = useCanAct();
  const [typing, setTyping] = useState<Typing | null>(null);
  const { params } = useRoute();
  const [tab, setShown] = useState<Shown | 'bars'>(params['view'] === 'bars' ? 'bars' : 'open');
  const shown = tab === 'bars' ? 'all' : tab;
  const [opened, setOpened] = useState<ReadonlySet<number>>(new Set());
  const jobs = view.phases.flatMap((phase) => phase.jobs);
  useLinkedPlace(jobs, (job) => {
    if (tab === 'bars' || job === null || !isShown(job, shown)) setShown('all');
    if (job !== null) setOpened((now) => new Set([...now, job.id]));
  });
  const reorder = useReorder(view.phases);
  const toggle = (id: number) =>
    setOpened((now) => (now.has(id) ? new Set([...now].filter((one) => one !== id)) : new Set([...now, id])));
  const phases = reorder.phases.map((phase) => ({ phase, seen: phase.jobs.filter((job) => isShown(job, shown)) }));
  const isPassed = ({ jobsDone, jobsTotal }: PlanPhase) => jobsTotal > 0 && jobsDone === jobsTotal;
  const passed = shown === 'open' ? reorder.phases.filter(isPassed) : [];
  const visible = phases.filter(
    ({ phase, seen }) => seen.length > 0 || (shown !== 'tonight' && !passed.includes(phase)),
  );
  const close = () => {
    setTyping(null);
    if (typing !== null) keepFocus(typing);
  };
  const addJob = () => setTyping({ what: 'job', job: null, phase: null });
  const addPhase = () => setTyping({ what: 'phase', phase: null });

  return (
    <section className="plan-jobs" aria-label="Jobs">
      <Toolbar label="Plan">
        <Button disabled={!canAct} onClick={addJob}>
          Add a job
        </Button>
        <Button disabled={!canAct} onClick={addPhase}>
          Add a phase
        </Button>
      </Toolbar>
      <Tabs
        label="Jobs shown"
        tabs={[
          { id: 'tonight', title: 'Tonight', count: jobs.filter(canBeDone).length },
          { id: 'open', title: 'Open', count: jobs.filter(({ done }) => !done).length },
          { id: 'all', title: 'All', count: jobs.length },
          { id: 'bars', title: 'Over the calendar' },
        ]}
        shown={tab}
        onShow={setShown}
      >
        {tab === 'bars' ? (
          <Bars reading={reading} />
        ) : jobs.length === 0 && view.phases.length === 0 ? (
          <Empty {...(canAct ? { action: { label: 'Write down the first job', onClick: addJob } } : {})}>
            {noJobs.all}
          </Empty>
        ) : (
          <>
            {canAct && jobs.length > 1 && (
              <KeyHints
                hints={[
                  { keys: 'Enter', does: 'shows what a job needs' },
                  { keys: 'Alt+↑ Alt+↓', does: 'moves a job or phase' },
                ]}
              />
            )}
            {jobs.length > 0 && phases.every(({ seen }) => seen.length === 0) && (
              <p className="plan-none">{noJobs[shown]}</p>
            )}
            {passed.length > 0 && <PassedPhases phases={passed} onShow={() => setShown('all')} />}
            {visible.map(({ phase, seen }) => (
              <PhaseSection
                key={phase.id}
                phase={phase}
                seen={seen}
                reading={reading}
                opened={opened}
                onToggle={toggle}
                onType={setTyping}
                onMoveJob={(job, step) => reorder.moveJob(phase, seen, job, step)}
                onMovePhase={(step) => reorder.movePhase(phase, step)}
              />
            ))}
          </>
        )}
      </Tabs>
      <p className="only-heard" role="status">
        {reorder.said}
      </p>
      {typing !== null && <PlanWindow typing={typing} phases={view.phases} build={reading.build} onClose={close} />}
    </section>
  );
}
