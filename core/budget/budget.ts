/**
 * The budget of a build: lines by system and phase, dated changes with their reasons, and draws from contingency. A
 * budget can be read as of any day, so that charts of the past redraw unchanged. Amounts are minor units of the
 * build's currency.
 */
import { compareDates, requireDate } from '../dates/calendar-date.ts';
import { Refusal } from '../refusal.ts';

/** What a row without a system or phase is filed under; it is shown, never hidden. */
export const unassigned = 'unassigned';

export interface BudgetLine {
  readonly id: string;
  readonly system: string | null;
  readonly phase: string | null;
  readonly on: string;
  readonly originalMinor: number;
}

export interface BudgetChange {
  readonly lineId: string;
  readonly on: string;
  /** `approved` is new money, or withdrawn when below 0; `contingency` moves money from contingency to the line. */
  readonly kind: 'approved' | 'contingency';
  readonly amountMinor: number;
  readonly reason: string;
}

export interface BudgetPlan {
  readonly lines: readonly BudgetLine[];
  readonly changes: readonly BudgetChange[];
  readonly contingencyMinor: number;
}

/** What the ledger says about one system and phase: cost recognised, on order, and still to order. */
export interface BudgetActual {
  readonly system: string | null;
  readonly phase: string | null;
  readonly costMinor: number;
  readonly commitmentMinor: number;
  readonly remainingMinor: number;
}

export interface BudgetRow {
  readonly name: string;
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
 * The budget by system or phase beside what was spent, as of a day (lines and changes dated later don't count).
 * Rows stand in order of first appearance, costs without a budget line after them, `unassigned` last.
 */
export function budgetStatus(
  plan: BudgetPlan,
  actuals: readonly BudgetActual[],
  groupBy: 'system' | 'phase',
  asOf: string,
): BudgetStatus {
  const rows = new Map<string, BudgetRow>();
  const add = (tag: string | null, amounts: Partial<BudgetRow>): void => {
    const name = tag ?? unassigned;
    rows.set(name, addRow(rows.get(name) ?? emptyRow(name), amounts));
  };
  const lines = plan.lines.filter((line) => line.on <= asOf);
  for (const line of lines) add(line[groupBy], { originalMinor: line.originalMinor });
  for (const change of plan.changes) {
    const line = lines.find((candidate) => candidate.id === change.lineId);
    if (line === undefined || change.on > asOf) continue;
    add(
      line[groupBy],
      change.kind === 'approved' ? { approvedMinor: change.amountMinor } : { drawnMinor: change.amountMinor },
    );
  }
  for (const { costMinor, commitmentMinor, remainingMinor, ...tags } of actuals) {
    add(tags[groupBy], { costMinor, commitmentMinor, remainingMinor });
  }
  const ordered = [...rows.values()].sort((a, b) => Number(a.name === unassigned) - Number(b.name === unassigned));
  const total = ordered.reduce(addRow, emptyRow('total'));
  const contingencyLeftMinor = plan.contingencyMinor - total.drawnMinor;
  return { rows: ordered, total, contingencyLeftMinor, fundingMinor: total.currentMinor + contingencyLeftMinor };
}

/** The current budget (original, approved changes and contingency drawn) as of a day. */
export function currentBudget(plan: BudgetPlan, asOf: string): number {
  return budgetStatus(plan, [], 'system', asOf).total.currentMinor;
}

/**
 * Checks a change before it is added.
 * @throws Refusal `needs-reason` without a reason; `not-found` for an unknown line; `bad-input` for a day that isn't
 * one, or an amount of 0; `floor` when contingency, or the line's own budget, would fall below 0 on that day or later.
 */
export function checkBudgetChange(plan: BudgetPlan, change: BudgetChange): void {
  requireDate(change.on, 'day of the change');
  if (change.reason.trim() === '') {
    throw new Refusal('needs-reason', 'A budget change needs a reason. Nothing was changed.', {
      field: 'reason',
      accepted: 'why the budget changes, in a few words',
    });
  }
  const line = plan.lines.find((candidate) => candidate.id === change.lineId);
  if (line === undefined) {
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
    plan.contingencyMinor,
    changes.filter((other) => other.kind === 'contingency').map(({ on, amountMinor }) => ({ on, minor: -amountMinor })),
    'contingency',
    'a draw within what is left, or an approved change for the rest',
  );
  refuseBelowZero(
    line.originalMinor,
    changes
      .filter((other) => other.lineId === change.lineId)
      .map(({ on, amountMinor }) => ({ on, minor: amountMinor })),
    'budget line',
    'at most what the line still has',
  );
}

function refuseBelowZero(
  openingMinor: number,
  moves: readonly { readonly on: string; readonly minor: number }[],
  field: string,
  accepted: string,
): void {
  let left = openingMinor;
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

function emptyRow(name: string): BudgetRow {
  return {
    name,
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
    name: row.name,
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
