import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import { useAct } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { useReading, useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice, TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { counted } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { Loading } from '../../../parts/notes.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { PastePreview } from './paste-preview.tsx';
import { bringInPasted, type Pasted, usePasted } from './use-pasted.ts';

export interface PasteWindowProps {
  readonly text: string;
  readonly onClose: () => void;
}

const waiting = {
  nothing: 'Paste lines first.',
  reading: 'The pasted text is still being read.',
  refused: 'The pasted text can’t be read.',
} as const;

/** What still stands in the way of adding; null when nothing does. */
function obstacle(pasted: Pasted, again: boolean): string | null {
  if (pasted.state !== 'ready') return waiting[pasted.state];
  if (pasted.plan.kind === 'orders') return 'These are order lines. Bring them in as a list instead.';
  if (!pasted.plan.ready) return 'Answer the questions and mend or leave out the lines marked below first.';
  if (pasted.plan.counts.part === 0) return 'No line was found in what was pasted.';
  if (pasted.known !== null && !again) return 'The same text was added before. Tick the box to add it once more.';
  return null;
}

/** Lines pasted from a spreadsheet: shown as understood, then added in one act. */
export function PasteWindow({ text: first, onClose }: PasteWindowProps) {
  const { today } = useWorkspace();
  const { currency } = useLocale();
  const reading = useReading();
  const [text, setText] = useState(first);
  const [on, setOn] = useState<string | null>(today);
  const [answers, setAnswers] = useState<Record<string, string>>({});
  const [again, setAgain] = useState(false);
  const [stopped, setStopped] = useState<string | null>(null);
  const pasted = usePasted(text, reading?.build ?? null, currency, answers);
  const act = useAct(bringInPasted);
  const ready = pasted.state === 'ready' ? pasted : null;
  const count = ready?.plan.counts.part ?? 0;
  const add = async () => {
    const why = obstacle(pasted, again);
    setStopped(why);
    if (why !== null || ready === null) return;
    if ((await act.run({ ...ready.choices, on: on ?? today, again })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      as="drawer"
      title="Paste lines from a spreadsheet"
      submitLabel={count === 0 ? 'Add the lines' : `Add ${counted(count, 'line', 'lines')}`}
      onSubmit={add}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal ?? (stopped === null ? null : { message: stopped })}
    >
      <TextField
        name="pasted"
        label="Lines"
        description="Copy rows in the spreadsheet, with their headings where there are some, and paste them here."
        value={text}
        onChange={(next) => {
          setText(next);
          setStopped(null);
        }}
        long
        longest={5_000_000}
        autoFocus
      />
      {pasted.state === 'reading' && <Loading label="Reading the pasted lines" />}
      {pasted.state === 'refused' && <RefusalNote refusal={pasted.refusal} />}
      {ready?.plan.questions
        .filter(({ blocking }) => blocking)
        .map((question) => (
          <Choice
            key={question.id}
            name={question.id}
            label={question.text}
            value={answers[question.id] ?? null}
            onChange={(value) =>
              setAnswers(({ [question.id]: _, ...others }) =>
                value === null ? others : { ...others, [question.id]: value },
              )
            }
            options={question.choices.map(({ value, label }) => ({ value, label }))}
            required
          />
        ))}
      {ready !== null && (
        <PastePreview
          plan={ready.plan}
          mapping={ready.mapping}
          onSkip={(row) => setAnswers((now) => ({ ...now, [`row:${row}`]: 'skip' }))}
        />
      )}
      {ready !== null && ready.known !== null && (
        <Checkbox
          label={`Added before (${ready.known}); add it once more`}
          checked={again}
          onChange={(event) => setAgain(event.currentTarget.checked)}
        />
      )}
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
      <p>
        For a whole file, orders with it, or columns that were misread: <Link to="/bring-in">bring in a list</Link>.
      </p>
    </FormWindow>
  );
}
