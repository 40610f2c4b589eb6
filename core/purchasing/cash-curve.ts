/**
 * Money over time: what is in hand, what comes in, what is committed with its due dates. Two lines: the likely one, and
 * the safe one, which counts on certain income only and on the higher of what may fall due. Whole minor units throughout.
 * Within a day money comes in before it goes out.
 */
import {
  addDays,
  compareDates,
  dayNumber,
  lastDayOfMonth,
  monthsBetween,
  requireDate,
} from '../dates/calendar-date.ts';
import { Refusal } from '../refusal.ts';

export interface MonthlyIncome {
  readonly name: string;
  readonly amountMinor: number;
  /** 1 to 31; in shorter months the last day. */
  readonly dayOfMonth: number;
  readonly from: string;
  /** Last day it can come; null goes on. */
  readonly until: string | null;
  readonly certain: boolean;
}

export interface DatedSum {
  readonly name: string;
  readonly on: string;
  /** Positive comes in, negative goes out. */
  readonly amountMinor: number;
  /** Income that may not come is left out of the safe line. True when left out. */
  readonly certain?: boolean;
  /** What it may come to at worst (as signed as the amount); the amount when left out. */
  readonly safeMinor?: number;
}

export interface CashPoint {
  readonly on: string;
  readonly likelyMinor: number;
  readonly safeMinor: number;
  /** What moved that day. */
  readonly names: readonly string[];
}

export interface CashCurve {
  /** The first day's opening, then every day on which something moved, in order. */
  readonly points: readonly CashPoint[];
  readonly lowestLikelyMinor: number;
  readonly lowestSafeMinor: number;
  /** First day on which the line is below the floor; null when it never is. */
  readonly likelyBelowFloorOn: string | null;
  readonly safeBelowFloorOn: string | null;
}

export interface CashInput {
  readonly from: string;
  readonly to: string;
  readonly openingMinor: number;
  readonly floorMinor: number;
  readonly monthly: readonly MonthlyIncome[];
  readonly sums: readonly DatedSum[];
}

/**
 * Every movement from `from` to `to`, monthly income laid out, in order of days. What was due before `from` and is still
 * listed falls on `from`: it has not been paid yet.
 * @throws Refusal `bad-input` for a date that can't be read, a day of the month outside 1 to 31, an amount that isn't
 * whole, or an end before the start.
 */
export function cashMovements(input: Pick<CashInput, 'from' | 'to' | 'monthly' | 'sums'>): DatedSum[] {
  requireDate(input.from, 'first day');
  if (requireDate(input.to, 'last day') < input.from) {
    throw refused('last day', 'The last day lies before the first.', 'a day on or after the first');
  }
  const movements: DatedSum[] = [];
  for (const income of input.monthly) {
    if (!(Number.isInteger(income.dayOfMonth) && income.dayOfMonth >= 1 && income.dayOfMonth <= 31)) {
      throw refused('day of the month', `“${income.name}” comes on day ${income.dayOfMonth}.`, '1 to 31');
    }
    const first = requireDate(income.from, 'first day of income');
    const last = income.until === null ? input.to : requireDate(income.until, 'last day of income');
    for (const month of monthsBetween(input.from, input.to)) {
      const end = lastDayOfMonth(`${month}-01`);
      const day = `${month}-${income.dayOfMonth.toString().padStart(2, '0')}`;
      const on = day < end ? day : end;
      if (on >= first && on <= last && on >= input.from && on <= input.to) {
        movements.push({ name: income.name, on, amountMinor: income.amountMinor, certain: income.certain });
      }
    }
  }
  for (const sum of input.sums) {
    const on = requireDate(sum.on, 'due day');
    if (on <= input.to) movements.push(on < input.from ? { ...sum, on: input.from } : sum);
  }
  for (const { name, amountMinor, safeMinor } of movements) {
    if (!Number.isSafeInteger(amountMinor) || (safeMinor !== undefined && !Number.isSafeInteger(safeMinor))) {
      throw refused('amount', `The amount of “${name}” is not a whole number of minor units.`, 'whole minor units');
    }
  }
  return movements.sort((a, b) => compareDates(a.on, b.on));
}

/** What a movement comes to on the safe line. */
export function safeAmount(movement: DatedSum): number {
  if (movement.amountMinor > 0 && movement.certain === false) return 0;
  return Math.min(movement.amountMinor, movement.safeMinor ?? movement.amountMinor);
}

/** The curve. @throws Refusal `bad-input`, see `cashMovements`. */
export function cashCurve(input: CashInput): CashCurve {
  const points: CashPoint[] = [
    { on: input.from, likelyMinor: input.openingMinor, safeMinor: input.openingMinor, names: [] },
  ];
  for (const movement of cashMovements(input)) {
    const last = points.at(-1) as CashPoint;
    const point = {
      on: movement.on,
      likelyMinor: last.likelyMinor + movement.amountMinor,
      safeMinor: last.safeMinor + safeAmount(movement),
      names: last.on === movement.on ? [...last.names, movement.name] : [movement.name],
    };
    if (last.on === movement.on && points.length > 1) points[points.length - 1] = point;
    else points.push(point);
  }
  const below = (line: 'likelyMinor' | 'safeMinor'): string | null =>
    points.find((point) => point[line] < input.floorMinor)?.on ?? null;
  return {
    points,
    lowestLikelyMinor: Math.min(...points.map((point) => point.likelyMinor)),
    lowestSafeMinor: Math.min(...points.map((point) => point.safeMinor)),
    likelyBelowFloorOn: below('likelyMinor'),
    safeBelowFloorOn: below('safeMinor'),
  };
}

/**
 * Movements by week, counted from `startOn`, as the buying plan takes them: the safe amounts, so that a plan holds even
 * when uncertain income fails. To keep the floor within a week as well, income counts from the week after the one it
 * comes in, unless it comes on the week's first day.
 */
export function weeklyCash(movements: readonly DatedSum[], startOn: string, lastWeek: number): Record<number, number> {
  const first = dayNumber(startOn);
  const weeks: Record<number, number> = {};
  for (const movement of movements) {
    const amount = safeAmount(movement);
    const days = dayNumber(movement.on) - first;
    const week = Math.max(0, amount > 0 ? Math.ceil(days / 7) : Math.floor(days / 7));
    if (amount !== 0 && week <= lastWeek) weeks[week] = (weeks[week] ?? 0) + amount;
  }
  return weeks;
}

/** First day of a week of the buying plan. */
export function weekStart(startOn: string, week: number): string {
  return addDays(startOn, week * 7);
}

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}
