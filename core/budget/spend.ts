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
  readonly minor: number;
  /** Whether the month is still running. */
  readonly partial: boolean;
}

/** Every month from the first amount to today's, those without entries at 0; amounts dated after today don't count. */
export function spendByMonth(amounts: readonly DatedAmount[], today: string): MonthSpend[] {
  const counted = amounts.filter((amount) => amount.on <= today).sort((a, b) => compareDates(a.on, b.on));
  const first = counted[0];
  if (first === undefined) return [];
  const sums = new Map<string, number>();
  for (const { on, minor } of counted) sums.set(monthOf(on), (sums.get(monthOf(on)) ?? 0) + minor);
  const current = monthOf(today);
  return monthsBetween(first.on, today).map((month) => ({
    month,
    minor: sums.get(month) ?? 0,
    partial: month === current,
  }));
}

/**
 * Mean of the last full months, at most three, in minor units cut to whole ones; null before the first full month.
 * The running month never counts.
 */
export function monthlyBurn(months: readonly MonthSpend[]): { minor: number; months: number } | null {
  const full = months.filter((month) => !month.partial).slice(-3);
  if (full.length === 0) return null;
  const sum = full.reduce((before, month) => before + month.minor, 0);
  return { minor: Math.trunc(sum / full.length), months: full.length };
}

export interface CurvePoint {
  readonly on: string;
  readonly paidMinor: number;
  /** Paid and still owed on what is ordered. */
  readonly committedMinor: number;
  readonly budgetMinor: number;
}

/**
 * Cumulative curves: one point for each day on which money moved or the budget changed, and one for `asOf`.
 * @param paid cash out, refunds below 0.
 * @param owed changes of what is still to pay on orders; paying lowers it.
 */
export function moneyCurves(
  paid: readonly DatedAmount[],
  owed: readonly DatedAmount[],
  plan: BudgetPlan,
  asOf: string,
): CurvePoint[] {
  const paidOn = sumsByDay(paid);
  const owedOn = sumsByDay(owed);
  const budgetDays = [...plan.lines, ...plan.changes].map((row) => row.on);
  const days = new Set([...paidOn.keys(), ...owedOn.keys(), ...budgetDays, asOf]);
  let paidMinor = 0;
  let owedMinor = 0;
  return [...days]
    .filter((on) => on <= asOf)
    .sort(compareDates)
    .map((on) => {
      paidMinor += paidOn.get(on) ?? 0;
      owedMinor += owedOn.get(on) ?? 0;
      return { on, paidMinor, committedMinor: paidMinor + owedMinor, budgetMinor: currentBudget(plan, on) };
    });
}

function sumsByDay(amounts: readonly DatedAmount[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { on, minor } of amounts) sums.set(on, (sums.get(on) ?? 0) + minor);
  return sums;
}
