import { type BudgetChange, type BudgetLine, type BudgetPlan, budgetStatus } from '../../budget/budget.ts';
import { type CurvePoint, type DatedAmount, type MonthSpend, moneyCurves, spendByMonth } from '../../budget/spend.ts';
import type { MoneyFigures } from '../../contract/money.ts';
import { all, type Connection } from './connection.ts';
import { positionsAsOf } from './part-rows.ts';
import { keptPositions, type Position } from './positions.ts';

/** What a part line belongs to, for sums by system, phase and vendor. */
interface Tags {
  readonly id: number;
  readonly system: number | null;
  readonly phase: number | null;
  readonly vendor: number | null;
  readonly dropped: number;
}

/** Positions of a build's part lines with their tags, now or at the end of a past day. */
export function taggedPositions(
  connection: Connection,
  build: number,
  asOf: string | undefined,
): { readonly tags: Tags; readonly position: Position }[] {
  const positions = asOf === undefined ? keptPositions(connection, build) : positionsAsOf(connection, build, asOf);
  return all<Tags>(
    connection,
    'SELECT id, system, phase, vendor, retired_on IS NOT NULL AS dropped FROM parts WHERE build = ? AND gone = 0 ORDER BY id',
    build,
  ).flatMap((tags) => {
    const position = positions.get(tags.id);
    return position === undefined ? [] : [{ tags, position }];
  });
}

export const noMoney: MoneyFigures = {
  budgetMinor: 0,
  contingencyLeftMinor: 0,
  costMinor: 0,
  commitmentMinor: 0,
  remainingMinor: 0,
  paidMinor: 0,
  stillToPayMinor: 0,
  forecastMinor: 0,
  varianceMinor: 0,
  depositsMinor: 0,
  claimsMinor: 0,
  lossMinor: 0,
  exchangeMinor: 0,
  withoutEstimate: 0,
};

/** A line that counts as nothing because nobody has guessed its price: something is to be got, and there is no estimate. */
export const lacksEstimate = (position: Position): boolean =>
  position.estimateEachE4 === null && position.uncoveredMilli > 0;

export function addPosition(sum: MoneyFigures, position: Position): MoneyFigures {
  const costMinor = sum.costMinor + position.costMinor;
  const commitmentMinor = sum.commitmentMinor + position.commitmentMinor;
  const remainingMinor = sum.remainingMinor + position.remainingMinor;
  return {
    ...sum,
    costMinor,
    commitmentMinor,
    remainingMinor,
    paidMinor: sum.paidMinor + position.paidMinor,
    stillToPayMinor: sum.stillToPayMinor + position.commitmentMinor + position.vendorOwedMinor - position.claimsMinor,
    forecastMinor: costMinor + commitmentMinor + remainingMinor,
    depositsMinor: sum.depositsMinor + position.depositsMinor,
    claimsMinor: sum.claimsMinor + position.claimsMinor,
    lossMinor: sum.lossMinor + position.lossMinor,
    exchangeMinor: sum.exchangeMinor + position.exchangeMinor,
    withoutEstimate: sum.withoutEstimate + (lacksEstimate(position) ? 1 : 0),
  };
}

export interface BudgetEntry {
  readonly seq: number;
  readonly on: string;
  readonly lineId: number | null;
  readonly kind: BudgetChange['kind'];
  readonly amountMinor: number;
  readonly reason: string;
  readonly by: string;
  readonly reversed: boolean;
}

/** Every budget entry of a build in the order in which it was made, those taken back marked. */
export function budgetEntries(connection: Connection, build: number): BudgetEntry[] {
  return all<{
    seq: number;
    on_day: string;
    kind: string;
    subject_kind: string;
    subject: number;
    amount_minor: number;
    payload: string | null;
    reversed: number;
  }>(
    connection,
    `SELECT seq, on_day, kind, subject_kind, subject, amount_minor, payload,
     EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) AS reversed FROM entries e
     WHERE build = ? AND kind IN ('budgeted', 'contingency-drawn') ORDER BY seq`,
    build,
  ).map((row) => {
    const payload = row.payload === null ? {} : (JSON.parse(row.payload) as Record<string, unknown>);
    const contingency = payload['contingency'] === true;
    return {
      seq: row.seq,
      on: row.on_day,
      lineId: contingency || row.subject_kind !== 'budget-line' ? null : row.subject,
      kind: contingency ? 'contingency' : row.kind === 'budgeted' ? 'change' : 'contingency drawn',
      amountMinor: row.amount_minor,
      reason: String(payload['reason'] ?? ''),
      by: String(payload['by'] ?? ''),
      reversed: row.reversed === 1,
    };
  });
}

