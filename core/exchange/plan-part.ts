/** One row of a parts list to one part. */
import { plainAmount, roundHalfAway } from '../money/currency.ts';
import type { ImportedPart } from './import-types.ts';
import { cameIn, sitsOnEngine, stateOfRow } from './plan-states.ts';
import type { RowNotes } from './row-notes.ts';
import { amountOf, dateOf, type PlanContext, paidOf, present, priceOf, quantityOf } from './row-values.ts';
import type { TableRow } from './table-types.ts';

/** Reads one row; what can't be used is remarked on in `notes` and kept in the part's note. */
export function planPart(context: PlanContext, row: TableRow, notes: RowNotes): ImportedPart {
  const { reader } = context;
  const partNumber = reader.text(row, 'partNumber');
  const description = reader.text(row, 'description');
  if (description === '' && partNumber === '') {
    notes.block('description', 'The row has neither a description nor a part number.', 'the name of the part');
  } else if (description === '') {
    notes.add('note', 'description', 'No description is given; the part number stands for it.');
  }
  const quantity = quantityOf(context, row, notes);
  const currency = context.money.currency(row);
  const price = amountOf(context, row, 'unitPrice', notes, false);
  const total = amountOf(context, row, 'lineTotal', notes, false);
  const priced = priceOf(price ?? shareOf(total, quantity.milli, currency), quantity.milli, currency, notes);
  const estimateLineMinor = price === undefined ? (total?.minor ?? priced.lineMinor) : priced.lineMinor;
  if (price !== undefined && total !== undefined && priced.lineMinor !== undefined) {
    if (Math.abs(priced.lineMinor - total.minor) > 1) {
      notes.add('attention', 'lineTotal', 'Quantity times price is not the line total; the price was taken.');
    }
  }

  const orderedOn = dateOf(context, row, 'orderedOn', notes);
  const promisedOn = dateOf(context, row, 'promisedOn', notes);
  const arrivedOn = dateOf(context, row, 'arrivedOn', notes);
  if (orderedOn !== undefined && arrivedOn !== undefined && arrivedOn < orderedOn) {
    notes.add('attention', 'arrivedOn', `It arrived on ${arrivedOn}, before it was ordered on ${orderedOn}.`);
  }

  const words = context.states.words(row);
  const standing = stateOfRow(words, orderedOn !== undefined, arrivedOn !== undefined);
  for (const word of words) {
    if (word.state === 'unknown') notes.setAside(word.field, `“${word.text}” is not a state that we know.`);
    else if (word.more) notes.keep(word.field);
  }
  if (arrivedOn !== undefined && !cameIn(standing.state) && standing.state !== 'partly-received') {
    notes.add('attention', 'arrivedOn', `The part has an arrival date, but is said to be “${standing.stateText}”.`);
  }
  const came = quantity.milli !== null && (cameIn(standing.state) || (standing.state === 'unknown' && arrivedOn));
  const deposit = amountOf(context, row, 'coreDeposit', notes, false);

  return {
    row: row.row,
    description: description === '' ? partNumber : description,
    quantityMilli: quantity.milli,
    unit: quantity.unit,
    priceIsGuess: price?.guess ?? total?.guess ?? false,
    currency,
    state: standing.state,
    stateText: standing.stateText,
    borrowed: standing.borrowed,
    paid: paidOf(context, row, notes),
    ...present({
      partNumber,
      maker: reader.text(row, 'maker'),
      link: reader.text(row, 'link'),
      system: context.systemName(reader.text(row, 'system') || context.sectionOf(row)),
      phase: reader.text(row, 'phase'),
      job: reader.text(row, 'job'),
      vendor: context.vendorName(reader.text(row, 'vendor')),
      priority: reader.text(row, 'priority'),
      unitPriceMinor: priced.unitPriceMinor,
      unitPriceE4: priced.unitPriceE4,
      estimateLineMinor,
      orderedOn,
      promisedOn,
      arrivedOn,
      orderNumber: reader.text(row, 'orderNumber'),
      arrivedMilli: came ? (quantity.milli ?? undefined) : undefined,
      fittedMilli: sitsOnEngine(standing.state) ? (quantity.milli ?? undefined) : undefined,
      owner: standing.borrowed ? ownerIn([...words.map((word) => word.text), reader.text(row, 'note')]) : undefined,
      bin: reader.text(row, 'bin') || standing.bin,
      coreDepositMinor: deposit?.minor,
    }),
    note: notes.note(),
    facts: notes.facts(),
  };

  /** The price of one, when only the line's total is given. */
  function shareOf(whole: typeof total, milli: number | null, code: string): typeof total {
    if (whole === undefined || milli === null || milli <= 0 || whole.plain === '') return undefined;
    const minor = Number(roundHalfAway(BigInt(whole.minor) * 1000n, BigInt(milli)));
    const exact = minor * milli === whole.minor * 1000;
    if (!exact)
      notes.add('note', 'lineTotal', `The total of the line was kept; the price of one is rounded (${code}).`);
    return { minor, plain: plainAmount(minor, code), guess: whole.guess };
  }
}

/** "from the farm truck, for trial fit only" names the farm truck as the owner. */
function ownerIn(texts: readonly string[]): string | undefined {
  for (const text of texts) {
    const match = /\b(?:from|off|belongs to|owner:?|von|vom)\s+([^,;.()]{2,60})/i.exec(text);
    if (match?.[1] !== undefined) return match[1].trim();
  }
  return undefined;
}
