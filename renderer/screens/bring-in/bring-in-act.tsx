import { Button } from '@mantine/core';
import { useCallback, useState } from 'react';
import type { ImportReport } from '../../../core/contract/exchange.ts';
import type { ImportPlan } from '../../../core/exchange/import-types.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Form } from '../../parts/form.tsx';
import { counted, dateText } from '../../parts/formats.ts';
import { Progress } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { choicesOf, type Draft } from './draft.ts';
import { withHeldFile } from './held-file.ts';
import { openQuestions } from './word-questions.tsx';
import { planSentence } from './words.ts';

export interface BringInActProps {
  readonly build: number;
  readonly plan: ImportPlan;
  readonly draft: Draft;
  readonly onGo: (step: number) => void;
  readonly onDone: (report: ImportReport) => void;
}

/** What still stands in the way, each with the step where it is settled. */
function openPoints(plan: ImportPlan, draft: Draft): readonly { readonly text: string; readonly step: number }[] {
  const questions = openQuestions(plan);
  const lines = plan.counts.part + plan.counts['order-line'];
  return [
    ...(draft.known !== null && !draft.again
      ? [{ text: 'The file was brought in before; say whether it shall be brought in again.', step: 1 }]
      : []),
    ...questions.map(({ column, text }) => ({ text: `${column === '' ? '' : `${column}: `}${text}`, step: 3 })),
    ...(plan.counts.attention === 0
      ? []
      : [{ text: `${counted(plan.counts.attention, 'row needs', 'rows need')} you.`, step: 4 }]),
    ...(lines === 0 && plan.counts.attention === 0 ? [{ text: 'There is no line to bring in.', step: 4 }] : []),
  ];
}

/** The one act that writes the list: all of it or nothing. */
export function BringInAct({ build, plan, draft, onGo, onDone }: BringInActProps) {
  const { today, asOf } = useWorkspace();
  const locale = useLocale();
  const [on, setOn] = useState<string | null>(today);
  const lines = plan.counts.part + plan.counts['order-line'];
  const points = openPoints(plan, draft);
  const send = useCallback(
    async (key: string, day: string) => {
      const choices = choicesOf(draft, build, locale);
      const report = await withHeldFile(draft, () =>
        api.exchange.bringIn({ ...choices, key, on: day, ...(draft.again ? { again: true } : {}) }),
      );
      onDone(report);
      return report;
    },
    [draft, build, locale, onDone],
  );
  const act = useAct(send);
  if (asOf !== null) {
    return <p>The workbook is shown as of {dateText(asOf, locale)}; go back to today to bring the list in.</p>;
  }
  return (
    <>
      <p>{planSentence(plan)}</p>
      {points.length > 0 ? (
        <>
          <p>
            <strong>Not yet.</strong> {counted(points.length, 'thing stands', 'things stand')} in the way:
          </p>
          <ul className="import-reasons">
            {points.map(({ text, step }) => (
              <li key={text}>
                {text}{' '}
                <Button variant="subtle" size="compact" onClick={() => onGo(step)}>
                  Go there<span className="only-heard">: {text}</span>
                </Button>
              </li>
            ))}
          </ul>
        </>
      ) : (
        <div className="import-question">
          <Form
            submitLabel={`Bring in ${counted(lines, 'line', 'lines')}`}
            busy={act.busy}
            refusal={act.refusal}
            onSubmit={() => void act.run(on ?? today)}
          >
            <DateField
              name="on"
              label="Day of the entry"
              description="Lines with dates of their own keep them."
              value={on}
              onChange={setOn}
              today={today}
              required
            />
          </Form>
        </div>
      )}
      {act.busy && <Progress label="Writing the lines; all of them or none" done={lines} of={null} />}
    </>
  );
}
