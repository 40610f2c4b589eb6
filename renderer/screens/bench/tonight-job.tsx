import { Button } from '@mantine/core';
import type { TonightJob } from '../../../core/contract/tonight.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Quantity } from '../../parts/figures.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

interface BenchJobProps {
  readonly entry: TonightJob;
  readonly onDone: () => void;
  readonly onHours: () => void;
}

/** A job that can be done tonight: what to fetch, what to open, and one tap to begin. */
export function BenchJob({ entry, onDone, onHours }: BenchJobProps) {
  const { job, fetch, torque, sheets, lines, consumables, who, running } = entry;
  const { today } = useWorkspace();
  const start = useAct((key) => api.tonight.start({ key, on: today, job: job.id, by: '' }));
  return (
    <li data-fits={entry.fits}>
      <h3>{job.title}</h3>
      <p>
        {who !== '' && `For ${who}. `}
        {job.place !== '' && `Place: ${job.place}. `}
        {running === null ? entry.says : 'Somebody is at it.'}
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
      {lines.map(({ id, name, says }) => (
        <p key={id}>
          <Link className="bench-open" to="/bench" params={{ line: id }}>
            {name}
          </Link>{' '}
          {says}
        </p>
      ))}
      {consumables.length > 0 && <p>Uses up: {consumables.join(', ')}.</p>}
      {start.refusal !== null && <RefusalNote refusal={start.refusal} />}
      {running === null && (
        <div className="bench-buttons">
          <Button
            className="tonight-button"
            variant="filled"
            aria-label={`Start: ${job.title}`}
            disabled={start.busy}
            onClick={() => void start.run(null)}
          >
            Start
          </Button>
          <Button className="tonight-button" aria-label={`Done: ${job.title}`} onClick={onDone}>
            Done…
          </Button>
          <Button className="tonight-button" aria-label={`Log hours: ${job.title}`} onClick={onHours}>
            Log hours…
          </Button>
        </div>
      )}
    </li>
  );
}
