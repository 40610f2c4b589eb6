import { call } from '@orpc/server';
import type { BuyingView } from '../contract/buying.ts';
import type { WhatIfView } from '../contract/what-if.ts';
import { daysBetween } from '../dates/calendar-date.ts';
import type { ForecastTask } from '../forecast/facts.ts';
import { wholeForecast } from '../forecast/view.ts';
import { formatMoney } from '../money/currency.ts';
import { readSettings } from '../workbook/store/connection.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { readRecord } from '../workbook/store/record-tables.ts';
import { scratchCopy } from '../workbook/store/scratch.ts';
import { buyingPlanOf } from './buying.ts';
import { type Context, needBuild, procedures } from './context.ts';
import { forecastProcedures, usualForecast } from './forecast.ts';
import { moneyProcedures } from './money.ts';
import { type AppliedChanges, applyChanges } from './what-if-changes.ts';

const { whatIf } = procedures;

/** The runs and the seed of the forecast itself: the days as it stands are those that it says, and columns differ by their changes alone. */
const trial = { ...usualForecast, daysWonFor: 0 };

type Column = WhatIfView['columns'][number];
interface Worked {
  readonly column: Column;
  readonly task: ForecastTask;
  readonly plan: BuyingView;
  readonly about: ReadonlySet<number>;
}

/** The delivery days of the parts whose lead time was changed, set to just that. */
function withLeads(task: ForecastTask, leads: ReadonlyMap<number, number>): ForecastTask {
  if (leads.size === 0) return task;
  const daysOf = new Map(
    task.facts.coming.flatMap(({ arrival, part }) => {
      const days = leads.get(part);
      return days === undefined ? [] : [[arrival, days] as const];
    }),
  );
  const arrivals = task.facts.arrivals.map((arrival) => {
    const value = daysOf.get(arrival.id);
    return value === undefined ? arrival : { ...arrival, days: { kind: 'constant' as const, value } };
  });
  return { ...task, facts: { ...task.facts, arrivals } };
}

/**
 * What the build in this workbook comes to.
 * @param now as it stands, which a plan that nothing makes harder is never later than.
 */
async function workOut(
  context: Context,
  build: number,
  name: string,
  applied: AppliedChanges,
  now?: Worked,
): Promise<Worked> {
  const task = withLeads(await call(forecastProcedures.facts, { build }, { context }), applied.leads);
  const forecast = wholeForecast(task, now === undefined ? trial : { ...trial, comparedWith: now.task });
  const [gate] = forecast.gates;
  const money = await call(moneyProcedures.summary, { build }, { context });
  const plan = buyingPlanOf(context, { build, safe: false, weeks: 52, quick: true }, now?.plan);
  const cash = plan.cash.map(({ cashMinor }) => cashMinor);
  return {
    task,
    plan,
    about: applied.parts,
    column: {
      name,
      changes: [...applied.words],
      p50On: gate?.p50On ?? null,
      p80On: gate?.p80On ?? null,
      noForecast: gate === undefined ? forecast.answer : '',
      costMinor: money.forecastMinor,
      toComeMinor: money.stillToPayMinor + money.remainingMinor,
      planOn: plan.gateOn,
      planSpendMinor: plan.spendMinor,
      leastCashMinor: cash.length === 0 ? null : Math.min(...cash),
      planSays: plan.answer,
    },
  };
}

/** Works the changes out on a copy in memory; the workbook itself is only read. */
async function tried(
  context: Context,
  build: number,
  variant: { readonly name: string; readonly changes: Parameters<typeof applyChanges>[2] },
  now: Worked,
): Promise<Worked> {
  const book = context.book();
  const scratch = scratchCopy(book.connection);
  try {
    const copy = { ...book, connection: scratch.connection, readOnly: false, close: () => undefined };
    const inCopy: Context = {
      ...context,
      book: () => copy,
      current: () => copy,
      settings: () => readSettings(scratch.connection),
      announce: () => undefined,
    };
    return await workOut(inCopy, build, variant.name, await applyChanges(inCopy, build, variant.changes), now);
  } finally {
    scratch.close();
  }
}

