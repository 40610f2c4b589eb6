import type { ChaseRow, DueRow } from '../contract/orders.ts';
import { formatMoney } from '../money/currency.ts';
import { askedLately, chaseLetter, chaseReason, waitedDays } from '../purchasing/chasing.ts';
import { type Connection, readSettings } from '../workbook/store/connection.ts';
import { dayWords, quantityWords } from '../workbook/store/entry-text.ts';
import { dueRows } from '../workbook/store/order-due.ts';
import { needOrder } from '../workbook/store/order-records.ts';
import { orderRows } from '../workbook/store/order-rows.ts';
import { readRecord } from '../workbook/store/record-tables.ts';
import { act, type Context, counted, needBuild, procedures } from './context.ts';
import { chaseOrder } from './order-moves.ts';

const { orders } = procedures;
const words = { day: dayWords };

/** Lines to ask about on a day, the longest wait first; lines of an order that was asked about lately are left out. */
export function chaseLines(open: readonly DueRow[], day: string): { row: DueRow; why: string }[] {
  return open
    .flatMap((row) => {
      const why = chaseReason(row, words);
      return why === null || askedLately(row.chasedOn, day) ? [] : [{ row, why }];
    })
    .sort((one, other) => waitedDays(other.row) - waitedDays(one.row));
}

/** The number that the vendor knows the part by. */
function numbered(connection: Connection, part: number): string {
  const number = String(readRecord(connection, 'parts', part)?.['partNumber'] ?? '');
  return number === '' ? '' : ` (${number})`;
}

interface Claim {
  readonly order: number;
  readonly number: string;
  readonly orderedOn: string;
  readonly claimsMinor: number;
}

function rowsOf(context: Context, build: number, asOf: string | undefined): ChaseRow[] {
  const { connection } = context.book();
  const { currency, author } = readSettings(connection);
  const today = context.today();
  const past = asOf !== undefined && asOf < today ? asOf : undefined;
  const day = past ?? today;
  const asked = Map.groupBy(chaseLines(dueRows(connection, build, today, past), day), ({ row }) => row.vendor);
  const claims = Map.groupBy(
    orderRows(connection, { build, asOf: past }, today).filter(
      ({ claimsMinor, chasedOn }) => claimsMinor > 0 && !askedLately(chasedOn, day),
    ),
    ({ vendor }) => vendor,
  );
  return [...new Set([...asked.keys(), ...claims.keys()])]
    .map((vendor): ChaseRow => {
      const lines = asked.get(vendor) ?? [];
      const owed: Claim[] = (claims.get(vendor) ?? []).map(({ id, number, orderedOn, claimsMinor }) => ({
        order: id,
        number,
        orderedOn,
        claimsMinor,
      }));
      const record = readRecord(connection, 'vendors', vendor);
      const vendorName = String(record?.['name'] ?? '');
      const byOrder = [...Map.groupBy(lines, ({ row }) => row.order)];
      const chasedDays = lines.flatMap(({ row }) => row.chasedOn ?? []).sort();
      const claimsMinor = owed.reduce((sum, claim) => sum + claim.claimsMinor, 0);
      const about = [
        ...(lines.length === 0 ? [] : [`${counted(lines.length, 'line')} late or on back-order`]),
        ...(claimsMinor === 0 ? [] : [`${formatMoney(claimsMinor, currency)} of claims not settled`]),
      ].join(' and ');
      const last = chasedDays.at(-1) ?? null;
      return {
        vendor,
        vendorName,
        contact: String(record?.['contact'] ?? ''),
        why: `${about}; ${last === null ? 'never asked' : `last asked ${dayWords(last)}`}`,
        waitedDays: Math.max(0, ...lines.map(({ row }) => waitedDays(row))),
        chasedOn: last,
        orders: [
          ...byOrder.map(([order, rows]) => ({
            order,
            number: rows[0]?.row.orderNumber ?? '',
            lines: rows.map(({ row, why }) => ({ part: row.part, description: row.description, why })),
          })),
          ...owed
            .filter(({ order }) => !byOrder.some(([own]) => own === order))
            .map(({ order, number }) => ({ order, number, lines: [] })),
        ],
        claimsMinor,
        text: chaseLetter(
          {
            vendorName,
            account: String(record?.['account'] ?? ''),
            author,
            orders: byOrder.map(([, rows]) => ({
              number: rows[0]?.row.orderNumber ?? '',
              orderedOn: rows[0]?.row.orderedOn ?? day,
              lines: rows.map(({ row, why }) => ({
                what: `${quantityWords(row.outstandingMilli, row.unit)} ${row.description}${numbered(connection, row.part)}`,
                why,
              })),
            })),
            claims: owed.map(
              ({ number, orderedOn, claimsMinor: open }) =>
                `${number === '' ? `our order of ${dayWords(orderedOn)}` : `order ${number}`}: ${formatMoney(open, currency)}`,
            ),
          },
          words,
        ),
      };
    })
    .sort((one, other) => other.waitedDays - one.waitedDays || (one.vendorName < other.vendorName ? -1 : 1));
}

export const chasingProcedures = {
  chasing: orders.chasing.handler(({ context, input }) => {
    needBuild(context, input.build);
    const rows = rowsOf(context, input.build, input.asOf);
    const [first] = rows;
    return {
      answer:
        first === undefined
          ? 'Nobody is to be chased: no promise has passed without an answer, and no back-order has grown old.'
          : `${counted(rows.length, 'vendor')} to write to; ${first.vendorName} first: ${first.why}.`,
      rows,
    };
  }),
  chaseAll: orders.chaseAll.handler(({ context, input }) =>
    act(context, input, `Vendor asked about ${counted(input.orders.length, 'order')}`, (writer) => {
      for (const order of new Set(input.orders)) chaseOrder(writer, needOrder(writer.connection, order), input);
      return undefined;
    }),
  ),
};
