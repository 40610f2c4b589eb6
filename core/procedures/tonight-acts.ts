import { Refusal } from '../refusal.ts';
import { showMinutes } from '../schedule/working-time.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { planJobRows } from '../workbook/store/plan.ts';
import { needRecord, type RecordValuesRow } from '../workbook/store/record-tables.ts';
import { type RunningJob, runningJobs } from '../workbook/store/running-jobs.ts';
import { act, type Context, procedures } from './context.ts';
import { needJob, postFinish, postHours, whoOf } from './plan-finish.ts';
import { changeRecord } from './records.ts';
import { sinceWords } from './tonight-words.ts';

const { tonight } = procedures;

/** Longer than this nobody is at the bench in one go: somebody forgot to stop. Ours, no published source. */
const longestSitting = 12 * 60;

/** Minutes since the start by the clock, and whether they can be true. */
export function clockOf(running: RunningJob, now: Date): { minutes: number; unsure: boolean } {
  const minutes = Math.round((now.getTime() - Date.parse(running.at)) / 60_000);
  return { minutes: Math.max(0, minutes), unsure: minutes < 0 || minutes > longestSitting };
}

const titleOf = (record: RecordValuesRow): string => String(record['title']);

function jobOf(context: Context, job: number): { record: RecordValuesRow; running: RunningJob | undefined } {
  const { connection } = context.book();
  const record = needJob(needRecord(connection, 'jobs', job, 'job'));
  return { record, running: runningJobs(connection, Number(record.build), undefined).get(record.id) };
}

/** The minutes as said, else by the clock. @throws Refusal naming `minutes` when the clock can't be true. */
function minutesWorked(context: Context, record: RecordValuesRow, running: RunningJob, said: number | null): number {
  const { minutes, unsure } = clockOf(running, context.now());
  if (said !== null) return said;
  if (!unsure) return minutes;
  const since = sinceWords(running.at, context.today());
  throw new Refusal(
    'bad-input',
    `“${titleOf(record)}” was started ${since}, and nobody works that long in one go. Nothing was changed.`,
    { field: 'minutes', accepted: 'how long was really worked, from 0 minutes' },
  );
}

function postStop(
  writer: ActWriter,
  record: RecordValuesRow,
  { on, by, minutes }: { on: string; by: string; minutes: number },
): void {
  writer.post({
    kind: 'job-stopped',
    on,
    build: Number(record.build),
    subjectKind: 'job',
    subject: record.id,
    payload: { by, name: titleOf(record), minutes },
  });
  postHours(writer, record, { on, by, minutes });
}

/** Makes what was spent and what is left the new guess; the best and the worst case are moved so far that they hold it. */
function guessAgain(writer: ActWriter, job: number, on: string, spent: number, left: number): void {
  const record = needRecord(writer.connection, 'jobs', job, 'job');
  const guess = spent + left;
  const low = record['minutesLow'] as number | null;
  const high = record['minutesHigh'] as number | null;
  changeRecord(writer, 'job', record, on, {
    minutesGuess: guess,
    ...(low === null ? {} : { minutesLow: Math.min(low, guess) }),
    ...(high === null ? {} : { minutesHigh: Math.max(high, guess) }),
  });
}

function spentOn(writer: ActWriter, record: RecordValuesRow): number {
  const rows = planJobRows(writer.connection, Number(record.build), undefined);
  return rows.find(({ id }) => id === record.id)?.minutesSpent ?? 0;
}

/** Says so when the hours have used the guess up and nobody has said what is left. */
function noticeUsedUp(writer: ActWriter, record: RecordValuesRow, spent: number): void {
  const guess = record['minutesGuess'] as number | null;
  if (guess === null) writer.notices.push('Nobody has guessed how long it takes: say what is left.');
  else if (spent >= guess) writer.notices.push(`The guess of ${showMinutes(guess)} is used up: say what is left.`);
}

