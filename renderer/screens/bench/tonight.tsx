import { Button } from '@mantine/core';
import { useState } from 'react';
import type { TonightJob, TonightView } from '../../../core/contract/tonight.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link, navigate } from '../../app/route.tsx';
import { Quantity } from '../../parts/figures.tsx';
import { FinishForm } from '../../parts/job-finish-form.tsx';
import { HoursForm } from '../../parts/job-hours-form.tsx';
import { hoursText } from '../../parts/minutes.ts';
import { MinutesField } from '../../parts/minutes-field.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import './tonight.css';

type Writing = { readonly what: 'done' | 'hours'; readonly job: TonightJob['job'] };

/** What to do with the hours at hand: the jobs that can begin now, what to fetch for them, and what would bring more. */
export function Tonight({ build }: { readonly build: number }) {
  const [minutes, setMinutes] = useState<number | null>(null);
  const [writing, setWriting] = useState<Writing | null>(null);
  const view = useRead(['tonight', build, minutes], () =>
    api.tonight.view({ build, ...(minutes === null ? {} : { minutes }) }),
  );
  return (
    <section className="tonight" aria-labelledby="tonight-title">
      <h2 id="tonight-title">Tonight</h2>
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
      </div>
      <ReadView read={view} label="Looking for what can be done">
        {(value) => <Plan view={value} onWrite={setWriting} />}
      </ReadView>
      {writing?.what === 'done' && <FinishForm job={writing.job} onClose={() => setWriting(null)} />}
      {writing?.what === 'hours' && <HoursForm job={writing.job} onClose={() => setWriting(null)} />}
    </section>
  );
}

function Plan({ view, onWrite }: { readonly view: TonightView; readonly onWrite: (writing: Writing) => void }) {
  return (
    <>
      <p className="tonight-answer">{view.answer}</p>
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
              <Job key={entry.job.id} entry={entry} onWrite={onWrite} />
            ))}
          </ol>
        </>
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

function Job({ entry, onWrite }: { readonly entry: TonightJob; readonly onWrite: (writing: Writing) => void }) {
  const { job, fetch, torque, sheets } = entry;
  return (
    <li data-fits={entry.fits}>
      <h3>{job.title}</h3>
      <p>
        {entry.says}
        {(entry.daysGained ?? 0) > 0 && ` The date gains ${entry.daysGained} days.`}
        {entry.waiting > 0 && ` ${entry.waiting} ${entry.waiting === 1 ? 'job waits' : 'jobs wait'} for it.`}
      </p>
      {fetch.length > 0 && (
        <dl className="tonight-fetch" aria-label={`Fetch for ${job.title}`}>
          {fetch.map(({ bin, binName, place, parts }) => (
            <div key={bin ?? 0}>
              <dt>
                {binName === '' ? 'No bin written down' : binName}
                {place !== '' && <span className="tonight-where"> {place}</span>}
              </dt>
              {parts.map(({ part, description, milli, unit }) => (
                <dd key={part}>
                  <Quantity quantityMilli={milli} unit={unit} /> {description}
                </dd>
              ))}
            </div>
          ))}
        </dl>
      )}
      {torque.map(({ id, name, says, lubricant }) => (
        <p key={id}>
          <Link className="bench-open" to="/bench" params={{ torque: id }}>
            {name}
          </Link>{' '}
          {says}
          {lubricant !== '' && ` Lubricant: ${lubricant}.`}
        </p>
      ))}
      {sheets.map(({ id, title, says }) => (
        <p key={id}>
          <Link className="bench-open" to="/bench" params={{ sheet: id }}>
            {title}
          </Link>{' '}
          {says}
        </p>
      ))}
      <div className="bench-buttons">
        <Button
          className="tonight-button"
          variant="filled"
          aria-label={`Done: ${job.title}`}
          onClick={() => onWrite({ what: 'done', job })}
        >
          Done…
        </Button>
        <Button
          className="tonight-button"
          aria-label={`Log hours: ${job.title}`}
          onClick={() => onWrite({ what: 'hours', job })}
        >
          Log hours…
        </Button>
      </div>
    </li>
  );
}
