import type { CashView } from '../contract/buying.ts';
import { addDays } from '../dates/calendar-date.ts';
import { parseInstant } from '../dates/instant.ts';
import { formatMoney } from '../money/currency.ts';
import { cashCurve, cashMovements, type DatedSum, type MonthlyIncome } from '../purchasing/cash-curve.ts';
import { type BuyingDay, cashPostings, newestCount, recordsOn } from '../workbook/store/buying-facts.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import type { ForecastFacts } from '../workbook/store/forecast-facts.ts';
import { dueRows } from '../workbook/store/order-due.ts';
import { orderRows } from '../workbook/store/order-rows.ts';
import type { RecordValuesRow } from '../workbook/store/record-tables.ts';
import type { Context } from './context.ts';

const pad = (number: number): string => String(number).padStart(2, '0');

/** The day that buying is asked about; work begins now, or when a past day was over. */
export function buyingDayOf(context: Context, build: number, asked: string | undefined): BuyingDay {
  const today = context.today();
  const asOf = asked !== undefined && asked < today ? asked : undefined;
  const now = context.now();
  const nowMinute = parseInstant(
    asOf === undefined ? `${today}T${pad(now.getHours())}:${pad(now.getMinutes())}` : `${asOf}T23:59`,
  );
  return { build, currency: context.settings().currency, today, asOf, nowMinute };
}

export const startOf = (day: BuyingDay): string => day.asOf ?? day.today;

/** Everything that moves cash from its newest count on, and what is owed on orders with the day it is counted on. */
export interface CashFacts {
  readonly count: RecordValuesRow;
  readonly movements: readonly DatedSum[];
}

type Commitment = CashView['committed'][number];

/** What is owed on every order: due on the earliest day that something of it is promised or expected for. */
export function commitmentsOf(context: Context, day: BuyingDay, facts: ForecastFacts): Commitment[] {
  const { connection } = context.book();
  const { build, today, asOf } = day;
  const start = startOf(day);
  const open = Map.groupBy(dueRows(connection, build, today, asOf), ({ order }) => order);
  const expected = new Map(
    facts.coming.flatMap(({ line, p50Days }) => (line === null ? [] : [[line, p50Days] as const])),
  );
  return orderRows(connection, { build, asOf }, today)
    .filter(({ stillToPayMinor }) => stillToPayMinor > 0)
    .map(({ id, number, vendorName, stillToPayMinor: amountMinor }) => {
      const days = (open.get(id) ?? []).map(({ line, promisedOn }) => {
        if (promisedOn !== null && promisedOn >= start) return { on: promisedOn, says: 'promised for that day' };
        const wait = expected.get(line);
        return wait === undefined
          ? { on: start, says: 'no day is known, so it is counted as due now' }
          : { on: addDays(start, Math.ceil(wait)), says: 'expected then as likely as not, by the vendor’s record' };
      });
      const [first] = days.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
      const due = first ?? { on: start, says: 'all of it is here, so it is due now' };
      return { order: id, number, vendorName, dueOn: due.on, amountMinor, says: due.says };
    })
    .sort((a, b) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : a.order - b.order));
}

/** Movements from the day after the count to the last day; null when cash was never counted. */
export function cashFactsOf(
  context: Context,
  day: BuyingDay,
  committed: readonly Commitment[],
  lastOn: string,
): CashFacts | null {
  const { connection } = context.book();
  const count = newestCount(connection, day);
  if (count === null) return null;
  const countedOn = String(count['on']);
  const after = addDays(countedOn, 1);
  const incomes = recordsOn(connection, 'incomes', day);
  const monthly = incomes
    .filter((income) => income['every'] === 'month')
    .map((income): MonthlyIncome => {
      const from = String(income['from']);
      return {
        name: String(income['name']),
        amountMinor: Number(income['amountMinor']),
        dayOfMonth: Number(from.slice(8)),
        from: from > countedOn ? from : after,
        until: income['until'] as string | null,
        certain: true,
      };
    });
  const single = incomes
    .filter((income) => income['every'] === 'once' && String(income['from']) > countedOn)
    .map((income) => ({
      name: String(income['name']),
      on: String(income['from']),
      amountMinor: Number(income['amountMinor']),
      certain: String(income['from']) <= startOf(day),
    }));
  const paid = cashPostings(connection, day.build, countedOn, startOf(day)).map(({ on, minor }) => ({
    name: minor < 0 ? 'Paid on orders' : 'Came back from vendors',
    on,
    amountMinor: minor,
  }));
  const owed = committed.map(({ number, vendorName, dueOn, amountMinor }) => ({
    name: `${vendorName}${number === '' ? '' : ` ${number}`}`,
    on: dueOn,
    amountMinor: -amountMinor,
  }));
  const sums = [...single, ...paid, ...owed];
  return { count, movements: cashMovements({ from: countedOn, to: lastOn, monthly, sums }) };
}

