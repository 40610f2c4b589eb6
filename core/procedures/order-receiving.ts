import type { z } from 'zod';
import type { boxLine } from '../contract/orders.ts';
import { outstandingOf } from '../ledger/coverage.ts';
import { Refusal } from '../refusal.ts';
import { plainQuantity } from '../units/quantity.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import type { Edit } from '../workbook/store/edits.ts';
import type { OrderRecord } from '../workbook/store/order-records.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { counted } from './context.ts';
import { atFields, checkWhole, chosenLines, describe, lineState } from './order-acts.ts';
import { needPart } from './part-writing.ts';

type BoxLine = z.infer<typeof boxLine>;

export interface Box {
  readonly on: string;
  readonly lines: readonly BoxLine[];
  readonly bin: number | null;
  readonly leaveForInspection: boolean;
  readonly note: string;
}

interface Place {
  readonly build: number;
  readonly part: number;
  readonly order: number;
  readonly line: number;
}

type HowItCame = Pick<Box, 'on' | 'bin' | 'leaveForInspection' | 'note'>;

/** Puts the part line in the bin that its units go to; the edit belongs to the entry that brings them in. */
function binned(writer: ActWriter, part: number, bin: number | null): Edit[] {
  const edit = bin === null ? undefined : writer.change('parts', part, { bin });
  return edit === undefined ? [] : [edit];
}

/** Units of one line as a new lot in inspection, then the good ones on the shelf. Returns the lot. */
function bringIn(
  writer: ActWriter,
  at: Place,
  kind: 'received' | 'over-delivered',
  quantityMilli: number,
  goodMilli: number,
  how: HowItCame,
): number {
  const about = { on: how.on, ...at, ...(how.note === '' ? {} : { note: how.note }) };
  const lot = writer.make('lots', {
    part: at.part,
    build: at.build,
    line: at.line,
    source: kind === 'received' ? 'bought' : 'over-delivery',
    owner: '',
    dueOn: null,
    bin: how.bin,
    cameInOn: how.on,
  });
  const edits = [lot.edit, ...binned(writer, at.part, how.bin)];
  writer.post({ ...about, kind, lot: lot.id, quantityMilli }, edits);
  if (goodMilli > 0 && !how.leaveForInspection) {
    writer.post({ ...about, kind: 'accepted', lot: lot.id, quantityMilli: goodMilli, payload: { to: 'shelf' } });
  }
  return lot.id;
}

const badOf = (item: BoxLine): number => item.bad.reduce((sum, { quantityMilli }) => sum + quantityMilli, 0);

function receiveLine(writer: ActWriter, at: Place, item: BoxLine, how: HowItCame, field: string): void {
  const { connection } = writer;
  checkWhole(connection, at.part, item.goodMilli, `${field}.goodMilli`);
  checkWhole(connection, at.part, item.extraMilli, `${field}.extraMilli`);
  item.bad.forEach(({ quantityMilli }, index) => {
    checkWhole(connection, at.part, quantityMilli, `${field}.bad.${index}.quantityMilli`);
  });
  const came = item.goodMilli + badOf(item);
  const open = outstandingOf(lineState(writer, at.part, at.line, `${field}.line`));
  if (came > open) {
    throw new Refusal(
      'not-allowed-from-here',
      `${plainQuantity(came)} of “${describe(connection, at.part)}” came, but ${plainQuantity(open)} is outstanding. Nothing was changed.`,
      {
        field: `${field}.goodMilli`,
        accepted: `at most ${plainQuantity(open)}; what is over goes in as more than ordered`,
        detail: { bucket: 'outstanding', available: open, asked: came },
      },
    );
  }
  if (came > 0) {
    const lot = bringIn(writer, at, 'received', came, item.goodMilli, how);
    for (const { quantityMilli, reason, note } of item.bad) {
      writer.post({
        ...at,
        kind: 'rejected',
        on: how.on,
        lot,
        quantityMilli,
        ...(note === '' ? {} : { note }),
        payload: { from: 'inspection', reason },
      });
    }
  }
  if (item.extraMilli > 0) bringIn(writer, at, 'over-delivered', item.extraMilli, item.extraMilli, how);
  sayAboutRest(writer, at, item, how);
}

/** What the delivery note says about the units that weren't in the box. */
function sayAboutRest(writer: ActWriter, at: Place, item: BoxLine, how: HowItCame): void {
  const line = lineState(writer, at.part, at.line, 'lines');
  const waiting = line.placedMilli + line.acknowledgedMilli + line.inTransitMilli;
  if (outstandingOf(line) === 0) return;
  const about = { on: how.on, ...at, payload: { promisedOn: item.restPromisedOn } };
  if (item.restBackOrdered && waiting > 0) writer.post({ ...about, kind: 'back-ordered', quantityMilli: waiting });
  else if (item.restPromisedOn !== null) writer.post({ ...about, kind: 'promised' });
}

/**
 * One box checked against its order, line by line: good units accepted, bad ones rejected with their reason, more than
 * ordered kept outside the order, and what the vendor says about the rest.
 * @returns the label of the act.
 * @throws Refusal naming the line and count that can't be.
 */
export function receiveBox(writer: ActWriter, order: OrderRecord, box: Box): string {
  const { connection } = writer;
  if (box.bin !== null) needRecord(connection, 'bins', box.bin, 'bin');
  const arrived = box.lines.filter((item) => item.goodMilli + badOf(item) + item.extraMilli > 0);
  if (arrived.length === 0) {
    throw new Refusal('bad-input', 'The box has nothing in it: no line has units that came. Nothing was changed.', {
      field: 'lines',
      accepted: 'at least one unit that came; a notice without a delivery is a back-order notice',
    });
  }
  for (const { item, record, field } of chosenLines(connection, order, box.lines)) {
    receiveLine(writer, { build: order.build, part: record.part, order: order.id, line: record.id }, item, box, field);
  }
  return `Receipt of ${counted(arrived.length, 'line')}`;
}

/**
 * Everything outstanding on the part lines given, whatever their orders, accepted to the shelf. A part line with
 * nothing to come is passed over.
 * @throws Refusal `not-allowed-from-here` when nothing is to come on any of them.
 */
export function receiveParts(
  writer: ActWriter,
  build: number,
  given: { readonly on: string; readonly parts: readonly number[]; readonly bin: number | null },
): string {
  const { connection } = writer;
  if (given.bin !== null) needRecord(connection, 'bins', given.bin, 'bin');
  const how = { on: given.on, bin: given.bin, leaveForInspection: false, note: '' };
  const received: number[] = [];
  for (const part of new Set(given.parts)) {
    const record = atFields({ part: 'parts' }, () => needPart(writer, part, build));
    const open = writer.state(part).lines.filter((line) => outstandingOf(line) > 0);
    for (const line of open) {
      const quantityMilli = outstandingOf(line);
      bringIn(
        writer,
        { build, part, order: line.order, line: line.line },
        'received',
        quantityMilli,
        quantityMilli,
        how,
      );
    }
    if (open.length > 0) received.push(record.id);
  }
  const [first] = received;
  if (first === undefined) {
    throw new Refusal('not-allowed-from-here', 'Nothing is to come on the part lines chosen. Nothing was changed.', {
      field: 'parts',
      accepted: 'a part line with units on order',
      detail: { bucket: 'outstanding', available: 0 },
    });
  }
  return `Receipt of ${received.length === 1 ? describe(connection, first) : counted(received.length, 'line')}`;
}