const sameName = (one: string, other: string): boolean =>
  one.trim().toLocaleLowerCase() === other.trim().toLocaleLowerCase();

/** What the same person is at already, with its hours by the clock. */
function stoppedBefore(
  context: Context,
  build: number,
  by: string,
): { record: RecordValuesRow; by: string; minutes: number }[] {
  const { connection } = context.book();
  return [...runningJobs(connection, build, undefined).values()]
    .filter((running) => sameName(running.by, by))
    .flatMap((running) => {
      const record = needRecord(connection, 'jobs', running.job, 'job');
      // A job that was dropped while somebody was at it has no more hours to log.
      if (record.retiredOn !== null) return [];
      return [{ record, by: running.by, minutes: minutesWorked(context, record, running, null) }];
    });
}

export const tonightActs = {
  start: tonight.start.handler(({ context, input }) => {
    const { record, running } = jobOf(context, input.job);
    const title = titleOf(record);
    if (running !== undefined) {
      const who = running.by === '' ? '' : ` by ${running.by}`;
      throw new Refusal(
        'bad-input',
        `“${title}” was started${who} ${sinceWords(running.at, context.today())} and is still going. Nothing was changed.`,
        { field: 'job', accepted: 'a job that nobody is at' },
      );
    }
    const build = Number(record.build);
    const done = planJobRows(context.book().connection, build, undefined).find(({ id }) => id === record.id)?.done;
    if (done === true) {
      throw new Refusal('bad-input', `“${title}” is done. Nothing was changed.`, {
        field: 'job',
        accepted: 'a job that is open; reopen this one on the Plan first',
      });
    }
    const by = whoOf(context.book(), input.by);
    const before = stoppedBefore(context, build, by);
    return act(context, input, `Start of ${title}`, (writer) => {
      for (const other of before) {
        postStop(writer, other.record, { on: input.on, by: other.by, minutes: other.minutes });
        writer.notices.push(`“${titleOf(other.record)}” was stopped after ${showMinutes(other.minutes)}.`);
      }
      writer.post({
        kind: 'job-started',
        on: input.on,
        build,
        subjectKind: 'job',
        subject: record.id,
        payload: { at: context.now().toISOString(), by, name: title },
      });
      return undefined;
    });
  }),

  stop: tonight.stop.handler(({ context, input }) => {
    const { record, running } = jobOf(context, input.job);
    const title = titleOf(record);
    if (running === undefined) {
      throw new Refusal('bad-input', `Nobody is at “${title}”. Nothing was changed.`, {
        field: 'job',
        accepted: 'a job that was started and is still going',
      });
    }
    const minutes = minutesWorked(context, record, running, input.minutes);
    return act(context, input, `Stop of ${title} after ${showMinutes(minutes)}`, (writer) => {
      const by = input.by.trim() === '' ? running.by : input.by.trim();
      postStop(writer, record, { on: input.on, by, minutes });
      const spent = spentOn(writer, record);
      if (input.leftMinutes === null) noticeUsedUp(writer, record, spent);
      else guessAgain(writer, record.id, input.on, spent, input.leftMinutes);
      return undefined;
    });
  }),

  done: tonight.done.handler(({ context, input }) => {
    const { record, running } = jobOf(context, input.job);
    const minutesSpent = running === undefined ? input.minutes : minutesWorked(context, record, running, input.minutes);
    const by = input.by.trim() === '' ? (running?.by ?? '') : input.by;
    const { on, note } = input;
    return act(context, input, `Finishing of ${titleOf(record)}`, (writer) => {
      postFinish(writer, record, { on, by, minutesSpent, note });
      return undefined;
    });
  }),

  left: tonight.left.handler(({ context, input }) => {
    const { record } = jobOf(context, input.job);
    return act(context, input, `${showMinutes(input.leftMinutes)} left of ${titleOf(record)}`, (writer) => {
      guessAgain(writer, record.id, input.on, spentOn(writer, record), input.leftMinutes);
      return undefined;
    });
  }),
};
