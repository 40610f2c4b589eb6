import type { ImportMatch } from '../contract/exchange.ts';
import type { OrderDraft } from '../contract/orders.ts';
import { daysBetween } from '../dates/calendar-date.ts';
import type { ImportedOrder, ImportedOrderLine, ImportPlan, PlannedRow } from '../exchange/import-types.ts';
import { cameIn } from '../exchange/plan-states.ts';
import { outstandingOf } from '../ledger/coverage.ts';
import type { LineState } from '../ledger/part-state.ts';
import { dayWords, quantityWords } from '../workbook/store/entry-text.ts';
import { importKeyOf, lastDayOfOrder, type OpenOrderLine, orderLinesNotYetKnown } from '../workbook/store/imports.ts';
import { needOrder, orderLinesOf } from '../workbook/store/order-records.ts';
import { eachPrice, earlier, type ImportBatch, type LinePlace, later } from './import-batch.ts';
import { freeNumber, placeBatchOrder } from './import-orders.ts';
import { fittingTexts, joined, remarksOf } from './import-texts.ts';
import { dayRate, landLines } from './order-landing.ts';
import { repriceOrder } from './order-repricing.ts';
import { addPart } from './part-writing.ts';

/**
 * An order of the file is the order that a list has told of already when the vendor, the part and the quantity are the
 * same and the days lie no further apart than this. Ours, no published source.
 */
const sameOrderDays = 45;

type Charges = OrderDraft['charges'];

interface FileLine {
  readonly row: number;
  readonly key: string;
  readonly said: ImportedOrderLine;
  readonly part: number;
  readonly eachE4: number;
  readonly implied: OpenOrderLine | undefined;
}

/** What the lines of the file change about an order that stands in the workbook. */
interface Correction {
  readonly vendor: number;
  readonly numbers: Set<string>;
  readonly prices: Map<number, number>;
  charges: Charges;
}

interface Told extends FileLine {
  readonly at: LinePlace;
  /** Day of the order, or of the list's order where that is later. */
  readonly on: string;
}

/** Writes an orders file: orders that a list told of are completed, the others are placed. */
export function writeOrders(batch: ImportBatch, plan: ImportPlan, matches: readonly ImportMatch[]): void {
  const rows = new Map(plan.rows.map((row) => [row.row, row]));
  const partOf = new Map(matches.map(({ row, part }) => [row, part]));
  const open = Map.groupBy(orderLinesNotYetKnown(batch.writer.connection, batch.build), ({ part }) => part);
  const corrections = new Map<number, Correction>();
  const told: Told[] = [];
  for (const order of plan.orders) {
    const [firstRow = 0] = order.rows;
    batch.atRow(firstRow, () => {
      const lines = order.rows.flatMap((row): FileLine[] => {
        const planned = rows.get(row);
        if (planned?.fate !== 'order-line' || planned.orderLine === undefined) return [];
        const said = planned.orderLine;
        if (said.state === 'not-needed') {
          batch.say(row, `not placed: the list says “${said.stateText}”`);
          return [];
        }
        return [batch.atRow(row, () => fileLine(batch, order, planned, said, partOf.get(row) ?? null, open))];
      });
      if (lines.length > 0) told.push(...assign(batch, order, lines, corrections));
    });
  }
  for (const [order, correction] of corrections) correct(batch, order, correction);
  for (const line of told) batch.atRow(line.row, () => tellLine(batch, line));
  keepKeys(batch, told);
}

const dayOf = (batch: ImportBatch, order: ImportedOrder): string => order.orderedOn ?? batch.on;

function fileLine(
  batch: ImportBatch,
  order: ImportedOrder,
  planned: PlannedRow,
  said: ImportedOrderLine,
  matched: number | null,
  open: ReadonlyMap<number, OpenOrderLine[]>,
): FileLine {
  const vendor = batch.vendor(order.vendor);
  const quantity = said.quantityMilli ?? 0;
  const part = matched ?? addForOrder(batch, order, planned, said, vendor);
  batch.belongs(said.row, part);
  if (matched === null) batch.say(said.row, `new part line “${said.description}”`);
  const own = open.get(part) ?? [];
  const index = own.findIndex((line) => isSameOrder(line, order, vendor, quantity, dayOf(batch, order)));
  const [implied] = index < 0 ? [] : own.splice(index, 1);
  return {
    row: said.row,
    key: importKeyOf(planned.key ?? '', planned.content ?? ''),
    said,
    part,
    eachE4: eachPrice(quantity, said.unitPriceE4, said.lineTotalMinor),
    implied,
  };
}

/** Whether an order line that stands is the one that the file is about. */
function isSameOrder(
  line: OpenOrderLine,
  order: ImportedOrder,
  vendor: number,
  quantityMilli: number,
  on: string,
): boolean {
  if (line.vendor !== vendor || line.quantityMilli !== quantityMilli || line.currency !== order.currency) return false;
  if (line.number !== '') return sameNumber(line.number, order.orderNumber);
  return Math.abs(daysBetween(line.orderedOn, on)) <= sameOrderDays;
}