/** Days that a way of going on is earlier than now; below zero when it is later, null when one of them has no day. */
const daysWon = (now: Column, then: Column): number | null =>
  now.p50On === null || then.p50On === null ? null : daysBetween(then.p50On, now.p50On);

function compared(now: Column, then: Column, currency: string): string {
  const days = daysWon(now, then);
  const count = (number: number): string => `${number} ${number === 1 ? 'day' : 'days'}`;
  const date =
    days === null || then.p50On === null
      ? `no day can be forecast: ${then.noForecast || now.noForecast}`
      : days === 0
        ? `no change of the day, ${dayWords(then.p50On)}`
        : `${count(Math.abs(days))} ${days > 0 ? 'earlier' : 'later'}, ${dayWords(then.p50On)} as likely as not`;
  const more = then.costMinor - now.costMinor;
  const cost =
    more === 0 ? 'for the same money' : `for ${formatMoney(Math.abs(more), currency)} ${more > 0 ? 'more' : 'less'}`;
  return `${then.name}: ${date}, ${cost}.`;
}

/** One way of going on is told whole; of several the earliest and the cheapest, for the rest stands side by side. */
function answerOf(now: Column, ways: readonly Column[], currency: string): string {
  const [only] = ways;
  if (only === undefined) return '';
  if (ways.length === 1) return compared(now, only, currency);
  const won = (way: Column): number => daysWon(now, way) ?? Number.NEGATIVE_INFINITY;
  const [earliest = only] = ways.toSorted((a, b) => won(b) - won(a) || a.costMinor - b.costMinor);
  const [cheapest = only] = ways.toSorted((a, b) => a.costMinor - b.costMinor || won(b) - won(a));
  const wins = won(earliest) > 0;
  const saves = cheapest.costMinor < now.costMinor;
  if (wins && saves && earliest === cheapest) return `Earliest and cheapest is ${compared(now, earliest, currency)}`;
  return [
    wins ? `Earliest is ${compared(now, earliest, currency)}` : `None of these ${ways.length} brings the day nearer.`,
    saves ? `Cheapest is ${compared(now, cheapest, currency)}` : 'None costs less than now.',
  ].join(' ');
}

/** Parts that are ordered on another day or at another price in some column, or that a change is about and that some column still orders. */
function linesOf(worked: readonly Worked[], nameOf: (part: number) => string): WhatIfView['lines'] {
  const cells = worked.map(({ plan }) => new Map(plan.lines.map((line) => [line.part, line])));
  const parts = new Set([...cells.flatMap((lines) => [...lines.keys()]), ...worked.flatMap(({ about }) => [...about])]);
  return [...parts].flatMap((part) => {
    const row = cells.map((lines, index) => {
      const line = lines.get(part);
      const gone = worked[index]?.plan.status === 'plan' ? 'nothing to order' : 'no plan';
      return {
        on: line?.on ?? null,
        priceMinor: line?.priceMinor ?? null,
        says: line === undefined ? gone : line.sentence,
      };
    });
    const first = row[0];
    const differs = row.some(({ on, priceMinor }) => on !== first?.on || priceMinor !== first?.priceMinor);
    // A part that is ordered nowhere any more is here or on its way: no order of it changes.
    const asked =
      worked.some(({ about }) => about.has(part)) &&
      row.some(({ on, priceMinor }) => on !== null || priceMinor !== null);
    return differs || asked ? [{ part, description: nameOf(part), cells: row }] : [];
  });
}

export const whatIfProcedures = {
  run: whatIf.run.handler(async ({ context, input }): Promise<WhatIfView> => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const now = await workOut(context, input.build, 'As it stands', {
      words: [],
      leads: new Map(),
      parts: new Set(),
    });
    const worked: Worked[] = [now];
    for (const variant of input.variants) worked.push(await tried(context, input.build, variant, now));
    const columns = worked.map(({ column }) => column);
    return {
      answer: answerOf(now.column, columns.slice(1), context.settings().currency),
      gateName: String(readRecord(connection, 'builds', input.build)?.['gateName'] ?? ''),
      columns,
      lines: linesOf(worked, (part) => String(readRecord(connection, 'parts', part)?.['description'] ?? part)),
    };
  }),
};
