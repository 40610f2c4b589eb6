import { Button } from '@mantine/core';
import { isDefinedError } from '@orpc/client';
import { type ReactNode, useEffect, useState } from 'react';
import type { LineDetail } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { Answer } from '../../parts/page.tsx';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';
import { fieldName, type LineDraft, valuesOf } from './draft.ts';
import { cutText } from './lengths-text.ts';
import { BillTable, CheckList, LengthList } from './take-off.tsx';
import { VerdictMark } from './verdict.tsx';

/** How long nobody must have typed before the take-off is asked for [ms]. */
const restMs = 350;

function useRested<Value>(value: Value): Value {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const waiting = setTimeout(() => setRested(value), restMs);
    return () => clearTimeout(waiting);
  }, [value]);
  return rested;
}

interface Problem {
  readonly field: string;
  readonly words: string;
}

interface Tried {
  /** The page's first sentence: the cut, or what is lacking. */
  readonly answer: ReactNode;
  readonly detail: Omit<LineDetail, 'values'> | null;
  /** The field that is lacking or can't be read. */
  readonly problem: Problem | null;
}

/** The field as the draft shows it: an end that is given by what is seen of it has no field for its cut-off. */
function shownField(said: string, { texts }: LineDraft): string {
  const name = fieldName(said);
  const [end] = name.split('.');
  return name.endsWith('.cutoff_mm') && texts[`${end}.way`] === 'seen' ? `${end}.visible_mm` : name;
}

const wordsOf = (message: string, accepted: string | undefined): string =>
  `${message.replace(/ ?Nothing was changed\.$/, '')}${accepted === undefined || accepted === '' ? '' : ` Accepted: ${accepted}.`}`;

/** A line is one from when its fluid or a port is said; before that there is nothing to ask. */
const begun = ({ from, to, texts }: LineDraft): boolean =>
  from !== null || to !== null || ['fluid', 'from_port', 'to_port'].some((name) => (texts[name] ?? '').trim() !== '');

type Asked = { readonly detail: NonNullable<Tried['detail']> } | { readonly refusal: RefusalWords };

/** A refusal is an answer here: asking again, as after a lost connection, would only keep the writer waiting. */
async function ask(build: number, values: string): Promise<Asked> {
  try {
    return { detail: await api.plumbing.tryOut({ build, values: JSON.parse(values) as ReturnType<typeof valuesOf> }) };
  } catch (error) {
    if (error instanceof Error && isDefinedError(error)) return { refusal: refusalWords(error) };
    throw error;
  }
}

/** What the draft would come to, asked for once nobody types any more; nothing is written. */
export function useTryOut(draft: LineDraft, build: number): Tried {
  const locale = useLocale();
  const asked = useRested(JSON.stringify(valuesOf(draft.name.trim() === '' ? { ...draft, name: 'New line' } : draft)));
  const read = useRead(['plumbing', build, null, 'try', asked], begun(draft) ? () => ask(build, asked) : null);
  if (!begun(draft)) {
    return { answer: <Answer>Say what flows and where it goes; the cut follows.</Answer>, detail: null, problem: null };
  }
  if (read.state === 'loading') return { answer: <Answer>Taking off the line …</Answer>, detail: null, problem: null };
  const refusal = read.state === 'refused' ? read.refusal : 'refusal' in read.value ? read.value.refusal : null;
  if (refusal !== null) {
    const { message, field, accepted } = refusal;
    const problem = { field: shownField(field ?? '', draft), words: wordsOf(message, accepted) };
    return { answer: <Answer blocks>{message.replace(/ ?Nothing was changed\.$/, '')}</Answer>, detail: null, problem };
  }
  const detail = read.state === 'ready' && 'detail' in read.value ? read.value.detail : null;
  if (detail === null) return { answer: null, detail: null, problem: null };
  const { row } = detail;
  const lacks = row.problem;
  return {
    answer: (
      <Answer blocks={row.verdict === 'fail'}>
        {row.verdict === 'fail' ? `Cut ${cutText(row, locale)}. ${row.says}` : row.says}
      </Answer>
    ),
    detail,
    problem:
      lacks === null ? null : { field: shownField(lacks.field, draft), words: wordsOf(lacks.message, lacks.accepted) },
  };
}

/** Goes to the field, and opens what it stands in. */
function goTo(name: string): void {
  const input = document.querySelector<HTMLElement>(`.plumbing-work form [name="${CSS.escape(name)}"]`);
  const closed = input?.closest('details');
  if (closed !== null && closed !== undefined) closed.open = true;
  input?.focus();
}

/** The take-off beside the form: what is lacking, the cut, what fails, what it is made of. */
export function TriedOut({ tried: { detail, problem } }: { readonly tried: Tried }) {
  return (
    <aside className="plumbing-live" aria-label="Take-off as it stands">
      <h2>Take-off</h2>
      {problem !== null && (
        <div className="plumbing-lacks">
          <p role="status">{problem.words}</p>
          {problem.field !== '' && <Button onClick={() => goTo(problem.field)}>Go to that field</Button>}
        </div>
      )}
      {detail !== null && (
        <>
          {problem === null && (
            <p>
              <VerdictMark verdict={detail.row.verdict} /> {detail.row.says}
            </p>
          )}
          {detail.lengths.length > 0 && <LengthList lengths={detail.lengths} />}
          <Caution>{detail.caution}</Caution>
          {detail.checks.length > 0 && (
            <>
              <h3>Checks</h3>
              <CheckList checks={detail.checks} />
            </>
          )}
          {detail.bill.length > 0 && (
            <>
              <h3>What it is made of</h3>
              <BillTable bill={detail.bill} />
            </>
          )}
          {detail.notes.length > 0 && (
            <ul className="plumbing-plain">
              {detail.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          )}
        </>
      )}
    </aside>
  );
}
