import { useCallback } from 'react';
import type { ImportReport } from '../../../core/contract/exchange.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useTask } from '../../app/task.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { counted } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { BringInAct } from './bring-in-act.tsx';
import { ChooseFile } from './choose-file.tsx';
import { Columns } from './columns.tsx';
import { type ChangeDraft, choicesOf, type Draft, mappingOf, newDraft, tableOf } from './draft.ts';
import { Found } from './found.tsx';
import { withHeldFile } from './held-file.ts';
import { Preview } from './preview.tsx';
import { Step } from './step.tsx';
import { openQuestions, WordQuestions } from './word-questions.tsx';

export interface BringInStepsProps {
  readonly build: number;
  readonly draft: Draft | null;
  readonly start: (draft: Draft | null) => void;
  readonly change: ChangeDraft;
}

/** The six steps from a file to its lines. */
export function BringInSteps({ build, draft, start, change }: BringInStepsProps) {
  const locale = useLocale();
  const { today } = useWorkspace();
  const reading = useTask(async ({ file, encoding }: { file: File; encoding: string | null }) => {
    const found = await api.exchange.read({ file, ...(encoding === null ? {} : { encoding }) });
    if (encoding === null) start(newDraft(file, found, locale.currency));
    else change({ token: found.token, read: found.read, guesses: found.mappings, mappings: {}, encoding });
    return found;
  });
  const choices = draft === null ? null : choicesOf(draft, build, locale);
  const planned = useRead(
    ['exchange', build, undefined, 'plan', today, choices],
    choices !== null && draft !== null && draft.reached > 1
      ? () => withHeldFile(draft, () => api.exchange.plan(choices))
      : null,
  );
  const plan = planned.state === 'ready' ? planned.value.plan : null;

  const go = (step: number) => change({ step, reached: Math.max(step, draft?.reached ?? 0) });
  const done = useCallback((report: ImportReport) => change({ report }), [change]);
  const stateOf = (step: number): 'open' | 'answered' | 'later' =>
    draft === null
      ? step === 0
        ? 'open'
        : 'later'
      : step === draft.step
        ? 'open'
        : step <= draft.reached
          ? 'answered'
          : 'later';
  const step = (number: number, title: string, summary: string) => ({
    number: number + 1,
    title,
    summary,
    state: stateOf(number),
    onOpen: () => go(number),
  });
  const table = draft === null ? undefined : tableOf(draft);
  const mapping = draft === null ? undefined : mappingOf(draft);
  const waiting =
    planned.state === 'refused' ? (
      <RefusalNote refusal={planned.refusal} onRetry={planned.retry} />
    ) : (
      <Loading label="Working out what each row becomes" />
    );
  const questions = plan === null ? [] : openQuestions(plan);
  return (
    <div className="import-steps" aria-busy={planned.state === 'ready' && planned.stale}>
      <Step {...step(0, 'Choose a list', draft?.file.name ?? '')}>
        <ChooseFile
          busy={reading.busy}
          refusal={draft === null || draft.step === 0 ? reading.refusal : null}
          onFile={(chosen) => void reading.run({ file: chosen, encoding: null })}
        />
      </Step>
      <Step {...step(1, 'What was found', foundSummary(draft))} next={{ label: 'On to the columns', go: () => go(2) }}>
        {draft !== null && (
          <Found
            draft={draft}
            change={change}
            refusal={reading.refusal}
            onEncoding={(chosen) => void reading.run({ file: draft.file, encoding: chosen })}
          />
        )}
      </Step>
      <Step {...step(2, 'Columns', columnsSummary(draft))} next={{ label: 'On to the words', go: () => go(3) }}>
        {draft !== null && table !== undefined && mapping !== undefined && (
          <Columns
            table={table}
            mapping={mapping}
            onChange={(next) => change({ mappings: { ...draft.mappings, [draft.sheet]: next } })}
          />
        )}
      </Step>
      <Step
        {...step(
          3,
          'Words, dates and payments',
          questions.length === 0 ? 'answered' : counted(questions.length, 'answer is missing', 'answers are missing'),
        )}
        next={{ label: 'On to every row', go: () => go(4) }}
      >
        {draft !== null && plan !== null ? <WordQuestions plan={plan} draft={draft} change={change} /> : waiting}
      </Step>
      <Step
        {...step(4, 'Every row', plan === null ? '' : rowsSummary(plan.counts.attention))}
        next={{ label: 'On to bringing in', go: () => go(5) }}
      >
        {draft !== null && table !== undefined && planned.state === 'ready' ? (
          <Preview
            build={build}
            plan={planned.value.plan}
            matches={planned.value.matches}
            table={table}
            draft={draft}
            change={change}
          />
        ) : (
          waiting
        )}
      </Step>
      <Step {...step(5, 'Bring it in', '')}>
        {draft !== null && plan !== null ? (
          <BringInAct build={build} plan={plan} draft={draft} onGo={go} onDone={done} />
        ) : (
          waiting
        )}
      </Step>
    </div>
  );
}

function foundSummary(draft: Draft | null): string {
  if (draft === null) return '';
  const kind = mappingOf(draft)?.kind === 'orders' ? 'order list' : 'parts list';
  return `${kind}, ${counted(tableOf(draft)?.rows.length ?? 0, 'row', 'rows')}`;
}

function columnsSummary(draft: Draft | null): string {
  const columns = (draft === null ? undefined : mappingOf(draft))?.columns ?? [];
  const named = columns.filter(({ field }) => field !== null).length;
  return `${named} of ${counted(columns.length, 'column', 'columns')} understood`;
}

const rowsSummary = (open: number): string =>
  open === 0 ? 'all settled' : counted(open, 'row needs you', 'rows need you');