const sameNumber = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** An order line for a part that is on no list: somebody ordered it, so it is needed. */
function addForOrder(
  batch: ImportBatch,
  order: ImportedOrder,
  planned: PlannedRow,
  said: ImportedOrderLine,
  vendor: number,
): number {
  const on = [said.arrivedOn, order.orderedOn].reduce<string>(
    (day, other) => (other === undefined ? day : earlier(day, other)),
    batch.on,
  );
  const part = addPart(batch.writer, batch.build, on, {
    ...fittingTexts(said),
    unit: said.unit,
    vendor,
    attention: joined(remarksOf(planned)),
    needMilli: said.quantityMilli ?? 0,
  });
  batch.writer.made.push(part);
  return part;
}

const chargesOf = (order: ImportedOrder): Charges => ({
  discountMinor: order.discountMinor,
  shippingMinor: order.shippingMinor,
  dutyMinor: order.dutyMinor,
  tax: { kind: 'amount', minor: order.taxMinor },
});

const addCharges = (a: Charges, b: Charges): Charges => ({
  discountMinor: a.discountMinor + b.discountMinor,
  shippingMinor: a.shippingMinor + b.shippingMinor,
  dutyMinor: a.dutyMinor + b.dutyMinor,
  // An order whose tax was worked out by a rate keeps it; only amounts can be added.
  tax:
    a.tax.kind === 'amount' && b.tax.kind === 'amount' ? { kind: 'amount', minor: a.tax.minor + b.tax.minor } : a.tax,
});

/** Gives each line of a file's order to the order that it stands on: one told of before, or a new one. */
function assign(
  batch: ImportBatch,
  order: ImportedOrder,
  lines: readonly FileLine[],
  corrections: Map<number, Correction>,
): Told[] {
  const vendor = batch.vendor(order.vendor);
  const on = dayOf(batch, order);
  const { connection } = batch.writer;
  const { rate } = dayRate(connection, batch.base, order.currency, on, undefined);
  const priced = lines.map(({ said, eachE4 }) => ({ quantityMilli: said.quantityMilli ?? 0, eachE4 }));
  const landed = landLines(priced, chargesOf(order), order.currency, batch.base, rate);
  const targets = Map.groupBy(
    lines.map((line, index) => ({ line, shares: landed.lines[index] })),
    ({ line }) => line.implied?.order ?? 0,
  );
  const told: Told[] = [];
  if (targets.size > 1) {
    const split = `the vendor's one order stands here as ${targets.size}, because the list dates its lines differently`;
    for (const { row } of lines) batch.say(row, split);
  }
  for (const [target, group] of targets) {
    const charges =
      targets.size === 1
        ? chargesOf(order)
        : group.reduce<Charges>(
            (sum, { shares }) =>
              addCharges(sum, {
                discountMinor: -(shares?.discountMinor ?? 0),
                shippingMinor: shares?.shippingMinor ?? 0,
                dutyMinor: shares?.dutyMinor ?? 0,
                tax: { kind: 'amount', minor: shares?.taxMinor ?? 0 },
              }),
            { discountMinor: 0, shippingMinor: 0, dutyMinor: 0, tax: { kind: 'amount', minor: 0 } },
          );
    if (target === 0)
      told.push(
        ...place(
          batch,
          order,
          vendor,
          on,
          group.map(({ line }) => line),
          charges,
        ),
      );
    else {
      const known = needOrder(connection, target);
      const correction = corrections.get(target) ?? {
        vendor,
        numbers: new Set(),
        prices: new Map(),
        charges: known.charges,
      };
      corrections.set(target, correction);
      correction.numbers.add(order.orderNumber);
      correction.charges = addCharges(correction.charges, charges);
      for (const { line } of group) {
        if (line.implied === undefined) continue;
        correction.prices.set(line.implied.line, line.eachE4);
        const at = { build: batch.build, part: line.part, order: target, line: line.implied.line };
        batch.say(
          line.row,
          `completes the order of ${dayWords(known.orderedOn)} that the list told of${known.orderedOn === on ? '' : `; the vendor dates it ${dayWords(on)}, the list's day stays`}`,
        );
        told.push({ ...line, at, on: later(on, known.orderedOn) });
      }
    }
  }
  return told;
}

function place(
  batch: ImportBatch,
  order: ImportedOrder,
  vendor: number,
  on: string,
  lines: readonly FileLine[],
  charges: Charges,
): Told[] {
  const number = freeNumber(batch, vendor, order.orderNumber);
  const placed = placeBatchOrder(
    batch,
    {
      build: batch.build,
      vendor,
      number,
      currency: order.currency,
      charges,
      promisedOn: null,
      note: '',
      lines: lines.map(({ part, said, eachE4 }) => ({ part, quantityMilli: said.quantityMilli ?? 0, eachE4 })),
    },
    on,
  );
  return lines.map((line, index) => {
    batch.say(line.row, `ordered ${dayWords(on)} under ${number === '' ? 'no number' : number}`);
    for (const text of placed.wrong.get(line.part) ?? []) batch.say(line.row, text);
    return {
      ...line,
      at: { build: batch.build, part: line.part, order: placed.order, line: placed.lines[index] as number },
      on,
    };
  });
}

