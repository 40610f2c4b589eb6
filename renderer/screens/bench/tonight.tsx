import { Button } from '@mantine/core';
import { useEffect, useState } from 'react';
import type { TonightJob, TonightView } from '../../../core/contract/tonight.ts';
import { samePlace } from '../../../core/schedule/place.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { Choice } from '../../parts/fields.tsx';
import { FinishForm } from '../../parts/job-finish-form.tsx';
import { HoursForm } from '../../parts/job-hours-form.tsx';
import { hoursText } from '../../parts/minutes.ts';
import { MinutesField } from '../../parts/minutes-field.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { usePlace } from './place.ts';
import { BenchJob } from './tonight-job.tsx';
import { LeftForm, RunningCard, type Stopped } from './tonight-running.tsx';
import './tonight.css';

type Writing = {
  readonly what: 'done' | 'hours';
  readonly job: TonightJob['job'];
  readonly spent?: number | null;
};

/** What to do with the hours at hand: the jobs that can begin now, what to fetch for them, and what would bring more. */
export function Tonight({ build }: { readonly build: number }) {
  const [minutes, setMinutes] = useState<number | null>(null);
  const [writing, setWriting] = useState<Writing | null>(null);
  const [stopped, setStopped] = useState<Stopped | null>(null);
  const [place, setPlace] = usePlace();
  const view = useRead(['tonight', build, minutes, place], () =>
    api.tonight.view({ build, ...(minutes === null ? {} : { minutes }), ...(place === '' ? {} : { place }) }),
  );
  const ready = view.state === 'ready' ? view.value : null;
  const lost = ready !== null && place !== '' && !ready.places.some((one) => samePlace(one, place));
  // The remembered place belongs to another build, or no job names it any more.
  useEffect(() => {
    if (lost) setPlace('');
  }, [lost, setPlace]);
  const at = ready?.jobs.flatMap((entry) => (entry.running === null ? [] : [{ entry, running: entry.running }])) ?? [];
  return (
    <section className="tonight" aria-labelledby="tonight-title">
      <h2 id="tonight-title">Tonight</h2>
      {at.map(({ entry, running }) => (
        <RunningCard
          key={`${entry.job.id} ${running.at}`}
          entry={entry}
          running={running}
          onStopped={setStopped}
          onSignOff={(job, spent) => setWriting({ what: 'done', job, spent })}
        />
      ))}
      {stopped !== null && <LeftForm key={stopped.job.id} stopped={stopped} onClose={() => setStopped(null)} />}
      {ready !== null && at.length === 0 && <p className="tonight-answer">{ready.answer}</p>}
      <div className="tonight-hours">
        <MinutesField
          name="minutes"
          label="Hours at the bench"
          description="Such as 3 or 1:30. Empty: what is left of today’s hours, else three."
          value={minutes}
          onChange={setMinutes}
          zero={false}
          steps={[30, 60]}
        />
        {ready !== null && ready.places.length > 0 && (
          <Choice
            name="place"
            label="Place"
            description="Jobs of no place can be done at each."
            value={ready.places.find((one) => samePlace(one, place)) ?? null}
            onChange={(chosen) => setPlace(chosen ?? '')}
            options={ready.places.map((one) => ({ value: one, label: one }))}
            none="Anywhere"
          />
        )}
      </div>
      <ReadView read={view} label="Looking for what can be done">
        {(value) => <Plan view={value} onWrite={setWriting} />}
      </ReadView>
      {writing?.what === 'done' && (
        <FinishForm job={writing.job} spent={writing.spent ?? null} onClose={() => setWriting(null)} />
      )}
      {writing?.what === 'hours' && <HoursForm job={writing.job} onClose={() => setWriting(null)} />}
    </section>
  );
}

interface PlanProps {
  readonly view: TonightView;
  readonly onWrite: (writing: Writing) => void;
}

function Plan({ view, onWrite }: PlanProps) {
  return (
    <>
      {view.begin !== '' && <p>{view.begin}</p>}
      {view.jobs.length === 0 ? (
        <Button className="bench-big" onClick={() => navigate('/plan')}>
          Open the Plan
        </Button>
      ) : (
        <>
          <p>
            {hoursText(view.minutes)}: {view.minutesFrom}.
            {view.minutesOver > 0 && ` ${hoursText(view.minutesOver)} of them not filled.`}
          </p>
          <ol className="tonight-jobs">
            {view.jobs.map((entry) => (
              <BenchJob
                key={entry.job.id}
                entry={entry}
                onDone={() => onWrite({ what: 'done', job: entry.job })}
                onHours={() => onWrite({ what: 'hours', job: entry.job })}
              />
            ))}
          </ol>
        </>
      )}
      {view.others.length > 0 && (
        <details className="bench-more" open={view.jobs.length === 0}>
          <summary>Not here, or not yet</summary>
          <ul>
            {view.others.map(({ id, title, says }) => (
              <li key={id}>
                {title}: {says}.
              </li>
            ))}
          </ul>
        </details>
      )}
      {view.unlocks.length > 0 && (
        <details className="bench-more" open={view.jobs.length === 0}>
          <summary>What would let other jobs begin</summary>
          <ul>
            {view.unlocks.map(({ says, wants }) => (
              <li key={says}>
                {says} <span className="tonight-where">{wants.map(({ standing }) => standing).join('; ')}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
      <details className="bench-more">
        <summary>How the order is made</summary>
        <p>{view.rule}</p>
      </details>
      <p>{view.caution}</p>
    </>
  );
}