/** The budget of a build as it stands: lines, and the changes that weren't taken back. */
export function budgetPlan(connection: Connection, build: number): BudgetPlan {
  const lines = all<BudgetLine>(
    connection,
    'SELECT id, system, phase FROM budget_lines WHERE build = ? AND gone = 0 ORDER BY id',
    build,
  );
  const changes = budgetEntries(connection, build).filter(({ reversed }) => !reversed);
  return { lines, changes };
}

export type MoneyGroup = 'system' | 'phase' | 'vendor';

const noVendor = 0;

/** Money of a build by tag (null = unassigned), with the budget of the tag; and over all under `total`. */
export function moneyOf(
  connection: Connection,
  build: number,
  today: string,
  asOf: string | undefined,
  by: MoneyGroup = 'system',
): { readonly total: MoneyFigures; readonly rows: ReadonlyMap<number | null, MoneyFigures> } {
  const past = asOf !== undefined && asOf < today ? asOf : undefined;
  const tagged = taggedPositions(connection, build, past);
  const vendorOf = by === 'vendor' ? usualVendors(connection, build) : new Map<number, number>();
  const rows = new Map<number | null, MoneyFigures>();
  let total = noMoney;
  for (const { tags, position } of tagged) {
    const tag = by === 'vendor' ? (vendorOf.get(tags.id) ?? tags.vendor ?? noVendor) || null : tags[by];
    total = addPosition(total, position);
    rows.set(tag, addPosition(rows.get(tag) ?? noMoney, position));
  }
  const plan = budgetPlan(connection, build);
  const status = budgetStatus(plan, [], by === 'phase' ? 'phase' : 'system', past ?? today);
  if (by !== 'vendor') {
    for (const { tag, currentMinor } of status.rows) {
      rows.set(tag, { ...(rows.get(tag) ?? noMoney), budgetMinor: currentMinor });
    }
  }
  for (const [tag, row] of rows) rows.set(tag, { ...row, varianceMinor: row.budgetMinor - row.forecastMinor });
  const budgetMinor = status.total.currentMinor;
  return {
    total: {
      ...total,
      budgetMinor,
      contingencyLeftMinor: status.contingencyLeftMinor,
      varianceMinor: budgetMinor - total.forecastMinor,
    },
    rows,
  };
}

/** The vendor of a line's latest order; lines that were never ordered go to the vendor they are meant for. */
function usualVendors(connection: Connection, build: number): Map<number, number> {
  return new Map(
    all<{ part: number; vendor: number }>(
      connection,
      `SELECT l.part, o.vendor FROM order_lines l JOIN orders o ON o.id = l.order_id
       WHERE o.build = ? AND l.gone = 0 AND o.gone = 0 ORDER BY l.id`,
      build,
    ).map(({ part, vendor }) => [part, vendor]),
  );
}

/** Sums of some accounts by day; `sign` turns debits into what the figure counts. */
function byDay(connection: Connection, build: number, accounts: readonly (readonly [string, 1 | -1])[]): DatedAmount[] {
  const signs = new Map(accounts);
  return all<{ on: string; account: string; minor: number }>(
    connection,
    `SELECT on_day AS "on", account, sum(amount_minor) AS minor FROM postings
     WHERE build = ? AND account IN (SELECT value FROM json_each(?)) GROUP BY on_day, account ORDER BY on_day`,
    build,
    JSON.stringify([...signs.keys()]),
  ).map(({ on, account, minor }) => ({ on, minor: minor * (signs.get(account) ?? 1) }));
}

const paidAccounts = [
  ['cash', -1],
  ['deposits', -1],
  ['transfer', -1],
] as const;

/** Cumulative paid, committed and forecast against budget, from the same accounts as the figures. */
export function moneyOverTime(connection: Connection, build: number, asOf: string): CurvePoint[] {
  return moneyCurves(
    {
      paid: byDay(connection, build, paidAccounts),
      stillToPay: byDay(connection, build, [
        ['commitment', 1],
        ['vendor', -1],
        ['claims', -1],
      ]),
      remaining: byDay(connection, build, [['remaining', 1]]),
    },
    budgetPlan(connection, build),
    asOf,
  );
}

/** Cost recognised and paid in each calendar month up to a day. */
export function moneyPerMonth(connection: Connection, build: number, asOf: string): MonthSpend[] {
  return spendByMonth(
    byDay(connection, build, [
      ['cost', 1],
      ['loss', 1],
    ]),
    byDay(connection, build, paidAccounts),
    asOf,
  );
}
