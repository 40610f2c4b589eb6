import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { readSettings } from '../workbook/store/connection.ts';
import type { RecordValuesRow } from '../workbook/store/record-tables.ts';

/** @throws Refusal `retired` naming `job` for one that was dropped from the plan. */
export function needJob(record: RecordValuesRow): RecordValuesRow {
  if (record.retiredOn !== null) {
    throw new Refusal('retired', `“${String(record['title'])}” was dropped from the plan. Nothing was changed.`, {
      field: 'job',
      accepted: 'a job of the plan',
    });
  }
  return record;
}

/** Who does it: as said, else the workbook's own author; empty when neither is known. */
export const whoOf = (writer: Pick<ActWriter, 'connection'>, by: string): string =>
  by.trim() === '' ? readSettings(writer.connection).author : by.trim();

/** Logs minutes on a job; none are logged for 0. */
export function postHours(
  writer: ActWriter,
  record: RecordValuesRow,
  { on, by, minutes, note = '' }: { on: string; by: string; minutes: number; note?: string },
): void {
  if (minutes === 0) return;
  const about = { on, build: Number(record.build), subjectKind: 'job', subject: record.id } as const;
  writer.post({ kind: 'hours', ...about, note, payload: { minutes, by } });
}

/**
 * Finishes one job, with the minutes spent on it.
 * @throws Refusal `bad-input` naming `by` when it is signed off by name and nobody is named.
 */
export function postFinish(
  writer: ActWriter,
  record: RecordValuesRow,
  given: { on: string; by: string; minutesSpent: number | null; note: string },
): void {
  const { on, note } = given;
  const by = whoOf(writer, given.by);
  if (record['needsSignOff'] === true && by === '') {
    throw new Refusal('bad-input', `“${String(record['title'])}” is signed off by name. Nothing was changed.`, {
      field: 'by',
      accepted: 'the name of who signs the job off',
    });
  }
  postHours(writer, record, { on, by, minutes: given.minutesSpent ?? 0 });
  writer.post({
    kind: 'job-done',
    on,
    build: Number(record.build),
    subjectKind: 'job',
    subject: record.id,
    quantityMilli: 1000,
    note,
    payload: { by, name: String(record['title']) },
  });
}
