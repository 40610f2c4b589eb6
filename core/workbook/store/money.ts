import { type BudgetChange, type BudgetLine, type BudgetPlan, budgetStatus } from '../../budget/budget.ts';
import { type CurvePoint, type DatedAmount, type MonthSpend, moneyCurves, spendByMonth } from '../../budget/spend.ts';
import type { MoneyFigures } from '../../contract/money.ts';
import { all, type Connection } from './connection.ts';
import { positionsAsOf } from './part-rows.ts';
import { keptPositions, type Position } from './positions.ts';
import { remembered } from './remembered.ts';

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
/** The same in a query over `positions q`. */
const lacksEstimateSql = '(q.estimate_each_e4 IS NULL AND q.uncovered_milli > 0)';

/** Figures of one position or of many added up: everything that the money figures are made of. */
type PositionMoney = Pick<
  Position,
  | 'costMinor'
  | 'commitmentMinor'
  | 'remainingMinor'
  | 'paidMinor'
  | 'vendorOwedMinor'
  | 'claimsMinor'
  | 'depositsMinor'
  | 'lossMinor'
  | 'exchangeMinor'
> & { readonly withoutEstimate: number };

/** `PositionMoney` of all rows of a query over `positions q`, added up by SQLite: exact, for all of it is integers. */
const moneySumsSql = `coalesce(sum(q.cost_minor), 0) AS costMinor, coalesce(sum(q.commitment_minor), 0) AS commitmentMinor,
  coalesce(sum(q.remaining_minor), 0) AS remainingMinor, coalesce(sum(q.paid_minor), 0) AS paidMinor,
  coalesce(sum(q.vendor_owed_minor), 0) AS vendorOwedMinor, coalesce(sum(q.claims_minor), 0) AS claimsMinor,
  coalesce(sum(q.deposits_minor), 0) AS depositsMinor, coalesce(sum(q.loss_minor), 0) AS lossMinor,
  coalesce(sum(q.exchange_minor), 0) AS exchangeMinor, coalesce(sum(${lacksEstimateSql}), 0) AS withoutEstimate`;

function addMoney(sum: MoneyFigures, more: PositionMoney): MoneyFigures {
  const costMinor = sum.costMinor + more.costMinor;
  const commitmentMinor = sum.commitmentMinor + more.commitmentMinor;
  const remainingMinor = sum.remainingMinor + more.remainingMinor;
  return {
    ...sum,
    costMinor,
    commitmentMinor,
    remainingMinor,
    paidMinor: sum.paidMinor + more.paidMinor,
    stillToPayMinor: sum.stillToPayMinor + more.commitmentMinor + more.vendorOwedMinor - more.claimsMinor,
    forecastMinor: costMinor + commitmentMinor + remainingMinor,
    depositsMinor: sum.depositsMinor + more.depositsMinor,
    claimsMinor: sum.claimsMinor + more.claimsMinor,
    lossMinor: sum.lossMinor + more.lossMinor,
    exchangeMinor: sum.exchangeMinor + more.exchangeMinor,
    withoutEstimate: sum.withoutEstimate + more.withoutEstimate,
  };
}

export const addPosition = (sum: MoneyFigures, position: Position): MoneyFigures =>
  addMoney(sum, { ...position, withoutEstimate: lacksEstimate(position) ? 1 : 0 });

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
     WHERE +build = ? AND kind IN ('budgeted', 'contingency-drawn') ORDER BY seq`,
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
  const rows = new Map<number | null, MoneyFigures>();
  let total = noMoney;
  for (const { tag, money } of past === undefined
    ? moneyByTag(connection, build, by)
    : moneyByTagAsOf(connection, build, past, by)) {
    total = addMoney(total, money);
    rows.set(tag, addMoney(rows.get(tag) ?? noMoney, money));
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

interface TagMoney {
  readonly tag: number | null;
  readonly money: PositionMoney;
}

/** Money by tag as it stands, one row a tag: added up where it lies, for a build may have a hundred thousand lines. */
function moneyByTag(connection: Connection, build: number, by: MoneyGroup): TagMoney[] {
  const latestVendor = `LEFT JOIN (SELECT l.part, o.vendor, max(l.id) FROM order_lines l JOIN orders o ON o.id = l.order_id
    WHERE o.build = :build AND l.gone = 0 AND o.gone = 0 GROUP BY l.part) u ON u.part = p.id`;
  const tag = by === 'vendor' ? `nullif(coalesce(u.vendor, p.vendor, ${noVendor}), ${noVendor})` : `p.${by}`;
  return remembered(connection, `money by ${by} ${build}`, () =>
    (
      connection
        .prepare(
          `SELECT ${tag} AS tag, ${moneySumsSql} FROM positions q JOIN parts p ON p.id = q.part
           ${by === 'vendor' ? latestVendor : ''} WHERE p.build = :build AND p.gone = 0 GROUP BY 1 ORDER BY min(p.id)`,
        )
        .all({ build }) as (PositionMoney & { tag: number | null })[]
    ).map(({ tag: own, ...money }) => ({ tag: own, money })),
  );
}

/** The same at the end of a past day, from the postings. */
function moneyByTagAsOf(connection: Connection, build: number, asOf: string, by: MoneyGroup): TagMoney[] {
  const vendorOf = by === 'vendor' ? usualVendors(connection, build) : new Map<number, number>();
  return taggedPositions(connection, build, asOf).map(({ tags, position }) => ({
    tag: by === 'vendor' ? (vendorOf.get(tags.id) ?? tags.vendor ?? noVendor) || null : tags[by],
    money: { ...position, withoutEstimate: lacksEstimate(position) ? 1 : 0 },
  }));
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
  return sumsByDay(connection, build)
    .filter(({ account }) => signs.has(account))
    .map(({ on, account, minor }) => ({ on, minor: minor * (signs.get(account) ?? 1) }));
}

interface DaySum {
  readonly on: string;
  readonly account: string;
  readonly minor: number;
}

/** Amounts of every account by day: one walk through the postings for all curves. */
const sumsByDay = (connection: Connection, build: number): readonly DaySum[] =>
  remembered(connection, `sums by day ${build}`, () =>
    all<DaySum>(
      connection,
      `SELECT on_day AS "on", account, sum(amount_minor) AS minor FROM postings WHERE build = ? AND amount_minor <> 0
       GROUP BY on_day, account ORDER BY on_day`,
      build,
    ),
  );

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
      // Paid holds what rates and cash rounding cost, which belongs to no estimate: it is taken off again.
      remaining: byDay(connection, build, [
        ['remaining', 1],
        ['exchange', -1],
        ['rounding', -1],
      ]),
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
