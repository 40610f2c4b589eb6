import { outstandingOf } from '../ledger/coverage.ts';
import type { EntryKind, EntryPayload } from '../ledger/entry.ts';
import type { LineState } from '../ledger/part-state.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { type OrderRecord, orderLinesOf } from '../workbook/store/order-records.ts';
import { counted } from './context.ts';
import { atFields, checkWhole, chosenLines, describe, lineState, orderName } from './order-acts.ts';

export type LineMove = 'acknowledged' | 'back-ordered' | 'shipped' | 'cancelled';

/** Most units of a line that a notice could be about now. */
const most: Record<LineMove, (line: LineState) => number> = {
  acknowledged: (line) => line.placedMilli,
  'back-ordered': (line) => line.placedMilli + line.acknowledgedMilli + line.inTransitMilli,
  shipped: (line) => line.placedMilli + line.acknowledgedMilli + line.backOrderedMilli,
  cancelled: outstandingOf,
};

const nouns: Record<LineMove, string> = {
  acknowledged: 'Acknowledgement of',
  'back-ordered': 'Back-order notice for',
  shipped: 'Dispatch of',
  cancelled: 'Cancellation on',
};

const nothingLeft: Record<LineMove, string> = {
  acknowledged: 'waits to be acknowledged',
  'back-ordered': 'is outstanding and not yet on back-order',
  shipped: 'waits to be sent',
  cancelled: 'is outstanding',
};

export interface LineMoves {
  readonly on: string;
  readonly lines: readonly { readonly line: number; readonly quantityMilli?: number | undefined }[];
  readonly payload: EntryPayload;
  readonly note: string;
}

/**
 * One notice about lines of an order, an entry a line. A line without a quantity means all that the notice can be
 * about; such a line with nothing left is passed over.
 * @returns the label of the act.
 * @throws Refusal `not-allowed-from-here` naming the line's quantity, or the lines when none has anything left.
 */
export function moveLines(writer: ActWriter, order: OrderRecord, move: LineMove, given: LineMoves): string {
  const { connection } = writer;
  let moved = 0;
  for (const { item, record, field } of chosenLines(connection, order, given.lines)) {
    const line = lineState(writer, record.part, record.id, `${field}.line`);
    const quantityMilli = item.quantityMilli ?? most[move](line);
    if (quantityMilli === 0) continue;
    checkWhole(connection, record.part, quantityMilli, `${field}.quantityMilli`);
    atFields({ quantity: `${field}.quantityMilli` }, () =>
      writer.post({
        kind: move,
        on: given.on,
        build: order.build,
        part: record.part,
        order: order.id,
        line: record.id,
        quantityMilli,
        ...(given.note === '' ? {} : { note: given.note }),
        payload: given.payload,
      }),
    );
    moved += 1;
  }
  if (moved === 0) throw nothing(nothingLeft[move], 'lines');
  return `${nouns[move]} ${orderName(connection, order)}, ${counted(moved, 'line')}`;
}

function nothing(what: string, field: string): Refusal {
  return new Refusal('not-allowed-from-here', `Nothing on the order's lines chosen ${what}. Nothing was changed.`, {
    field,
    accepted: `a line of which something ${what}`,
  });
}

/** A new promise for lines with units to come; null says that the vendor gave no date. Earlier promises are kept. */
export function promiseLines(
  writer: ActWriter,
  order: OrderRecord,
  given: {
    readonly on: string;
    readonly lines: readonly number[];
    readonly promisedOn: string | null;
    readonly note: string;
  },
): string {
  const { connection } = writer;
  const asked = given.lines.map((line) => ({ line }));
  for (const { record, field } of chosenLines(connection, order, asked)) {
    if (outstandingOf(lineState(writer, record.part, record.id, field)) === 0) {
      throw new Refusal(
        'not-allowed-from-here',
        `Nothing of “${describe(connection, record.part)}” is still to come on this order. Nothing was changed.`,
        { field, accepted: 'a line with units still to come' },
      );
    }
    postAbout(writer, order, record, 'promised', given, { promisedOn: given.promisedOn });
  }
  return `New promise for ${orderName(connection, order)}, ${counted(asked.length, 'line')}`;
}

/** The vendor was asked about every line with units to come. */
export function chaseOrder(
  writer: ActWriter,
  order: OrderRecord,
  given: { readonly on: string; readonly note: string },
): string {
  const { connection } = writer;
  const open = orderLinesOf(connection, order.id).filter((record) => {
    const line = writer.state(record.part).lines.find(({ line: id }) => id === record.id);
    return line !== undefined && (outstandingOf(line) > 0 || line.claimsMinor > 0);
  });
  if (open.length === 0) throw nothing('is still to come', 'order');
  for (const record of open) postAbout(writer, order, record, 'chased', given, {});
  return `Chasing of ${orderName(connection, order)}`;
}

function postAbout(
  writer: ActWriter,
  order: OrderRecord,
  record: { readonly id: number; readonly part: number },
  kind: EntryKind,
  given: { readonly on: string; readonly note: string },
  payload: EntryPayload,
): void {
  writer.post({
    kind,
    on: given.on,
    build: order.build,
    part: record.part,
    order: order.id,
    line: record.id,
    ...(given.note === '' ? {} : { note: given.note }),
    payload,
  });
}
