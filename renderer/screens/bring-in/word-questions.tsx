import { NativeSelect } from '@mantine/core';
import { IconAlertTriangle } from '@tabler/icons-react';
import { type ImportPlan, importStates } from '../../../core/exchange/import-types.ts';
import type { ImportQuestion } from '../../../core/exchange/table-types.ts';
import { counted } from '../../parts/formats.ts';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import type { ChangeDraft, Draft } from './draft.ts';
import { paidWords, stateWords } from './words.ts';

const stateOptions = importStates.map((value) => ({ value, label: stateWords[value] }));

/** The word itself out of the question “What does “yes” under …”; the whole question if it isn't quoted. */
const wordOf = ({ text }: ImportQuestion): string => /“(.*?)” under “/.exec(text)?.[1] ?? text;

export const openQuestions = ({ questions }: ImportPlan): readonly ImportQuestion[] =>
  questions.filter(({ blocking, answer, kind }) => blocking && answer === null && kind !== 'encoding');

/** The choices of one question; while a coin toss is open, none of them is chosen. */
function optionsOf({ choices, answer, guess, blocking }: ImportQuestion) {
  const open =
    blocking && answer === null ? [{ value: '', label: guess === null ? 'Choose one' : 'Still to be confirmed' }] : [];
  return [
    ...open,
    ...choices.map(({ value, label, preview }) => ({
      value,
      label: preview === undefined || preview === '' ? label : `${label} (${preview})`,
    })),
  ];
}

export interface WordQuestionsProps {
  readonly plan: ImportPlan;
  readonly draft: Draft;
  readonly change: ChangeDraft;
}

/** What only the builder knows: what the words mean, which way the dates go, whether it was paid. */
export function WordQuestions({ plan, draft, change }: WordQuestionsProps) {
  const answer = (id: string, value: string) => {
    const { [id]: _former, ...rest } = draft.answers;
    change({ answers: value === '' ? rest : { ...rest, [id]: value } });
  };
  const words = plan.questions.filter(({ kind }) => kind === 'state');
  const others = plan.questions.filter(({ kind }) => kind !== 'state' && kind !== 'encoding');
  const columns: readonly Column<ImportQuestion>[] = [
    { id: 'word', title: 'Word in the file', rowHeader: true, cell: (question) => wordOf(question) },
    { id: 'column', title: 'Column', cell: ({ column }) => column },
    {
      id: 'rows',
      title: 'Rows',
      figures: true,
      cell: ({ rowsConcerned }) => rowsConcerned.length,
      sortBy: ({ rowsConcerned }) => rowsConcerned.length,
    },
    {
      id: 'means',
      title: 'What it means',
      cell: (question) => (
        <NativeSelect
          aria-label={`What “${wordOf(question)}” under “${question.column}” means`}
          value={question.answer ?? question.guess ?? 'unknown'}
          onChange={(event) => answer(question.id, event.currentTarget.value)}
          data={stateOptions}
        />
      ),
    },
    {
      id: 'mark',
      title: 'Found',
      cell: ({ answer: given, guess }) =>
        given !== null ? (
          'as you chose'
        ) : guess === null || guess === 'unknown' ? (
          <span className="import-mark">
            <IconAlertTriangle aria-hidden size="1.1em" /> not understood
          </span>
        ) : (
          'a guess'
        ),
    },
  ];
  return (
    <>
      {words.length === 0 ? (
        <p>No word in the file says where a part stands.</p>
      ) : (
        <SimpleTable
          caption="What the words mean"
          columns={columns}
          rows={words}
          rowKey={({ id }) => id}
          sortedBy={{ column: 'rows', descending: true }}
        />
      )}
      {others.map((question) => (
        <div key={question.id} className="import-question">
          <NativeSelect
            label={`${question.column === '' ? '' : `${question.column}: `}${question.text}`}
            description={`${counted(question.rowsConcerned.length, 'row hangs', 'rows hang')} on it: ${rowsText(question.rowsConcerned)}`}
            value={question.answer ?? (question.blocking ? '' : (question.guess ?? ''))}
            onChange={(event) => answer(question.id, event.currentTarget.value)}
            data={optionsOf(question)}
          />
        </div>
      ))}
      <div className="import-question">
        <NativeSelect
          label="What was ordered, unless the file says so itself, was"
          value={draft.paid}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            change({ paid: paidWords.find(({ value }) => value === chosen)?.value ?? 'not-recorded' });
          }}
          data={paidWords.map(({ value, label }) => ({ value, label }))}
        />
      </div>
    </>
  );
}

/** "rows 4, 7, 9 and 12 more". */
function rowsText(rows: readonly number[]): string {
  const shown = rows.slice(0, 8).join(', ');
  return rows.length > 8 ? `${shown} and ${rows.length - 8} more` : shown;
}
