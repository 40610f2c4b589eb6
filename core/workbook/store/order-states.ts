import { type Account, type Balance, lineAccounts, moneyAccounts, outstandingAccounts } from '../../ledger/accounts.ts';
import { outstandingOf, unsettledOf } from '../../ledger/coverage.ts';
import { type Figures, figures } from '../../ledger/figures.ts';
import { addMovement, emptyPart, type LineState, type MutablePart } from '../../ledger/part-state.ts';
import { all, type Connection } from './connection.ts';

/** Where one order line stands, with its lots: the same folds and figures as for part lines, over this line alone. */
export interface LinePosition {
  readonly line: LineState;
  readonly figures: Figures;
  readonly outstandingMilli: number;
  readonly inspectionMilli: number;
  readonly rejectedMilli: number;
  readonly returnedUnsettledMilli: number;
}

export interface OrderScope {
  readonly build: number;
  /** Only this order; all of the build's when absent. */
  readonly order?: number | undefined;
  /** At the end of this day; as it stands now when absent. */
  readonly asOf?: string | undefined;
}

const wanted: readonly Account[] = [
  ...lineAccounts,
  ...outstandingAccounts,
  ...moneyAccounts,
  'commitment',
  'inspection',
  'rejected',
  'returned',
  'settled',
];
const wantedSql = `account IN (${wanted.map((account) => `'${account}'`).join(', ')})`;

type Row = Omit<Balance, 'part'> & { readonly order: number };

/** Kept balances by order, so that a list costs nothing for part lines without one; a past day sums the postings. */
function rowsOf(connection: Connection, { build, order, asOf }: OrderScope): Row[] {
  const columns = 'account, line, lot, order_id AS "order"';
  if (asOf === undefined) {
    const where = order === undefined ? 'order_id IN (SELECT id FROM orders WHERE build = ?)' : 'order_id = ?';
    return all<Row>(
      connection,
      `SELECT ${columns}, quantity_milli AS quantityMilli, amount_minor AS amountMinor FROM balances
       WHERE ${where} AND ${wantedSql}`,
      order ?? build,
    );
  }
  const sums = `SELECT ${columns}, sum(quantity_milli) AS quantityMilli, sum(amount_minor) AS amountMinor FROM postings`;
  return order === undefined
    ? all<Row>(
        connection,
        `${sums} WHERE build = ? AND on_day <= ? AND order_id <> 0 AND ${wantedSql} GROUP BY order_id, line, lot, account`,
        build,
        asOf,
      )
    : all<Row>(
        connection,
        `${sums} WHERE part IN (SELECT part FROM order_lines WHERE order_id = ?) AND order_id = ? AND on_day <= ?
         AND ${wantedSql} GROUP BY order_id, line, lot, account`,
        order,
        order,
        asOf,
      );
}

/** Every order line of the scope on which something stands, by its id. */
export function linePositions(connection: Connection, scope: OrderScope): Map<number, LinePosition> {
  const states = new Map<number, MutablePart>();
  for (const row of rowsOf(connection, scope)) {
    if (row.line === 0 || (row.quantityMilli === 0 && row.amountMinor === 0)) continue;
    let state = states.get(row.line);
    if (state === undefined) {
      state = emptyPart({ part: 0, build: scope.build });
      states.set(row.line, state);
    }
    addMovement(state, row, row.order);
  }
  const positions = new Map<number, LinePosition>();
  for (const [id, state] of states) {
    const [line] = state.lines;
    if (line === undefined || line.orderedMilli <= 0) continue;
    positions.set(id, {
      line,
      figures: figures(state),
      outstandingMilli: outstandingOf(line),
      inspectionMilli: state.lots.reduce((sum, lot) => sum + lot.places.inspection, 0),
      rejectedMilli: state.lots.reduce((sum, lot) => sum + lot.places.rejected, 0),
      returnedUnsettledMilli: state.lots.reduce((sum, lot) => sum + unsettledOf(lot), 0),
    });
  }
  return positions;
}
