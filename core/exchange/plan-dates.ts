/** The date columns of a list, read column by column, because one row tells how the others are meant. */
import { readDateColumn } from '../dates/date-column.ts';
import type { DateOrder, DateReading } from '../dates/date-text.ts';
import type { ImportAnswers, ImportDefaults, ImportField } from './import-types.ts';
import { Remarks, type RowReader } from './row-reader.ts';
import type { ImportFinding, ImportQuestion, TableRow } from './table-types.ts';

const dateFields = ['orderedOn', 'promisedOn', 'arrivedOn'] as const satisfies readonly ImportField[];
export type DateField = (typeof dateFields)[number];

export interface DateValues {
  value(row: TableRow, field: DateField): DateReading;
  readonly questions: readonly ImportQuestion[];
  readonly findings: Remarks<ImportFinding>;
}

/** Reads every date column over the given rows; what is no date is left to the reader of state words. */
export function readDates(
  rows: readonly TableRow[],
  reader: RowReader,
  answers: ImportAnswers,
  defaults: ImportDefaults,
): DateValues {
  const questions: ImportQuestion[] = [];
  const findings = new Remarks<ImportFinding>();
  const values = new Map<DateField, Map<number, DateReading>>();
  for (const field of dateFields) {
    if (!reader.has(field)) continue;
    const title = reader.title(field);
    const cells = rows.flatMap((row) => {
      const text = reader.text(row, field);
      return text === '' ? [] : [{ row: row.row, text }];
    });
    const id = `date-order:${reader.index(field)}`;
    const given = Object.hasOwn(answers, id) ? answers[id] : undefined;
    const answer: DateOrder | null = given === 'day-first' || given === 'month-first' ? given : null;
    const texts = cells.map((cell) => cell.text);
    const undecided = readDateColumn(texts, { bareNumbers: '1900' });
    const column = answer === null ? undecided : readDateColumn(texts, { bareNumbers: '1900', answer });
    values.set(field, new Map(cells.map(({ row }, index) => [row, column.readings[index] ?? { kind: 'blank' }])));

    const { decidedBy } = undecided;
    if (decidedBy.how === 'contradiction') {
      const day = cells[decidedBy.dayFirst];
      const month = cells[decidedBy.monthFirst];
      if (day !== undefined && month !== undefined && answer === null) {
        const message = `Row ${day.row} (“${day.text}”) puts the day first and row ${month.row} (“${month.text}”) the month.`;
        for (const { row, text } of [day, month]) {
          findings.add(row, {
            severity: 'error',
            column: title,
            text,
            message,
            accepted: 'one order for the whole column: say which one holds, then mend or skip the other row',
          });
        }
      }
    }
    if (decidedBy.how === 'open' || decidedBy.how === 'contradiction') {
      const open = undecided.open.length > 0 ? undecided.open : cells.map((_, index) => index).slice(0, 1);
      const example = cells[open[0] ?? 0];
      if (example !== undefined) {
        const guess = decidedBy.how === 'open' ? (defaults.dateOrder ?? null) : null;
        const rowsConcerned = open.flatMap((index) => cells[index]?.row ?? []);
        questions.push(orderQuestion(id, title, example.text, rowsConcerned, guess, answer));
      }
    }
  }
  return { value: (row, field) => values.get(field)?.get(row.row) ?? { kind: 'blank' }, questions, findings };
}

function orderQuestion(
  id: string,
  column: string,
  example: string,
  rowsConcerned: readonly number[],
  guess: DateOrder | null,
  answer: DateOrder | null,
): ImportQuestion {
  const preview = (order: DateOrder) => {
    const [reading] = readDateColumn([example], { answer: order }).readings;
    return reading?.kind === 'date' ? `${example} is ${reading.date}` : `${example}: no such day`;
  };
  return {
    id,
    kind: 'date-order',
    column,
    text: `“${example}” under “${column}” can be read two ways. Which number comes first?`,
    choices: [
      { value: 'day-first', label: 'The day', preview: preview('day-first') },
      { value: 'month-first', label: 'The month', preview: preview('month-first') },
    ],
    guess,
    rowsConcerned,
    blocking: true,
    answer,
  };
}
