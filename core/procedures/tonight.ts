import type { PartRow } from '../contract/parts.ts';
import type { PlanJob } from '../contract/plan.ts';
import type { Fetched, TonightJob, TonightView } from '../contract/tonight.ts';
import { minutesPerDay, startOfDay } from '../dates/instant.ts';
import { togetherTime } from '../schedule/calendar.ts';
import { samePlace } from '../schedule/place.ts';
import { type BenchJob, planTonight, tonightRule, type Want } from '../schedule/tonight.ts';
import { workingMinutes } from '../schedule/working-time.ts';
import { allowedFrom } from '../workbook/store/allowed-from.ts';
import { peopleOf } from '../workbook/store/calendar.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { planJobRows, planJobs, toolsAtHand } from '../workbook/store/plan.ts';
import { runningJobs } from '../workbook/store/running-jobs.ts';
import { fetchFrom } from '../workbook/store/tonight-facts.ts';
import { type Context, needBuild, procedures } from './context.ts';
import { nowMinuteOf } from './forecast.ts';
import { reviewOf } from './gate.ts';
import { clockOf, tonightActs } from './tonight-acts.ts';
import { answerOf } from './tonight-answer.ts';
import { benchOf } from './tonight-bench.ts';
import {
  consumablesOf,
  fitsSaid,
  leftOf,
  notTonight,
  partWant,
  runningSaid,
  sinceWords,
  toolWant,
} from './tonight-words.ts';

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

/** Places that jobs name, once each however they are written. */
function placesOf(jobs: readonly PlanJob[]): string[] {
  const found: string[] = [];
  for (const { place } of jobs) {
    if (place.trim() !== '' && !found.some((one) => samePlace(one, place))) found.push(place.trim());
  }
  return found.sort((one, other) => one.localeCompare(other));
}

export const tonightProcedures = {
  ...tonightActs,
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
    const place = input.place ?? '';
    const running = runningJobs(connection, build, asOf);
    const clocks = new Map([...running].map(([id, one]) => [id, { ...one, ...clockOf(one, context.now()) }]));
    const nowMinute = nowMinuteOf(context, asOf);
    const people = peopleOf(connection, build, context.settings());
    const rowOf = new Map(planJobRows(connection, build, asOf).map((row) => [row.id, row]));
    const notNow = new Map(
      open.map((job) => {
        const row = rowOf.get(job.id);
        const from = row === undefined ? nowMinute : allowedFrom(row, rowOf, people, nowMinute);
        return [job.id, notTonight(job, place, from, nowMinute)];
      }),
    );
    const plan = planTonight(
      open.map((job): BenchJob => {
        const clock = clocks.get(job.id);
        const left = leftOf(job);
        const shared = { id: job.id, hands: job.hands, oneSitting: job.oneSitting, running: clock !== undefined };
        if (clock !== undefined) {
          // Somebody is at it: whatever the workbook has it waiting for, the hours go there first.
          const minutesLeft = left === null ? null : Math.max(0, left - clock.minutes);
          return {
            ...shared,
            minutesLeft,
            earlier: [],
            waitAfter: [],
            wants: [],
            allowed: true,
            hold: null,
            priority: 1,
            sort: job.sort,
          };
        }
        return {
          ...shared,
          minutesLeft: left,
          earlier: job.earlier.filter(({ done }) => !done).map(({ id }) => id),
          waitAfter: job.lags.filter(({ minutes }) => minutes > 0).map(({ job: earlier }) => earlier),
          allowed: notNow.get(job.id) === '',
          wants: wantsOf(job),
          hold: holds.get(job.id) ?? null,
          priority: Math.min(9, ...rowsOf(job).map(({ priority }) => priority)),
          sort: job.sort,
        };
      }),
      session.minutes,
    );
    const sheets = benchOf(context, build, asOf);
    const turnOf = new Map(plan.turns.map((turn) => [turn.id, turn]));
    const shown = [...new Set([...running.keys(), ...plan.turns.map(({ id }) => id), ...plan.ready])];
    const titles = (list: readonly number[]): string[] => list.map((id) => byId.get(id)?.title ?? '');
    const jobOf = (job: PlanJob): TonightJob => {
      const turn = turnOf.get(job.id);
      const after = job.earlier.filter(({ done }) => !done).map(({ title }) => title);
      const fetch: Fetched[] = fetchFrom(connection, build, asOf, rowsOf(job));
      const clock = clocks.get(job.id);
      return {
        job,
        who: people.find(({ id }) => id === String(job.person))?.name ?? '',
        consumables: consumablesOf(job, rowsOf(job)),
        running:
          clock === undefined ? null : { by: clock.by, at: clock.at, minutes: clock.minutes, unsure: clock.unsure },
        minutesLeft: leftOf(job),
        daysGained: holds.get(job.id)?.daysGained ?? null,
        waiting: plan.waiting.get(job.id) ?? 0,
        fits: leftOf(job) === null ? 'not guessed' : turn === undefined ? 'no' : turn.whole ? 'whole' : 'begun',
        minutesTonight: turn?.minutes ?? 0,
        says:
          clock === undefined
            ? fitsSaid(job, turn, after)
            : runningSaid(job, clock.minutes, sinceWords(clock.at, context.today())),
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
      place,
      places: placesOf(open),
      others: open.flatMap((job) => {
        const says = notNow.get(job.id) ?? '';
        const could = !running.has(job.id) && wantsOf(job).length === 0 && job.earlier.every(({ done }) => done);
        return says === '' || !could ? [] : [{ id: job.id, title: job.title, says }];
      }),
      caution: review.caution,
    });
  }),
};
