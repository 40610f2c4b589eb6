import { Button } from '@mantine/core';
import { useEffect, useState } from 'react';
import type { TonightJob } from '../../../core/contract/tonight.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { hoursText } from '../../parts/minutes.ts';
import { MinutesField } from '../../parts/minutes-field.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

const oftenEnough = 5000;

/**
 * Minutes at work, kept true while they are shown: what the workbook said, and what has passed here since. So a tablet whose
 * clock is wrong shows the same as the workbook.
 */
function useMinutes(said: number): number {
  const [from, setFrom] = useState(() => ({ said, at: Date.now() }));
  const [now, setNow] = useState(from.at);
  if (from.said !== said) {
    setFrom({ said, at: Date.now() });
    setNow(Date.now());
  }
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), oftenEnough);
    return () => clearInterval(timer);
  }, []);
  return said + Math.max(0, Math.floor((now - from.at) / 60_000));
}

export interface Stopped {
  readonly job: TonightJob['job'];
  /** Left by the guess; null when nothing can be said. */
  readonly leftMinutes: number | null;
}

interface RunningCardProps {
  readonly entry: TonightJob;
  readonly running: NonNullable<TonightJob['running']>;
  readonly onStopped: (stopped: Stopped) => void;
  /** Finishing it wants a name first. */
  readonly onSignOff: (job: TonightJob['job'], minutes: number | null) => void;
}

/** Somebody is at this job: how long by now, and one tap to stop or to be done. */
export function RunningCard({ entry, running, onStopped, onSignOff }: RunningCardProps) {
  const { job } = entry;
  const { today } = useWorkspace();
  const minutes = useMinutes(running.minutes);
  const [really, setReally] = useState<number | null>(null);
  const worked = running.unsure ? really : null;
  const stop = useAct((key) =>
    api.tonight.stop({ key, on: today, job: job.id, by: running.by, minutes: worked, leftMinutes: null }),
  );
  const done = useAct((key) =>
    api.tonight.done({ key, on: today, job: job.id, by: running.by, minutes: worked, note: '' }),
  );
  const busy = stop.busy || done.busy;
  const refusal = stop.refusal ?? done.refusal;
  const end = async () => {
    done.forget();
    if ((await stop.run(null)) === null) return;
    const spent = worked ?? minutes;
    onStopped({ job, leftMinutes: entry.minutesLeft === null ? null : Math.max(0, entry.minutesLeft - spent) });
  };
  const finish = async () => {
    stop.forget();
    if (job.needsSignOff && running.by === '') onSignOff(job, running.unsure ? really : minutes);
    else await done.run(null);
  };
  return (
    <section className="tonight-running" aria-label={`At work: ${job.title}`}>
      <h3 className="tonight-answer">
        At work: {job.title}
        {running.by !== '' && <span className="tonight-where"> ({running.by})</span>}
      </h3>
      {running.unsure ? (
        <>
          <p>
            {entry.says} That is longer than anybody works in one go: say how long it really was, then stop it or be
            done.
          </p>
          <MinutesField
            name="minutes"
            label="Really worked"
            description="Hours, such as 1.5 or 1:30; 0 when it was not touched."
            value={really}
            onChange={setReally}
            steps={[15, 30, 60]}
          />
        </>
      ) : (
        <p>
          <span className="tonight-clock" role="timer" aria-label={`Time at ${job.title}`}>
            {hoursText(minutes)}
          </span>{' '}
          {entry.says}
        </p>
      )}
      {refusal !== null && <RefusalNote refusal={refusal} />}
      <div className="bench-buttons">
        <Button
          className="tonight-button"
          variant="filled"
          aria-label={`Stop: ${job.title}`}
          disabled={busy}
          onClick={() => void end()}
        >
          Stop
        </Button>
        <Button
          className="tonight-button"
          aria-label={`Done: ${job.title}`}
          disabled={busy}
          onClick={() => void finish()}
        >
          Done
        </Button>
      </div>
    </section>
  );
}

/** After a stop: what is really left, when the guess no longer says it. */
export function LeftForm({ stopped, onClose }: { readonly stopped: Stopped; readonly onClose: () => void }) {
  const { job, leftMinutes } = stopped;
  const { today } = useWorkspace();
  const [left, setLeft] = useState<number | null>(leftMinutes === 0 ? null : leftMinutes);
  const act = useAct((key, minutes: number) => api.tonight.left({ key, on: today, job: job.id, leftMinutes: minutes }));
  const save = async () => {
    if (left === null || (left === leftMinutes && left > 0)) onClose();
    else if ((await act.run(left)) !== null) onClose();
  };
  const unknown = leftMinutes === null || leftMinutes === 0;
  return (
    <form
      className="tonight-running"
      aria-label={`What is left of ${job.title}`}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <p>
        Stopped: {job.title}.{' '}
        {unknown
          ? 'The guess says nothing of what is left. How long will the rest take?'
          : `By the guess ${hoursText(leftMinutes)} are left. Change it if the rest takes longer or shorter.`}
      </p>
      <MinutesField
        name="leftMinutes"
        label="Still to do"
        description="Hours, such as 1.5 or 1:30. It becomes the new guess."
        value={left}
        onChange={setLeft}
        zero={false}
        steps={[15, 30, 60]}
      />
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
      <div className="bench-buttons">
        <Button className="tonight-button" variant="filled" type="submit" disabled={act.busy}>
          {left === null || left === leftMinutes ? 'Leave it so' : 'Keep as the new guess'}
        </Button>
      </div>
    </form>
  );
}
