import type { EarnedMeasure, EarnedView } from '../contract/money.ts';
import { addDays, compareDates, daysBetween, lastDayOfMonth, monthsBetween } from '../dates/calendar-date.ts';
import { type BaselinePlan, type BaselineRow, baselineRows } from '../progress/baseline.ts';
import {
  budgetAtCompletion,
  type EarnedFacts,
  type EarnedOf,
  earnedCurve,
  plannedBy,
} from '../progress/earned-curves.ts';
import {
  type EarnedState,
  earnedIndices,
  earnedSchedule,
  estimateAssumes,
  estimatesAtCompletion,
  type Figure,
  toComplete,
} from '../progress/earned-value.ts';
import { Refusal } from '../refusal.ts';
import { showMinutes } from '../schedule/working-time.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { acceptedByDay, costByDay, jobsByDay, minutesByDay } from '../workbook/store/earned.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { moneyOf } from '../workbook/store/money.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { planJobRows } from '../workbook/store/plan.ts';
import { listRecords, needRecord, type RecordValuesRow } from '../workbook/store/record-tables.ts';
import { act, type Context, counted, needBuild, procedures } from './context.ts';
import { createRecord } from './records.ts';

const { money } = procedures;

const howTo =
  'A baseline keeps what is planned now, so that later it can be said whether the build runs to plan. Guess prices and hours, give the phases their planned days (or the build a target day), then keep a baseline below.';

const caution =
  'Few lines make rough indices: for one person’s build take them as a hint. The line-by-line estimate goes before the formulas.';

const shown = (value: number): string => value.toFixed(2);

function indexOf(name: string, label: string, { value, why }: Figure, says: (value: number) => string) {
  return value === null
    ? { name, label, value, text: '–', says: `No figure: ${why}.` }
    : { name, label, value, text: shown(value), says: says(value) };
}

/** Each index in words. `one` is what a unit of it is: a coin of value, an hour of work. */
function indicesOf(of: EarnedOf, state: EarnedState, lineByLine: number): EarnedMeasure['indices'] {
  const { cpi, spi, tcpi } = earnedIndices(state);
  const spent = of === 'money' ? 'money spent' : 'hours worked';
  const under = of === 'money' ? 'it costs more than planned' : 'it takes longer than guessed';
  const over = of === 'money' ? 'it costs less than planned' : 'it goes faster than guessed';
  const compared = (value: number, low: string, high: string): string =>
    Math.abs(value - 1) < 0.005 ? 'as planned' : value < 1 ? low : high;
  const needs = (value: number, end: string): string =>
    value > 1
      ? `what is left must go ${shown(value)} times as well as planned to end on ${end}`
      : `what is left may go at ${shown(value)} of the planned rate and still end on ${end}`;
  return [
    indexOf(
      'CPI',
      of === 'money' ? 'Cost index' : 'Work index',
      cpi,
      (value) => `For each unit of ${spent}, ${shown(value)} of the plan is done: ${compared(value, under, over)}.`,
    ),
    indexOf(
      'SPI',
      'Pace index',
      spi,
      (value) =>
        `${shown(value)} of what was planned by now is done: ${compared(value, 'behind the plan', 'ahead of the plan')}.`,
    ),
    indexOf('TCPI', 'Still needed for the plan', tcpi, (value) => `${needs(value, 'the plan')}.`),
    indexOf(
      'TCPI(EAC)',
      'Still needed for the estimate',
      toComplete(state, lineByLine),
      (value) => `${needs(value, 'the line-by-line estimate')}.`,
    ),
  ].map((row) => ({ ...row, says: row.says.charAt(0).toUpperCase() + row.says.slice(1) }));
}

/** Months of the plan, from the day of the baseline to its end; the first may be broken. */
function planMonths(start: string, end: string): string[] {
  return monthsBetween(start, end).map((month) => {
    const last = lastDayOfMonth(`${month}-01`);
    return last < end ? last : end;
  });
}

/** Months gone on a day, counted along the plan's own months; beyond its end, as calendar months. */
function monthsGone(start: string, ends: readonly string[], day: string): number {
  let from = addDays(start, -1);
  for (const [index, end] of ends.entries()) {
    if (day <= end) return index + Math.max(0, daysBetween(from, day)) / Math.max(1, daysBetween(from, end));
    from = end;
  }
  return ends.length + daysBetween(from, day) / 30.4375;
}

