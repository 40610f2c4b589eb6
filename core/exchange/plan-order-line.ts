/** One row of an order list to one order line. */
import type { ImportedOrderLine, ImportState } from './import-types.ts';
import { cameIn, stateOfRow } from './plan-states.ts';
import type { RowNotes } from './row-notes.ts';
import {
  amountOf,
  dateOf,
  type PlanContext,
  paidOf,
  present,
  priceOf,
  quantityOf,
  sideQuantity,
} from './row-values.ts';
import type { TableRow } from './table-types.ts';

export type LineTotalAnswer = 'line-total' | 'quantity-times-price';

export interface PlannedLine {
  readonly line: ImportedOrderLine;
  /** Quantity × price and the line total differ by more than one minor unit. */
  readonly disagrees: boolean;
}

/** @param answer which of the two holds, once the user has said it for the batch. */
export function planOrderLine(
  context: PlanContext,
  row: TableRow,
  notes: RowNotes,
  answer: LineTotalAnswer | null,
): PlannedLine {
  const { reader } = context;
  const partNumber = reader.text(row, 'partNumber');
  const description = reader.text(row, 'description');
  const orderNumber = reader.text(row, 'orderNumber');
  const vendor = context.vendorName(reader.text(row, 'vendor'));
  if (description === '' && partNumber === '') {
    notes.block('description', 'The row has neither a description nor a part number.', 'the name of the part');
  }
  if (orderNumber === '') notes.block('orderNumber', 'The row has no order number.', 'the number of the order');

  const quantity = quantityOf(context, row, notes);
  const currency = context.money.currency(row);
  const price = amountOf(context, row, 'unitPrice', notes, true);
  const total = amountOf(context, row, 'lineTotal', notes, true);
  const priced = priceOf(price, quantity.milli, currency, notes);
  let lineTotalMinor = total?.minor ?? priced.lineMinor;
  const disagrees =
    total !== undefined && priced.lineMinor !== undefined && Math.abs(total.minor - priced.lineMinor) > 1;
  if (disagrees && answer === null) {
    notes.block(
      'lineTotal',
      `Quantity times price is ${priced.lineMinor} and the line total is ${total.minor} (minor units of ${currency}).`,
      'an answer to which of the two holds, or both alike',
    );
  } else if (disagrees && answer === 'quantity-times-price') {
    lineTotalMinor = priced.lineMinor;
  }
  if (price === undefined && total === undefined && notes.findings.every((finding) => finding.severity !== 'error')) {
    notes.add('attention', 'unitPrice', 'The line has no price.');
  }
  if (price?.guess === true) notes.add('attention', 'unitPrice', 'The price of an ordered line is marked as a guess.');

  const shippedMilli = sideQuantity(context, row, 'shippedQuantity', quantity.unit, notes);
  const backorderedMilli = sideQuantity(context, row, 'backorderedQuantity', quantity.unit, notes);
  if (quantity.milli !== null && (shippedMilli ?? 0) + (backorderedMilli ?? 0) > quantity.milli) {
    notes.add('attention', 'shippedQuantity', 'More is shipped and back-ordered than was ordered.');
  }
  const orderedOn = dateOf(context, row, 'orderedOn', notes);
  const promisedOn = dateOf(context, row, 'promisedOn', notes);
  const arrivedOn = dateOf(context, row, 'arrivedOn', notes);
  const words = context.states.words(row);
  const said = stateOfRow(words, true, arrivedOn !== undefined);
  for (const word of words) {
    if (word.state === 'unknown') notes.setAside(word.field, `“${word.text}” is not a state that we know.`);
    else if (word.more) notes.keep(word.field);
  }
  const line: ImportedOrderLine = {
    row: row.row,
    orderNumber,
    vendor,
    description: description === '' ? partNumber : description,
    quantityMilli: quantity.milli,
    unit: quantity.unit,
    currency,
    state: lineState(said.state, quantity.milli, shippedMilli, backorderedMilli),
    stateText: said.stateText,
    paid: paidOf(context, row, notes),
    ...present({
      orderedOn,
      orderLine: reader.text(row, 'orderLine'),
      partNumber,
      unitPriceMinor: priced.unitPriceMinor,
      unitPriceE4: priced.unitPriceE4,
      lineTotalMinor,
      shippedMilli,
      backorderedMilli,
      promisedOn,
      arrivedOn,
      tracking: reader.text(row, 'tracking'),
    }),
    note: notes.note(),
    facts: notes.facts(),
  };
  return { line, disagrees };
}

/** A plain "ordered" is made more exact by the quantities beside it. */
function lineState(said: ImportState, ordered: number | null, shipped = 0, backordered = 0): ImportState {
  if (cameIn(said) || !['ordered', 'acknowledged', 'needed'].includes(said)) return said;
  if (ordered !== null && shipped >= ordered) return 'in-transit';
  if (shipped > 0) return 'partly-received';
  return backordered > 0 ? 'back-ordered' : said;
}
