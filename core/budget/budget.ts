/**
 * The budget of a build: lines by system and phase, dated changes with their reasons, and draws from contingency. A
 * budget can be read as of any day, so that charts of the past redraw unchanged. Amounts are minor units of the
 * build's currency.
 */
import { compareDates, requireDate } from '../dates/calendar-date.ts';
import { Refusal } from '../refusal.ts';

/** A budget line files its money under a system and a phase, named by their ids; null is unassigned, shown as such. */
export interface BudgetLine {
  readonly id: number;
  readonly system: number | null;
  readonly phase: number | null;
}

/**
 * Money given to a line or taken from it, added to the contingency (`lineId` null), or drawn from the contingency into
 * a line. The first `change` of a line is its original budget; those after it are approved changes.
 */
export interface BudgetChange {
  readonly lineId: number | null;
  readonly on: string;
  readonly kind: 'change' | 'contingency' | 'contingency drawn';
  /** Below 0 takes money away, or puts a draw back. */
  readonly amountMinor: number;
  readonly reason: string;
}

export interface BudgetPlan {
  readonly lines: readonly BudgetLine[];
  /** In the order they were entered. */
  readonly changes: readonly BudgetChange[];
}

/** What the ledger says about one system and phase: cost recognised, on order, and still to order. */
export interface BudgetActual {
  readonly system: number | null;
  readonly phase: number | null;
  readonly costMinor: number;
  readonly commitmentMinor: number;
  readonly remainingMinor: number;
}

export interface BudgetRow {
  /** Id of the system or phase; null for what is unassigned, and in the total. */
  readonly tag: number | null;
  readonly originalMinor: number;
  readonly approvedMinor: number;
  readonly drawnMinor: number;
  /** original + approved + drawn. */
  readonly currentMinor: number;
  readonly costMinor: number;
  readonly commitmentMinor: number;
  readonly remainingMinor: number;
  /** cost + commitment + remaining. */
  readonly forecastMinor: number;
  /** current - forecast; below 0 is over budget. */
  readonly varianceMinor: number;
}

export interface BudgetStatus {
  readonly rows: readonly BudgetRow[];
  readonly total: BudgetRow;
  readonly contingencyLeftMinor: number;
  /** current budget + contingency left. */
  readonly fundingMinor: number;
}

/**
 * The budget by system or phase beside what was spent, as of a day (changes dated later don't count).
 * Rows stand in order of first appearance, costs without a budget line after them, what is unassigned last.
 */
export function budgetStatus(
  plan: BudgetPlan,
  actuals: readonly BudgetActual[],
  groupBy: 'system' | 'phase',
  asOf: string,
): BudgetStatus {
  const rows = new Map<number | null, BudgetRow>();
  const add = (tag: number | null, amounts: Partial<BudgetRow>): void => {
    rows.set(tag, addRow(rows.get(tag) ?? emptyRow(tag), amounts));
  };
  const lines = new Map(plan.lines.map((line) => [line.id, line]));
  const begun = new Set<number>();
  let contingencyMinor = 0;
  const known = plan.changes.filter((change) => change.on <= asOf);
  for (const { lineId, kind, amountMinor } of [...known].sort((a, b) => compareDates(a.on, b.on))) {
    if (kind === 'contingency') contingencyMinor += amountMinor;
    const line = lineId === null ? undefined : lines.get(lineId);
    if (line === undefined) continue;
    if (kind === 'contingency drawn') add(line[groupBy], { drawnMinor: amountMinor });
    else if (begun.has(line.id)) add(line[groupBy], { approvedMinor: amountMinor });
    else add(line[groupBy], { originalMinor: amountMinor });
    if (kind === 'change') begun.add(line.id);
  }
  for (const { costMinor, commitmentMinor, remainingMinor, ...tags } of actuals) {
    add(tags[groupBy], { costMinor, commitmentMinor, remainingMinor });
  }
  const ordered = [...rows.values()].sort((a, b) => Number(a.tag === null) - Number(b.tag === null));
  const total = ordered.reduce(addRow, emptyRow(null));
  const contingencyLeftMinor = contingencyMinor - total.drawnMinor;
  return { rows: ordered, total, contingencyLeftMinor, fundingMinor: total.currentMinor + contingencyLeftMinor };
}