function dayOfMonths(start: string, ends: readonly string[], months: number): string {
  const whole = Math.floor(months);
  const before = whole === 0 ? addDays(start, -1) : ends[whole - 1];
  const last = ends.at(-1) ?? start;
  if (before === undefined || ends[whole] === undefined) {
    return addDays(last, Math.round((months - ends.length) * 30.4375));
  }
  return addDays(before, Math.round((months - whole) * daysBetween(before, ends[whole])));
}

function measureOf(
  of: EarnedOf,
  facts: EarnedFacts,
  span: { start: string; end: string },
  day: string,
  lineByLine: number,
): EarnedMeasure | null {
  const bac = budgetAtCompletion(of, facts.rows);
  if (bac === 0) return null;
  const ends = planMonths(span.start, span.end);
  const past = [span.start, ...ends.filter((end) => end < day && end > span.start), day].filter((on) => on <= day);
  const days = [...new Set(past)].sort(compareDates);
  const real = earnedCurve(of, facts, days);
  const last = real.at(-1) ?? { pv: 0, ev: 0, ac: 0 };
  const state = { bac, pv: last.pv, ev: last.ev, ac: last.ac };
  const ahead = ends.filter((end) => end > day);
  const planned = plannedBy(of, facts.rows, ahead);
  const rounded = ({ value }: Figure): number | null => (value === null ? null : Math.round(value));
  const estimates = estimatesAtCompletion(state, lineByLine).map(({ way, eac, etc, vac }) => ({
    way,
    assumes: estimateAssumes[way],
    value: rounded(eac),
    toCome: rounded(etc),
    leftOver: rounded(vac),
    why: eac.why,
    first: way === 'line by line',
  }));
  const formulas = estimates.flatMap(({ value, first }) => (value === null || first ? [] : [value]));
  const gone = monthsGone(span.start, ends, day);
  const schedule = earnedSchedule(plannedBy(of, facts.rows, ends), state.ev, gone);
  const done = state.ev >= bac;
  const endOn =
    done || schedule.duration.value === null ? null : dayOfMonths(span.start, ends, schedule.duration.value);
  const counted = (months: number): string => `${months.toFixed(1)} months`;
  const share = Math.round((state.ev / bac) * 100);
  return {
    of,
    says:
      of === 'money'
        ? `${share} % of the planned parts are here, ${Math.round((state.pv / bac) * 100)} % should be.`
        : `${showMinutes(Math.round(state.ev))} of ${showMinutes(bac)} planned work are done, ${showMinutes(Math.round(state.pv))} should be.`,
    ...state,
    indices: indicesOf(of, state, lineByLine),
    estimates,
    outside: formulas.length > 0 && (lineByLine < Math.min(...formulas) || lineByLine > Math.max(...formulas)),
    early: state.ev < bac / 10,
    schedule: {
      earnedMonths: schedule.es,
      goneMonths: gone,
      endOn,
      says: done
        ? 'All that was planned is done.'
        : `${counted(gone)} of the plan are gone and ${counted(schedule.es)} of it are earned${endOn === null ? `; no end can be read from it: ${schedule.duration.why}` : `; at this pace it ends on ${dayWords(endOn)}`}.`,
    },
    curve: [...real, ...ahead.map((on, index) => ({ on, pv: planned[index] ?? 0, ev: null, ac: null }))],
  };
}

const newest = (baselines: readonly RecordValuesRow[]): RecordValuesRow | undefined =>
  [...baselines].sort((one, other) => compareDates(String(one['on']), String(other['on'])) || one.id - other.id).at(-1);

/** What the plan of a build says now, for a baseline. */
function planNow(connection: Connection, build: number, on: string, today: string): BaselinePlan {
  const phases = listRecords(connection, 'phases', 'build = ? AND retired_on IS NULL', build)
    .sort((one, other) => Number(one['sort']) - Number(other['sort']))
    .map((phase) => ({
      id: phase.id,
      start: phase['plannedStart'] as string | null,
      end: phase['plannedEnd'] as string | null,
    }));
  return {
    on,
    targetOn: needRecord(connection, 'builds', build)['targetOn'] as string | null,
    phases,
    jobs: planJobRows(connection, build, undefined).map(({ id, title, phase, minutesGuess, doneOn }) => ({
      id,
      title,
      phase,
      minutes: minutesGuess,
      doneOn,
    })),
    parts: partRows(connection, { build, today })
      .filter(({ optional, needMilli }) => !optional && needMilli > 0)
      .map((part) => ({
        id: part.id,
        title: part.description,
        phase: part.phase,
        job: part.job,
        budgetMinor: part.forecastMinor,
        neededBy: part.neededBy,
        promisedOn: part.promisedOn,
        accepted: part.uncoveredMilli + part.onOrderMilli + part.inspectionMilli === 0,
      })),
  };
}