/** Number, prices and charges of an order that a list told of, on the day when the last of it came. */
function correct(batch: ImportBatch, id: number, correction: Correction): void {
  const { writer } = batch;
  const order = needOrder(writer.connection, id);
  const number =
    order.number === '' ? freeNumber(batch, correction.vendor, [...correction.numbers].join(', '), id) : order.number;
  const prices = orderLinesOf(writer.connection, id).flatMap(({ id: line, eachE4 }) => {
    const given = correction.prices.get(line);
    return given === undefined || given === eachE4 ? [] : [{ line, eachE4: given }];
  });
  const same = JSON.stringify(correction.charges) === JSON.stringify(order.charges);
  if (number === order.number && prices.length === 0 && same) return;
  repriceOrder(writer, order, {
    on: later(lastDayOfOrder(writer.connection, id) ?? order.orderedOn, order.orderedOn),
    revision: order.revision,
    charges: correction.charges,
    lines: prices,
    number,
  });
}

/** What the file says of a line: how much is on back-order, came, is on its way, was paid. */
function tellLine(batch: ImportBatch, told: Told): void {
  const { writer } = batch;
  const { said, at, on, row } = told;
  const about = { ...at, on };
  const line = (): LineState => {
    const state = writer.state(at.part).lines.find(({ line: id }) => id === at.line);
    if (state === undefined) throw new Error('An order line has no state');
    return state;
  };
  const arrived = cameIn(said.state) || said.arrivedOn !== undefined || said.state === 'partly-received';
  const came = Math.min(
    (arrived ? (said.shippedMilli ?? (cameIn(said.state) ? said.quantityMilli : 0)) : 0) ?? 0,
    said.quantityMilli ?? 0,
  );
  const more = Math.min(came - line().receivedMilli, outstandingOf(line()));
  if (more > 0) {
    const day = later(said.arrivedOn ?? on, on);
    batch.receive(at, day, more, true);
    const noDay = said.arrivedOn === undefined ? ', the day of the order, because the file gives none' : '';
    batch.say(row, `${quantityWords(more, said.unit)} received ${dayWords(day)}${noDay}`);
  }
  const waiting = Math.min(
    (said.backorderedMilli ?? 0) - line().backOrderedMilli,
    outstandingOf(line()) - line().backOrderedMilli,
  );
  if (waiting > 0) {
    writer.post({
      ...about,
      kind: 'back-ordered',
      quantityMilli: waiting,
      payload: { promisedOn: said.promisedOn ?? null },
    });
    batch.say(
      row,
      `${quantityWords(waiting, said.unit)} on back-order${said.promisedOn === undefined ? ', no date' : ''}`,
    );
  }
  const unsent = line().placedMilli + line().acknowledgedMilli;
  const sent = Math.min((said.shippedMilli ?? 0) - line().receivedMilli - line().inTransitMilli, unsent);
  if (sent > 0) {
    writer.post({
      ...about,
      kind: 'shipped',
      quantityMilli: sent,
      payload: said.tracking === undefined ? {} : { tracking: said.tracking.slice(0, 200) },
    });
    batch.say(row, `${quantityWords(sent, said.unit)} on the way`);
  }
  if (said.promisedOn !== undefined && outstandingOf(line()) > 0) {
    if (waiting <= 0) writer.post({ ...about, kind: 'promised', payload: { promisedOn: said.promisedOn } });
    batch.say(row, `promised for ${dayWords(said.promisedOn)}`);
  }
  if (said.state === 'acknowledged' && line().placedMilli > 0) {
    writer.post({ ...about, kind: 'acknowledged', quantityMilli: line().placedMilli });
  }
  if (said.paid === 'paid' && batch.payRest(at, on)) batch.say(row, 'paid');
}

/** Marks the lines with the rows of the file, so that the same rows are known when they come again. */
function keepKeys(batch: ImportBatch, told: readonly Told[]): void {
  const { writer } = batch;
  for (const [order, lines] of Map.groupBy(told, ({ at }) => at.order)) {
    const edits = lines.flatMap(({ at, key }) => writer.change('orderLines', at.line, { importKey: key }) ?? []);
    if (edits.length === 0) continue;
    const { orderedOn, number } = needOrder(writer.connection, order);
    writer.post(
      {
        kind: 'record',
        on: later(orderedOn, batch.on),
        build: batch.build,
        order,
        payload: { record: 'order', did: 'found in a list of orders', number },
      },
      edits,
    );
  }
}