/** The current budget (original, approved changes and contingency drawn) as of a day. */
export function currentBudget(plan: BudgetPlan, asOf: string): number {
  return budgetStatus(plan, [], 'system', asOf).total.currentMinor;
}

/**
 * Checks a change before it is added.
 * @throws Refusal `needs-reason` without a reason; `not-found` for an unknown line; `bad-input` for a day that isn't
 * one, a line missing where one belongs (or given for the contingency), or an amount of 0; `floor` when contingency, or the line's own budget, would fall below 0 on that day or later.
 */
export function checkBudgetChange(plan: BudgetPlan, change: BudgetChange): void {
  requireDate(change.on, 'day of the change');
  if (change.reason.trim() === '') {
    throw new Refusal('needs-reason', 'A budget change needs a reason. Nothing was changed.', {
      field: 'reason',
      accepted: 'why the budget changes, in a few words',
    });
  }
  if ((change.kind === 'contingency') !== (change.lineId === null)) {
    throw new Refusal(
      'bad-input',
      'Contingency belongs to no line, and every other change to one. Nothing was changed.',
      {
        field: 'budget line',
        accepted: change.kind === 'contingency' ? 'no line' : 'a line of the budget',
      },
    );
  }
  if (change.lineId !== null && !plan.lines.some((line) => line.id === change.lineId)) {
    throw new Refusal('not-found', 'The budget line was not found. Nothing was changed.', { field: 'budget line' });
  }
  if (!Number.isSafeInteger(change.amountMinor) || change.amountMinor === 0) {
    throw new Refusal('bad-input', 'The amount of a budget change must not be 0. Nothing was changed.', {
      field: 'amount',
      accepted: 'a whole number of minor units, below 0 to take money away',
    });
  }
  const changes = [...plan.changes, change];
  refuseBelowZero(
    changes.flatMap(({ kind, on, amountMinor }) => {
      if (kind === 'change') return [];
      return [{ on, minor: kind === 'contingency' ? amountMinor : -amountMinor }];
    }),
    'contingency',
    'a draw within what is left, or an approved change for the rest',
  );
  if (change.lineId === null) return;
  const ofLine = changes.filter((other) => other.lineId === change.lineId);
  refuseBelowZero(
    ofLine.map(({ on, amountMinor }) => ({ on, minor: amountMinor })),
    'budget line',
    'at most what the line still has',
  );
}

function refuseBelowZero(
  moves: readonly { readonly on: string; readonly minor: number }[],
  field: string,
  accepted: string,
): void {
  let left = 0;
  const ordered = [...moves].sort((a, b) => compareDates(a.on, b.on) || b.minor - a.minor);
  for (const { on, minor } of ordered) {
    left += minor;
    if (left < 0) {
      throw new Refusal('floor', `The ${field} would fall below 0 on ${on}. Nothing was changed.`, {
        field,
        accepted,
        detail: { on, shortMinor: -left },
      });
    }
  }
}

function emptyRow(tag: number | null): BudgetRow {
  return {
    tag,
    originalMinor: 0,
    approvedMinor: 0,
    drawnMinor: 0,
    currentMinor: 0,
    costMinor: 0,
    commitmentMinor: 0,
    remainingMinor: 0,
    forecastMinor: 0,
    varianceMinor: 0,
  };
}

function addRow(row: BudgetRow, more: Partial<BudgetRow>): BudgetRow {
  const originalMinor = row.originalMinor + (more.originalMinor ?? 0);
  const approvedMinor = row.approvedMinor + (more.approvedMinor ?? 0);
  const drawnMinor = row.drawnMinor + (more.drawnMinor ?? 0);
  const costMinor = row.costMinor + (more.costMinor ?? 0);
  const commitmentMinor = row.commitmentMinor + (more.commitmentMinor ?? 0);
  const remainingMinor = row.remainingMinor + (more.remainingMinor ?? 0);
  const currentMinor = originalMinor + approvedMinor + drawnMinor;
  const forecastMinor = costMinor + commitmentMinor + remainingMinor;
  return {
    tag: row.tag,
    originalMinor,
    approvedMinor,
    drawnMinor,
    currentMinor,
    costMinor,
    commitmentMinor,
    remainingMinor,
    forecastMinor,
    varianceMinor: currentMinor - forecastMinor,
  };
}
