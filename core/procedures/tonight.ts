import type { PartRow } from '../contract/parts.ts';
import type { PlanJob } from '../contract/plan.ts';
import type { Fetched, TonightJob, TonightView } from '../contract/tonight.ts';
import { minutesPerDay, startOfDay } from '../dates/instant.ts';
import { togetherTime } from '../schedule/calendar.ts';
import { type BenchJob, planTonight, type Tonight, tonightRule, type Want } from '../schedule/tonight.ts';
import { showMinutes, workingMinutes } from '../schedule/working-time.ts';
import { peopleOf } from '../workbook/store/calendar.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { planJobs, toolsAtHand } from '../workbook/store/plan.ts';
import { fetchFrom } from '../workbook/store/tonight-facts.ts';
import { type Context, counted, needBuild, procedures } from './context.ts';
import { reviewOf } from './gate.ts';
import { benchOf } from './tonight-bench.ts';
import { fitsSaid, leftOf, partWant, toolWant } from './tonight-words.ts';

const { tonight } = procedures;

/** Hours of an evening when the week has none left today. Ours, no published source. */
const assumedMinutes = 180;

/** How long the session is: as asked, what is left of today's hours, or an evening. */
function sessionOf(
  context: Context,
  build: number,
  asked: number | undefined,
): { minutes: number; minutesFrom: string } {
  if (asked !== undefined) return { minutes: asked, minutesFrom: 'as asked' };
  const morning = startOfDay(context.today());
  const instant = context.now();
  const now = morning + instant.getHours() * 60 + instant.getMinutes();
  const hours = togetherTime(peopleOf(context.book().connection, build, context.settings()));
  const left = workingMinutes(hours, now, morning + minutesPerDay);
  return left > 0
    ? { minutes: left, minutesFrom: 'what is left of today’s hours' }
    : { minutes: assumedMinutes, minutesFrom: 'no hours are left today by the calendar, so three are taken' };
}

const wantsOf = (job: PlanJob): Want[] => [
  ...job.needs.filter(({ missingMilli }) => missingMilli > 0).map(({ part }) => ({ kind: 'part' as const, id: part })),
  ...job.tools.filter(({ atHand }) => !atHand).map(({ id }) => ({ kind: 'tool' as const, id })),
];

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function answerOf(jobs: readonly PlanJob[], plan: Tonight, view: Omit<TonightView, 'answer' | 'begin'>): TonightView {
  const open = jobs.filter(({ done }) => !done);
  const [first] = view.jobs;
  if (jobs.length === 0) {
    return {
      ...view,
      answer: 'No jobs are written down yet, so nothing can be picked for tonight.',
      begin: 'Write the first job down on the Plan, with a guess of its hours and the parts and tools that it needs.',
    };
  }
  if (open.length === 0) return { ...view, answer: `All ${jobs.length} jobs are done.`, begin: '' };
  if (first === undefined) {
    const best = view.unlocks[0];
    const begin =
      best === undefined ? 'The open jobs wait for each other; see the Plan for what each waits for.' : best.says;
    return { ...view, answer: 'No job can begin now: each waits for a part, a tool or another job.', begin };
  }
  const { turns } = plan;
  const planned = turns.reduce((sum, { minutes }) => sum + minutes, 0);
  const answer =
    turns.length === 0
      ? `${counted(plan.ready.length, 'job')} can begin now, none with a guess of its hours: begin with “${first.job.title}”.`
      : `First “${first.job.title}”: ${counted(turns.length, 'job')} for ${showMinutes(planned)} of ${showMinutes(view.minutes)}.`;
  return { ...view, answer, begin: '' };
}

