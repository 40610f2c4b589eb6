import { Button } from '@mantine/core';
import { IconCircle, IconCircleCheck } from '@tabler/icons-react';
import { useEffect, useRef, useState } from 'react';
import type { LineDetail } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { Answer } from '../../parts/page.tsx';
import { PastDayNote } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { OpenStepForm } from './open-step-form.tsx';
import './line-making.css';

type Step = LineDetail['making'][number];

interface LineMakingProps {
  readonly id: number;
  readonly reading: { readonly build: number; readonly asOf?: string };
}

/** One line made at the bench, step by step, copy by copy. */
export function LineMaking({ id, reading }: LineMakingProps) {
  const read = useRead(['plumbing', reading.build, reading.asOf ?? null, 'line', id], () =>
    api.plumbing.line({ ...reading, line: id }),
  );
  return (
    <ReadView read={read} label="Reading the line">
      {(detail) => <Making detail={detail} past={reading.asOf !== undefined} />}
    </ReadView>
  );
}

const doneAt = (step: Step, copy: number) => step.done[copy - 1] ?? null;
const firstOpenCopy = ({ making, row }: LineDetail): number => {
  const open = Array.from({ length: row.quantity }, (_, at) => at + 1).find((copy) =>
    making.some((step) => doneAt(step, copy) === null),
  );
  return open ?? 1;
};

/** No step is ticked for so long after another: a gloved finger bounces, and the next step would count as done. */
const restMs = 600;

function Making({ detail, past }: { readonly detail: LineDetail; readonly past: boolean }) {
  const { row, making } = detail;
  const [copy, setCopy] = useState(() => firstOpenCopy(detail));
  const [note, setNote] = useState('');
  const [opening, setOpening] = useState<Step | null>(null);
  const [resting, setResting] = useState(false);
  const who = useWho({ label: 'Who' });
  const day = useActDay();
  const act = useAct((key, step: string) =>
    api.plumbing.step({ key, on: day.on, line: row.id, copy, step, done: true, by: who.by, note }),
  );
  const next = making.find((step) => doneAt(step, copy) === null);
  const left = making.filter((step) => doneAt(step, copy) === null).length;
  const button = useRef<HTMLButtonElement>(null);
  const ticked = useRef(false);
  const nextId = next?.id;
  // The keyboard goes on with the next step; not on arrival, where the page's name has the focus.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another step or copy is what moves the focus
  useEffect(() => {
    if (!ticked.current || resting) return;
    ticked.current = false;
    button.current?.focus();
  }, [nextId, copy, resting]);
  if (making.length === 0) {
    return (
      <div className="bench-list">
        <Answer blocks>
          {row.name}: {row.problem?.message.replace(/ ?Nothing was changed\.$/, '') ?? row.says}
        </Answer>
        <p>The steps follow from the take-off, which can’t be made yet.</p>
        <Link className="bench-open" to="/plumbing" params={{ edit: row.id }}>
          Fill in the line
        </Link>
      </div>
    );
  }
  const tick = async (step: Step) => {
    if (act.busy || resting) return;
    if ((await act.run(step.id)) === null) return;
    setNote('');
    ticked.current = true;
    setResting(true);
    setTimeout(() => setResting(false), restMs);
  };
  return (
    <div className="line-making">
      <Answer blocks={row.standing === 'unfit'}>
        {row.name}
        {row.quantity > 1 && `, copy ${copy} of ${row.quantity}`}:{' '}
        {next === undefined ? 'every step is done.' : `${left} of ${making.length} steps still open.`}
      </Answer>
      <p>
        {row.says.startsWith(row.hose) ? row.says : `${row.hose}. ${row.says}`}{' '}
        <Link to="/plumbing" params={{ line: row.id }}>
          The whole take-off
        </Link>
      </p>
      {row.standing === 'unfit' && next !== undefined && (
        <Caution>The line fails a check: settle that before hose is cut.</Caution>
      )}
      {row.quantity > 1 && <Copies detail={detail} copy={copy} onCopy={setCopy} />}
      <PastDayNote />
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
      {next !== undefined && (
        <section className="line-step" aria-label={`Next: ${next.title}`}>
          <h2>{next.title}</h2>
          <p className="line-step-text">{next.text}</p>
          {next.caution !== '' && <Caution>{next.caution}</Caution>}
          {!past && (
            <Button
              ref={button}
              className="bench-big not-printed"
              variant="filled"
              loading={act.busy}
              disabled={resting}
              onClick={() => void tick(next)}
            >
              Done: {next.title}
            </Button>
          )}
        </section>
      )}
      {!past && (
        <div className="bench-fields not-printed">
          {who.field}
          <TextField name="note" label="Note on this step" value={note} onChange={setNote} longest={400} />
          {day.field}
        </div>
      )}
      <ol className="line-steps" aria-label="All steps">
        {making.map((step) => (
          <StepRow
            key={step.id}
            step={step}
            copy={copy}
            isNext={step.id === next?.id}
            {...(past ? {} : { onOpen: () => setOpening(step) })}
          />
        ))}
      </ol>
      <Caution>{detail.caution}</Caution>
      {opening !== null && (
        <OpenStepForm line={row} copy={copy} step={opening} by={who.by} onClose={() => setOpening(null)} />
      )}
    </div>
  );
}

interface CopiesProps {
  readonly detail: LineDetail;
  readonly copy: number;
  readonly onCopy: (copy: number) => void;
}

/** Which of the copies is on the bench. */
function Copies({ detail: { row, making }, copy, onCopy }: CopiesProps) {
  return (
    <fieldset className="line-copies">
      <legend>Copy on the bench</legend>
      {Array.from({ length: row.quantity }, (_, at) => at + 1).map((one) => {
        const done = making.filter((step) => doneAt(step, one) !== null).length;
        return (
          <Button
            key={one}
            className="line-copy"
            variant={one === copy ? 'filled' : 'default'}
            aria-pressed={one === copy}
            onClick={() => onCopy(one)}
          >
            Copy {one}: {done} of {making.length}
          </Button>
        );
      })}
    </fieldset>
  );
}

interface StepRowProps {
  readonly step: Step;
  readonly copy: number;
  readonly isNext: boolean;
  readonly onOpen?: () => void;
}

function StepRow({ step, copy, isNext, onOpen }: StepRowProps) {
  const locale = useLocale();
  const done = doneAt(step, copy);
  const Mark = done === null ? IconCircle : IconCircleCheck;
  return (
    <li aria-current={isNext ? 'step' : undefined} data-done={done !== null || undefined}>
      <Mark aria-hidden className="line-step-mark" stroke={1.8} />
      <span>
        <strong>{step.title}</strong>{' '}
        {done === null ? (
          <span className="line-step-when">{isNext ? 'next' : 'open'}</span>
        ) : (
          <span className="line-step-when">
            done {dateText(done.on, locale)}
            {done.by !== '' && `, ${done.by}`}
            {done.note !== '' && `: ${done.note}`}
          </span>
        )}
        {done === null && !isNext && <span className="line-step-soft">{step.text}</span>}
        {done === null && !isNext && step.caution !== '' && (
          <span className="line-step-soft">Take care. {step.caution}</span>
        )}
      </span>
      {done !== null && onOpen !== undefined && (
        <Button className="line-open not-printed" variant="subtle" onClick={onOpen}>
          Open again… <span className="only-heard">{step.title}</span>
        </Button>
      )}
    </li>
  );
}
