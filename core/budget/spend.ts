/** Money over time: what each month cost, how fast money burns, and the cumulative curves against the budget. */
import { compareDates, monthOf, monthsBetween } from '../dates/calendar-date.ts';
import { type BudgetPlan, currentBudget } from './budget.ts';

/** An amount on a day; below 0 for a refund, which lowers the month it is posted in. */
export interface DatedAmount {
  readonly on: string;
  readonly minor: number;
}

export interface MonthSpend {
  /** YYYY-MM. */
  readonly month: string;
  /** Cost recognised: what came in, less what was rejected. */
  readonly costMinor: number;
  /** Cash out, less cash back. */
  readonly paidMinor: number;
  /** Whether the month is still running. */
  readonly partial: boolean;
}

/** Every month from the first amount to today's, those without entries at 0; amounts dated after today don't count. */
export function spendByMonth(cost: readonly DatedAmount[], paid: readonly DatedAmount[], today: string): MonthSpend[] {
  const known = [...cost, ...paid].filter((amount) => amount.on <= today).map((amount) => amount.on);
  const first = known.sort(compareDates)[0];
  if (first === undefined) return [];
  const costIn = sumsBy(cost, today, monthOf);
  const paidIn = sumsBy(paid, today, monthOf);
  const current = monthOf(today);
  return monthsBetween(first, today).map((month) => ({
    month,
    costMinor: costIn.get(month) ?? 0,
    paidMinor: paidIn.get(month) ?? 0,
    partial: month === current,
  }));
}

/**
 * Mean cost of the last full months, at most three, in minor units cut to whole ones; null before the first full month.
 * The running month never counts.
 */
export function monthlyBurn(months: readonly MonthSpend[]): { minor: number; months: number } | null {
  const full = months.filter((month) => !month.partial).slice(-3);
  if (full.length === 0) return null;
  const sum = full.reduce((before, month) => before + month.costMinor, 0);
  return { minor: Math.trunc(sum / full.length), months: full.length };
}

export interface CurvePoint {
  readonly on: string;
  readonly paidMinor: number;
  /** Paid and still to pay for what is ordered. */
  readonly committedMinor: number;
  /** Committed and the estimate of what isn't ordered. */
  readonly forecastMinor: number;
  readonly budgetMinor: number;
}

/** What changed on a day: cash out less cash back, what is still to pay on orders, and what is estimated and not ordered. */
export interface MoneyMoves {
  readonly paid: readonly DatedAmount[];
  readonly stillToPay: readonly DatedAmount[];
  readonly remaining: readonly DatedAmount[];
}

/** Cumulative curves: one point for each day on which money moved or the budget changed, and one for `asOf`. */
export function moneyCurves(moves: MoneyMoves, plan: BudgetPlan, asOf: string): CurvePoint[] {
  const day = (date: string): string => date;
  const paid = sumsBy(moves.paid, asOf, day);
  const stillToPay = sumsBy(moves.stillToPay, asOf, day);
  const remaining = sumsBy(moves.remaining, asOf, day);
  const budgetDays = plan.changes.map((change) => change.on).filter((on) => on <= asOf);
  const days = new Set([...paid.keys(), ...stillToPay.keys(), ...remaining.keys(), ...budgetDays, asOf]);
  let paidMinor = 0;
  let committedMinor = 0;
  let forecastMinor = 0;
  return [...days].sort(compareDates).map((on) => {
    const committed = (paid.get(on) ?? 0) + (stillToPay.get(on) ?? 0);
    paidMinor += paid.get(on) ?? 0;
    committedMinor += committed;
    forecastMinor += committed + (remaining.get(on) ?? 0);
    return { on, paidMinor, committedMinor, forecastMinor, budgetMinor: currentBudget(plan, on) };
  });
}

function sumsBy(amounts: readonly DatedAmount[], until: string, group: (on: string) => string): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { on, minor } of amounts) {
    if (on <= until) sums.set(group(on), (sums.get(group(on)) ?? 0) + minor);
  }
  return sums;
}