export const tonightProcedures = {
  view: tonight.view.handler(({ context, input }): TonightView => {
    const { build } = input;
    needBuild(context, build);
    const { connection } = context.book();
    const today = context.today();
    const asOf = input.asOf !== undefined && input.asOf < today ? input.asOf : undefined;
    const session = sessionOf(context, build, input.minutes);
    const { review } = reviewOf(context, build, asOf);
    const jobs = planJobs(connection, build, today, asOf);
    const open = jobs.filter(({ done }) => !done);
    const byId = new Map(open.map((job) => [job.id, job]));
    const ids = [...new Set(open.flatMap(({ needs }) => needs.map(({ part }) => part)))];
    const rows = new Map(
      (ids.length === 0 ? [] : partRows(connection, { build, today, asOf, ids })).map((row) => [row.id, row]),
    );
    const rowsOf = (job: PlanJob): PartRow[] =>
      job.needs.flatMap(({ part }) => {
        const row = rows.get(part);
        return row === undefined ? [] : [row];
      });
    const holds = new Map(
      review.blockers.flatMap(({ subject, daysGained }, place) =>
        subject.kind === 'job' ? [[subject.id, { place, daysGained }] as const] : [],
      ),
    );
    const plan = planTonight(
      open.map(
        (job): BenchJob => ({
          id: job.id,
          minutesLeft: leftOf(job),
          earlier: job.earlier.filter(({ done }) => !done).map(({ id }) => id),
          wants: wantsOf(job),
          hold: holds.get(job.id) ?? null,
          priority: Math.min(9, ...rowsOf(job).map(({ priority }) => priority)),
          sort: job.sort,
        }),
      ),
      session.minutes,
    );
    const sheets = benchOf(context, build, asOf);
    const turnOf = new Map(plan.turns.map((turn) => [turn.id, turn]));
    const shown = [...plan.turns.map(({ id }) => id), ...plan.ready.filter((id) => !turnOf.has(id))];
    const titles = (list: readonly number[]): string[] => list.map((id) => byId.get(id)?.title ?? '');
    const jobOf = (job: PlanJob): TonightJob => {
      const turn = turnOf.get(job.id);
      const after = job.earlier.filter(({ done }) => !done).map(({ title }) => title);
      const fetch: Fetched[] = fetchFrom(connection, build, asOf, rowsOf(job));
      return {
        job,
        minutesLeft: leftOf(job),
        daysGained: holds.get(job.id)?.daysGained ?? null,
        waiting: plan.waiting.get(job.id) ?? 0,
        fits: leftOf(job) === null ? 'not guessed' : turn === undefined ? 'no' : turn.whole ? 'whole' : 'begun',
        minutesTonight: turn?.minutes ?? 0,
        says: fitsSaid(job, turn, after),
        fetch,
        ...sheets(job),
      };
    };
    const tools = toolsAtHand(connection, build, asOf);
    const unlocks = plan.unlocks.map(({ wants, jobs: brings }) => {
      const missing = byId.get(brings[0] ?? 0)?.needs ?? [];
      const named = wants.flatMap(({ kind, id }) => {
        const row = kind === 'part' ? rows.get(id) : undefined;
        const tool = kind === 'tool' ? tools.get(id) : undefined;
        const lacking = missing.find(({ part }) => part === id)?.missingMilli ?? 0;
        if (row !== undefined) return [{ kind, id, ...partWant(row, lacking) }];
        return tool === undefined ? [] : [{ kind, id, ...toolWant(tool) }];
      });
      return {
        wants: named,
        jobs: brings.map((id) => ({ id, title: byId.get(id)?.title ?? '' })),
        says: `${capital(named.map(({ does }) => does).join(', '))}: brings ${titles(brings)
          .map((title) => `“${title}”`)
          .join(', ')}.`,
      };
    });
    return answerOf(jobs, plan, {
      ...session,
      minutesOver: plan.minutesOver,
      rule: tonightRule,
      jobs: shown.flatMap((id) => {
        const job = byId.get(id);
        return job === undefined ? [] : [jobOf(job)];
      }),
      unlocks,
      caution: review.caution,
    });
  }),
};