function viewOf(context: Context, build: number, asOf: string | undefined, wanted: number | undefined): EarnedView {
  const { connection } = context.book();
  const day = asOf ?? context.today();
  const baselines = listRecords(
    connection,
    'baselines',
    'build = ? AND retired_on IS NULL AND on_day <= ?',
    build,
    day,
  );
  const record = wanted === undefined ? newest(baselines) : baselines.find(({ id }) => id === wanted);
  const named = baselines.map((one) => ({ id: one.id, name: String(one['name']), on: String(one['on']) }));
  if (record === undefined) {
    return {
      answer: 'No baseline is kept yet, so nothing can be held against a plan.',
      baseline: null,
      baselines: named,
      howTo,
      unplanned: 0,
      measures: [],
      caution,
    };
  }
  const rows = record['rows'] as unknown as readonly BaselineRow[];
  const start = String(record['on']);
  const end = [start, ...rows.map(({ endOn }) => endOn)].sort(compareDates).at(-1) ?? start;
  const parts = partRows(connection, { build, asOf, today: context.today() });
  const jobs = planJobRows(connection, build, asOf);
  const facts: EarnedFacts = {
    rows,
    accepted: acceptedByDay(connection, build, day),
    jobsDone: jobsByDay(connection, build, day),
    worked: minutesByDay(connection, build, day),
    cost: costByDay(connection, build, day),
    needMilli: new Map(parts.map(({ id, needMilli }) => [id, needMilli])),
  };
  const planned = new Set(rows.map(({ kind, id }) => `${kind} ${id}`));
  const unplanned = [
    ...parts.filter(({ id, needMilli, optional }) => needMilli > 0 && !optional && !planned.has(`part ${id}`)),
    ...jobs.filter(({ id }) => !planned.has(`job ${id}`)),
  ].length;
  const costs = moneyOf(connection, build, context.today(), asOf).total.forecastMinor;
  const minutes = jobs.reduce(
    (sum, { done, minutesGuess, minutesSpent }) =>
      sum + (done && minutesSpent > 0 ? minutesSpent : Math.max(minutesSpent, minutesGuess ?? 0)),
    0,
  );
  const span = { start, end };
  const measures = [measureOf('money', facts, span, day, costs), measureOf('hours', facts, span, day, minutes)].filter(
    (measure) => measure !== null,
  );
  const [first] = measures;
  return {
    answer:
      first === undefined
        ? `The baseline “${String(record['name'])}” has neither prices nor hours, so there is nothing to hold against it.`
        : measures.map(({ says }) => says).join(' '),
    baseline: {
      id: record.id,
      name: String(record['name']),
      on: start,
      parts: rows.filter(({ kind }) => kind === 'part').length,
      jobs: rows.filter(({ kind }) => kind === 'job').length,
      endOn: end,
    },
    baselines: named,
    howTo,
    unplanned,
    measures,
    caution,
  };
}

export const earnedProcedures = {
  earned: money.earned.handler(({ context, input }) => {
    needBuild(context, input.build);
    if (input.baseline !== undefined) needRecord(context.book().connection, 'baselines', input.baseline, 'baseline');
    return viewOf(context, input.build, input.asOf, input.baseline);
  }),
  setBaseline: money.setBaseline.handler(({ context, input }) => {
    const build = needBuild(context, input.build);
    const rows = baselineRows(planNow(context.book().connection, build.id, input.on, context.today()));
    if (rows === null || rows.length === 0) {
      throw new Refusal(
        'not-allowed-from-here',
        rows === null
          ? 'There is no day to plan to, so no baseline can be kept. Nothing was changed.'
          : 'There is nothing to plan yet, so no baseline can be kept. Nothing was changed.',
        { field: 'build', accepted: 'a build with parts or jobs, and a target day or planned days of its phases' },
      );
    }
    return act(context, input, `Baseline “${input.name}”, ${counted(rows.length, 'line')}`, (writer) => {
      createRecord(writer, 'baseline', build.id, input.on, { name: input.name, on: input.on, rows });
      return undefined;
    });
  }),
};
