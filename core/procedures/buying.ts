import type { BuyingView } from '../contract/buying.ts';
import { addDays, daysBetween } from '../dates/calendar-date.ts';
import { formatMoney } from '../money/currency.ts';
import { type PreparedBuying, prepareBuying } from '../purchasing/buying-needs.ts';
import { type BuyingPlan, planBuying } from '../purchasing/buying-plan-solve.ts';
import { buyNeeds, tailsOf, vendorLeads, vendorTerms } from '../workbook/store/buying-facts.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { readRecord } from '../workbook/store/record-tables.ts';
import { buyingDayOf, cashFactsOf, cashViewOf, commitmentsOf, startOf } from './buying-cash.ts';
import { linesOf, totalsOf, weeksOf } from './buying-view.ts';
import { type Context, counted, needBuild, procedures } from './context.ts';

const { buying } = procedures;

/** From more needs than this the search for a proven best is skipped: it would take too long. */
const mostForSolver = 40;

type PlanInput = Parameters<Parameters<typeof buying.plan.handler>[0]>[0]['input'];

/**
 * What to order when.
 * @param before another plan: where it keeps the floor here too, this one's gate is never later.
 */
export function buyingPlanOf(context: Context, input: PlanInput, before?: BuyingView): BuyingView {
  needBuild(context, input.build);
  const { connection } = context.book();
  const { safe, weeks: lastWeek } = input;
  const day = buyingDayOf(context, input.build, input.asOf);
  const startOn = startOf(day);
  const lastOn = addDays(startOn, lastWeek * 7);
  const gateName = String(readRecord(connection, 'builds', input.build)?.['gateName'] ?? 'engine-in');
  const { facts, tails, hasHours } = tailsOf(connection, day, safe);
  const needs = buyNeeds(connection, day, tails);
  const leads = vendorLeads(connection, day);
  const vendors = vendorTerms(connection, day);
  const cash = cashFactsOf(context, day, commitmentsOf(context, day, facts), lastOn);
  const prepared = prepareBuying({
    currency: day.currency,
    startOn,
    lastWeek,
    needs,
    vendors,
    leadDays: (vendor) => (safe ? leads(vendor).p80Days : leads(vendor).p50Days),
    openingMinor: Number(cash?.count['cashMinor'] ?? 0),
    floorMinor: Number(cash?.count['floorMinor'] ?? 0),
    // The likely plan counts on all income, the safe one on what is certain.
    movements: (cash?.movements ?? []).map((sum) => (safe ? sum : { ...sum, certain: true })),
    leastDays: tails.leastDays,
  });
  const used = new Set(prepared.input.vendors.map(({ id }) => id));
  const base: Omit<BuyingView, 'answer' | 'status'> = {
    currency: day.currency,
    gateName,
    method: null,
    safe,
    startOn,
    lastOn,
    gateOn: null,
    spendMinor: null,
    shippingMinor: null,
    shippingSavedMinor: null,
    shortMinor: null,
    weeks: [],
    lines: [],
    cash: [],
    lacking: prepared.lacking.map(({ name, ...lack }) => ({ ...lack, description: name })),
    asMoneyComes: null,
    assumes: [
      ...assumesOf(safe, hasHours),
      ...vendors.filter(({ id, says }) => used.has(id) && says !== '').map(({ says }) => says),
    ],
  };
  const lacks = lackingSaid(prepared);
  if (prepared.input.items.length === 0) {
    const answer = needs.length === 0 ? `Nothing is left to buy.` : `No need can be planned yet.${lacks}`;
    return { ...base, status: 'nothing', answer };
  }
  if (cash === null) {
    const answer = `${counted(prepared.input.items.length, 'need is', 'needs are')} still to be bought; count the cash, and what to order when can be worked out.${lacks}`;
    return { ...base, status: 'no-count', answer };
  }
  const plan = planBuying(prepared.input, {
    currency: day.currency,
    startOn,
    dayText: dayWords,
    quick: input.quick || prepared.input.items.length > mostForSolver,
    ...(before === undefined ? {} : { alsoTry: weeksIn(before) }),
  });
  if (plan.status === 'none') {
    const short = plan.shortMinor === null ? '' : ` ${formatMoney(plan.shortMinor, day.currency)} is missing.`;
    return {
      ...base,
      status: 'none',
      shortMinor: plan.shortMinor,
      answer: `No plan: ${lowerFirst(plan.reason)}${short}${lacks}`,
    };
  }
  const totals = totalsOf(prepared, plan, startOn, day.currency);
  return {
    ...base,
    ...totals,
    status: 'plan',
    method: plan.method,
    weeks: weeksOf(prepared, plan, startOn),
    lines: linesOf(prepared, plan, { startOn, needs, leads, safe, connection }),
    cash: plan.figures.cashMinor.map((cashMinor, week) => ({ on: addDays(startOn, week * 7), cashMinor })),
    answer: `${planSaid(plan, prepared, gateName, startOn, totals, day.currency)}${lacks}`,
  };
}

/** The week of each order of a plan that was shown. */
const weeksIn = ({ lines, startOn }: BuyingView): Map<string, number> =>
  new Map(
    lines.flatMap(({ part, on }) => (on === null ? [] : [[String(part), Math.floor(daysBetween(startOn, on) / 7)]])),
  );

export const buyingProcedures = {
  cash: buying.cash.handler(({ context, input }) => {
    needBuild(context, input.build);
    const day = buyingDayOf(context, input.build, input.asOf);
    const { facts } = tailsOf(context.book().connection, day, false);
    return cashViewOf(context, day, commitmentsOf(context, day, facts), addDays(startOf(day), input.weeks * 7));
  }),
  plan: buying.plan.handler(({ context, input }) => buyingPlanOf(context, input)),
};

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

function lackingSaid({ lacking }: PreparedBuying): string {
  if (lacking.length === 0) return '';
  return ` ${counted(lacking.length, 'need is', 'needs are')} not in the plan for want of a price, a vendor or a rate.`;
}

function assumesOf(safe: boolean, hasHours: boolean): string[] {
  return [
    safe
      ? 'Waits are those that four of five orders keep (P80), and only income that comes every month is counted on.'
      : 'Waits are as likely as not (P50), and all income written down is counted on.',
    'Weeks are counted from today; waits and work are rounded up to whole weeks, and income counts from the week after its day.',
    hasHours
      ? 'Work after a part’s arrival is laid out at the pace of an average week of the calendar, one job after the other where they wait for each other.'
      : 'No free hours are set, so that no work is counted after a part’s arrival.',
    'A part is paid for when it is ordered.',
  ];
}

function planSaid(
  plan: BuyingPlan,
  { input }: PreparedBuying,
  gateName: string,
  startOn: string,
  { spendMinor, gateOn, asMoneyComes }: ReturnType<typeof totalsOf>,
  currency: string,
): string {
  const first = [...plan.weeks.values()].filter((week) => week === 0).length;
  const holding = plan.lines.find(({ reason }) => reason === 'holds-gate');
  const name = input.items.find(({ id }) => id === holding?.item)?.name;
  const now =
    first === 0
      ? `Order nothing before ${dayWords(addDays(startOn, 7 * Math.min(...plan.weeks.values())))}`
      : `Order ${counted(first, 'part')} in the first week`;
  const held = name === undefined ? 'work that waits for no purchase holds it' : `“${name}” holds it`;
  return `${now}: ${gateName} can then be reached in the week of ${dayWords(gateOn)}, for ${formatMoney(spendMinor, currency)} in all; ${held}. ${asMoneyComes.says}`;
}
