import type { PlanView } from '../contract/plan.ts';
import { readSettings } from '../workbook/store/connection.ts';
import { moneyOf } from '../workbook/store/money.ts';
import { planJobs, progressMeasures } from '../workbook/store/plan.ts';
import { progressOverTime } from '../workbook/store/progress-over-time.ts';
import { listRecords, needRecord } from '../workbook/store/record-tables.ts';
import { act, counted, needBuild, procedures } from './context.ts';
import { barsOf } from './plan-bars.ts';
import { needJob, postFinish, postHours } from './plan-finish.ts';

const { plan } = procedures;

/** "3 h 20 min", "45 min". */
const hours = (minutes: number): string =>
  minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h${minutes % 60 === 0 ? '' : ` ${minutes % 60} min`}`;

function planAnswer(view: Omit<PlanView, 'answer'>): string {
  const jobs = view.phases.flatMap((phase) => phase.jobs);
  if (jobs.length === 0) return 'No jobs yet: the first one you write down starts the plan.';
  const open = jobs.filter(({ done }) => !done);
  if (open.length === 0) return `All ${jobs.length} jobs are done.`;
  const ready = open.filter(({ waitsFor }) => waitsFor.length === 0);
  const minutes = view.phases.reduce((sum, { minutesLeft }) => sum + minutesLeft, 0);
  const unguessed = open.filter(({ minutesGuess }) => minutesGuess === null).length;
  const work = `${hours(minutes)} of work left by your guesses${unguessed === 0 ? '' : `, ${unguessed} of them without one`}`;
  return `${open.length} of ${counted(jobs.length, 'job')} ${open.length === 1 ? 'is' : 'are'} open, ${work}; ${ready.length} can be done tonight.`;
}

export const planProcedures = {
  bars: plan.bars.handler(({ context, input }) => barsOf(context, input.build, input.asOf)),
  view: plan.view.handler(({ context, input }): PlanView => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const today = context.today();
    const asOf = input.asOf !== undefined && input.asOf < today ? input.asOf : undefined;
    const jobs = planJobs(connection, input.build, today, asOf);
    const money = moneyOf(connection, input.build, today, asOf, 'phase').rows;
    const phases = listRecords(connection, 'phases', 'build = ? AND retired_on IS NULL', input.build).sort(
      (a, b) => Number(a['sort']) - Number(b['sort']) || a.id - b.id,
    );
    const known = new Set(phases.map(({ id }) => id));
    const rows = [...phases.map((phase) => ({ id: phase.id as number | null, phase })), { id: null, phase: undefined }];
    const built = rows.map(({ id, phase }) => {
      const own = jobs.filter((job) => (id === null ? job.phase === null || !known.has(job.phase) : job.phase === id));
      const open = own.filter(({ done }) => !done);
      return {
        id,
        name: phase === undefined ? 'No phase' : String(phase['name']),
        gate: String(phase?.['gate'] ?? ''),
        plannedStart: (phase?.['plannedStart'] as string | null | undefined) ?? null,
        plannedEnd: (phase?.['plannedEnd'] as string | null | undefined) ?? null,
        jobsDone: own.length - open.length,
        jobsTotal: own.length,
        minutesLeft: open.reduce((sum, job) => sum + Math.max(0, (job.minutesGuess ?? 0) - job.minutesSpent), 0),
        jobsWithoutGuess: open.filter(({ minutesGuess }) => minutesGuess === null).length,
        costMinor: money.get(id)?.costMinor ?? 0,
        forecastMinor: money.get(id)?.forecastMinor ?? 0,
        jobs: own,
      };
    });
    const view = {
      phases: built.filter(({ id, jobsTotal }) => id !== null || jobsTotal > 0),
      measures: progressMeasures(connection, input.build, asOf),
    };
    return { answer: planAnswer(view), ...view };
  }),
  progress: plan.progress.handler(({ context, input }) => {
    needBuild(context, input.build);
    return progressOverTime(context.book().connection, input.build, input.asOf ?? context.today());
  }),
  finishJob: plan.finishJob.handler(({ context, input }) => {
    const { connection } = context.book();
    const records = input.jobs.map((job) => needJob(needRecord(connection, 'jobs', job, 'jobs')));
    const [only] = records;
    const label =
      records.length === 1 && only !== undefined
        ? `Finishing of ${String(only['title'])}`
        : `Finishing of ${counted(records.length, 'job')}`;
    return act(context, input, label, (writer) => {
      for (const record of records) postFinish(writer, record, input);
      return undefined;
    });
  }),
  reopenJob: plan.reopenJob.handler(({ context, input }) => {
    const record = needJob(needRecord(context.book().connection, 'jobs', input.job, 'job'));
    return act(context, input, `Reopening of ${String(record['title'])}`, (writer) => {
      writer.post({
        kind: 'job-reopened',
        on: input.on,
        build: Number(record.build),
        subjectKind: 'job',
        subject: record.id,
        quantityMilli: 1000,
        payload: { reason: input.reason, name: String(record['title']) },
      });
      return undefined;
    });
  }),
  addHours: plan.addHours.handler(({ context, input }) => {
    const record = needJob(needRecord(context.book().connection, 'jobs', input.job, 'job'));
    return act(context, input, `${hours(input.minutes)} on ${String(record['title'])}`, (writer) => {
      const by = readSettings(writer.connection).author;
      postHours(writer, record, { on: input.on, by, minutes: input.minutes, note: input.note });
      return undefined;
    });
  }),
};