const cashAssumes: readonly string[] = [
  'Cash was counted at the end of its day; payments and incomes after that day are added to it, those of this build only.',
  'What is owed on an order is due on the earliest day that something of it is promised or expected for; orders that are paid later leave more.',
  'The safe line leaves out income that comes once and whose day is still ahead.',
];

/** Cash day by day until `lastOn`, as the screen and the command line show it. */
export function cashViewOf(context: Context, day: BuyingDay, committed: Commitment[], lastOn: string): CashView {
  const { currency } = day;
  const facts = cashFactsOf(context, day, committed, lastOn);
  if (facts === null) {
    return {
      answer:
        'Nobody has counted the cash yet: count it once, with what must always be left, and the months ahead can be drawn.',
      currency,
      count: null,
      floorMinor: 0,
      nowMinor: null,
      points: [],
      lowestLikelyMinor: null,
      lowestSafeMinor: null,
      likelyBelowOn: null,
      safeBelowOn: null,
      committed,
      assumes: [...cashAssumes],
    };
  }
  const { count, movements } = facts;
  const [on, cashMinor, floorMinor] = [String(count['on']), Number(count['cashMinor']), Number(count['floorMinor'])];
  const curve = cashCurve({ from: on, to: lastOn, openingMinor: cashMinor, floorMinor, monthly: [], sums: movements });
  const start = startOf(day);
  const points = curve.points.map((point) => ({ ...point, names: [...point.names] }));
  const now = points.filter((point) => point.on <= start).at(-1) ?? points[0];
  // What has been is over: only the days from today on can still break the floor.
  const ahead = [...(now === undefined ? [] : [{ ...now, on: start }]), ...points.filter((point) => point.on > start)];
  const below = (line: 'likelyMinor' | 'safeMinor'): string | null =>
    ahead.find((point) => point[line] < floorMinor)?.on ?? null;
  const view = {
    currency,
    count: { id: count.id, on, cashMinor, floorMinor },
    floorMinor,
    nowMinor: now?.likelyMinor ?? cashMinor,
    points,
    lowestLikelyMinor: Math.min(...ahead.map(({ likelyMinor }) => likelyMinor)),
    lowestSafeMinor: Math.min(...ahead.map(({ safeMinor }) => safeMinor)),
    likelyBelowOn: below('likelyMinor'),
    safeBelowOn: below('safeMinor'),
    committed,
    assumes: [...cashAssumes],
  };
  return {
    ...view,
    answer: cashAnswer(
      view,
      lastOn,
      movements.some(({ amountMinor }) => amountMinor > 0),
    ),
  };
}

function cashAnswer(view: Omit<CashView, 'answer'>, lastOn: string, hasIncome: boolean): string {
  const say = (minor: number): string => formatMoney(minor, view.currency);
  const owed = view.committed.reduce((sum, { amountMinor }) => sum + amountMinor, 0);
  const now = `${say(view.nowMinor ?? 0)} is in hand${owed === 0 ? '' : ` and ${say(owed)} is owed on orders`}`;
  const none = hasIncome ? '' : ' No income is written down.';
  if (view.likelyBelowOn !== null && view.nowMinor !== null && view.nowMinor < view.floorMinor) {
    return `${now}: that is below the floor of ${say(view.floorMinor)} already.${none}`;
  }
  if (view.likelyBelowOn !== null) {
    return `${now}: on ${dayWords(view.likelyBelowOn)} cash would fall below the floor of ${say(view.floorMinor)}, with nothing more ordered.${none}`;
  }
  if (view.safeBelowOn !== null) {
    return `${now}: the floor of ${say(view.floorMinor)} holds until ${dayWords(lastOn)} if all income comes; without what comes once it breaks on ${dayWords(view.safeBelowOn)}.${none}`;
  }
  return `${now}: with nothing more ordered the floor of ${say(view.floorMinor)} holds until ${dayWords(lastOn)}.${none}`;
}
