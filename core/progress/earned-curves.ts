/** Planned, earned and actual over time, folded from a baseline and what happened on each day. */
import { type BaselineRow, earnsHalfAtStart, plannedShare } from './baseline.ts';
import { creditOf } from './earned-value.ts';

export interface Happened {
  readonly on: string;
  readonly id: number;
  readonly amount: number;
}

export interface EarnedFacts {
  readonly rows: readonly BaselineRow[];
  /** Accepted units of part lines, in thousandths; jobs done in thousandths; minutes worked; cost. By day of change. */
  readonly accepted: readonly Happened[];
  readonly jobsDone: readonly Happened[];
  readonly worked: readonly Happened[];
  readonly cost: readonly Happened[];
  /** Needed quantity of each part line, in thousandths. */
  readonly needMilli: ReadonlyMap<number, number>;
}

/** What a measure adds up: the budget of parts in money, or the minutes of jobs. */
export type EarnedOf = 'money' | 'hours';

export interface EarnedPoint {
  readonly on: string;
  readonly pv: number;
  readonly ev: number;
  readonly ac: number;
}

const weightOf = (of: EarnedOf, row: BaselineRow): number => (of === 'money' ? row.budgetMinor : row.minutes);

const ofMeasure = (of: EarnedOf, rows: readonly BaselineRow[]): readonly BaselineRow[] =>
  rows.filter((row) => row.kind === (of === 'money' ? 'part' : 'job') && weightOf(of, row) > 0);

/** Everything that was planned. */
export const budgetAtCompletion = (of: EarnedOf, rows: readonly BaselineRow[]): number =>
  ofMeasure(of, rows).reduce((sum, row) => sum + weightOf(of, row), 0);

/** Planned by the end of each of these days. */
export function plannedBy(of: EarnedOf, rows: readonly BaselineRow[], days: readonly string[]): readonly number[] {
  const own = ofMeasure(of, rows);
  return days.map((day) => own.reduce((sum, row) => sum + weightOf(of, row) * plannedShare(row, day), 0));
}

/** Planned, earned and actual at the end of each of these days, which must rise. */
export function earnedCurve(of: EarnedOf, facts: EarnedFacts, days: readonly string[]): readonly EarnedPoint[] {
  const rows = ofMeasure(of, facts.rows);
  const planned = plannedBy(of, facts.rows, days);
  const states = new Map<number, number>();
  const begun = new Set<number>();
  const things = byDay(of === 'money' ? facts.accepted : facts.jobsDone);
  const spent = byDay(of === 'money' ? facts.cost : facts.worked);
  let ac = 0;
  return days.map((on, index) => {
    for (const { id, amount } of things.upTo(on)) states.set(id, (states.get(id) ?? 0) + amount);
    for (const { id, amount } of spent.upTo(on)) {
      ac += amount;
      begun.add(id);
    }
    const ev = rows.reduce((sum, row) => sum + weightOf(of, row) * earnedShare(row, states, begun, facts.needMilli), 0);
    return { on, pv: planned[index] ?? 0, ev, ac };
  });
}

function earnedShare(
  row: BaselineRow,
  states: ReadonlyMap<number, number>,
  begun: ReadonlySet<number>,
  needMilli: ReadonlyMap<number, number>,
): number {
  const state = states.get(row.id) ?? 0;
  if (row.kind === 'part') {
    return creditOf({ rule: 'units', acceptedMilli: state, needMilli: needMilli.get(row.id) ?? 0 });
  }
  return earnsHalfAtStart(row)
    ? creditOf({ rule: '50/50', begun: begun.has(row.id), done: state > 0 })
    : creditOf({ rule: '0/100', done: state > 0 });
}

/** Walks through what happened, once, as the days go by. */
function byDay(happened: readonly Happened[]) {
  const sorted = [...happened].sort((one, other) => (one.on < other.on ? -1 : one.on > other.on ? 1 : 0));
  let next = 0;
  return {
    upTo(day: string): readonly Happened[] {
      const from = next;
      while ((sorted[next]?.on ?? '~') <= day) next += 1;
      return sorted.slice(from, next);
    },
  };
}
