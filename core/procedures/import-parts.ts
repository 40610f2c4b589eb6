import { addDays } from '../dates/calendar-date.ts';
import type { ImportedPart, ImportPlan, ImportState, PlannedRow } from '../exchange/import-types.ts';
import { formatMoney } from '../money/currency.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { importKeyOf } from '../workbook/store/imports.ts';
import { eachPrice, earlier, type ImportBatch, later } from './import-batch.ts';
import { type ImpliedLine, placeImpliedOrders } from './import-orders.ts';
import { placeUnits } from './import-places.ts';
import { fittingTexts, joined, remarksOf } from './import-texts.ts';
import { addPart } from './part-writing.ts';
import { createRecord } from './records.ts';

/** States that only an order explains. */
const orderedStates: readonly ImportState[] = [
  'ordered',
  'acknowledged',
  'back-ordered',
  'in-transit',
  'partly-received',
  'wrong-part',
  'sent-back',
];
/** States that say that there is no order, whatever date stands beside them. */
const neverOrdered: readonly ImportState[] = ['donor', 'already-owned', 'not-needed', 'quoted', 'decision-open'];

/** Days after which a borrowed part is taken to be due back where the list doesn't say. Ours, no published source. */
const loanDays = 30;

const priorities: Readonly<Record<string, number>> = { urgent: 1, high: 1, normal: 3, medium: 3, low: 5 };

/** Writes a parts list: a part line for each row, then orders, arrivals and places as the rows say. */
export function writeParts(batch: ImportBatch, plan: ImportPlan): void {
  const implied: ImpliedLine[] = [];
  for (const row of plan.rows) {
    const imported = row.part;
    if (row.fate !== 'part' || imported === undefined) continue;
    batch.atRow(row.row, () => {
      const part = addRow(batch, row, imported);
      batch.belongs(row.row, part);
      batch.writer.made.push(part);
      if (isOrdered(imported)) implied.push(impliedLine(batch, part, imported));
      if (imported.borrowed || !isOrdered(imported)) bringInWithoutOrder(batch, part, imported);
      writeWords(batch, part, imported);
    });
  }
  placeImpliedOrders(batch, implied);
  for (const { fate, part: imported, row } of plan.rows) {
    if (fate === 'part' && imported?.bin !== undefined) putInBin(batch, row, imported.bin, imported.arrivedOn);
  }
}

function isOrdered(part: ImportedPart): boolean {
  if (neverOrdered.includes(part.state)) return false;
  return part.orderedOn !== undefined || part.orderNumber !== undefined || orderedStates.includes(part.state);
}

/** The earliest day that the list gives for a part, or the day of the act. */
const firstDay = (batch: ImportBatch, part: ImportedPart): string =>
  [part.orderedOn, part.arrivedOn].reduce<string>(
    (day, other) => (other === undefined ? day : earlier(day, other)),
    batch.on,
  );

function addRow(batch: ImportBatch, row: PlannedRow, part: ImportedPart): number {
  const estimate = estimateOf(batch, part);
  const texts = fittingTexts({ ...part, facts: factsOf(part) });
  const id = addPart(batch.writer, batch.build, firstDay(batch, part), {
    ...texts,
    unit: part.unit,
    system: batch.named('system', part.system),
    phase: batch.named('phase', part.phase),
    job: batch.named('job', part.job),
    vendor: batch.named('vendor', part.vendor),
    priority: priorityOf(part.priority) ?? 3,
    attention: attentionOf(row, part),
    needMilli: part.state === 'not-needed' ? 0 : (part.quantityMilli ?? 0),
    ...(estimate === null ? {} : { estimateEachE4: estimate }),
    ...(row.key === undefined ? {} : { importKey: importKeyOf(row.key, row.content ?? '') }),
  });
  batch.say(row.row, `part line “${texts.description}”`);
  return id;
}

function estimateOf(batch: ImportBatch, part: ImportedPart): number | null {
  if (part.unitPriceE4 === undefined && part.estimateLineMinor === undefined) return null;
  const each = eachPrice(part.quantityMilli ?? 0, part.unitPriceE4, part.estimateLineMinor);
  return batch.inBase(each, part.currency, batch.on);
}

/** Remarks of the row that no field holds, beside those of the list's own columns. */
function factsOf(part: ImportedPart): ImportedPart['facts'] {
  const facts = [...part.facts];
  if (part.priority !== undefined && priorityOf(part.priority) === undefined) {
    facts.push({ key: 'Priority', value: part.priority });
  }
  if (part.coreDepositMinor !== undefined && !isOrdered(part)) {
    facts.push({ key: 'Core deposit', value: formatMoney(part.coreDepositMinor, part.currency) });
  }
  return facts;
}

function priorityOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const word = text.trim().toLowerCase();
  return /^[1-5]$/.test(word) ? Number(word) : priorities[word];
}

/** What the list left open and a person has to look at. */
function attentionOf(row: PlannedRow, part: ImportedPart): string {
  const open = remarksOf(row);
  if (part.state === 'partly-received') open.push(`The list says “${part.stateText}”: check what is still missing.`);
  if (part.state === 'needed' && part.orderedOn !== undefined) {
    open.push(`It has an order date, ${part.orderedOn}, so it counts as ordered; the list says “${part.stateText}”.`);
  }
  if (part.borrowed) {
    open.push(
      part.owner === undefined
        ? 'The list doesn’t say whose it is or when it goes back; the day is a guess.'
        : 'The list doesn’t say when it goes back; the day is a guess.',
    );
  }
  if (part.borrowed && isOrdered(part)) {
    open.push('The list has an order date and says that it is borrowed: taken as one on order and one on loan.');
  }
  if (isOrdered(part) && part.unitPriceE4 === undefined && part.estimateLineMinor === undefined) {
    open.push('Its price isn’t in the list; the order counts 0 for it until you correct the price.');
  }
  return joined(open);
}

function impliedLine(batch: ImportBatch, part: number, imported: ImportedPart): ImpliedLine {
  const orderedOn = imported.orderedOn ?? earlier(imported.arrivedOn ?? batch.on, batch.on);
  if (imported.orderedOn === undefined)
    batch.say(imported.row, `no order day in the list, so ${dayWords(orderedOn)} stands`);
  return { part, imported, orderedOn };
}

/** Units that are here without an order: owned, from a donor, borrowed. */
function bringInWithoutOrder(batch: ImportBatch, part: number, imported: ImportedPart): void {
  const own = imported.borrowed ? 'borrowed' : imported.state === 'donor' ? 'donor' : 'owned';
  const here = imported.borrowed
    ? (imported.fittedMilli ?? imported.arrivedMilli ?? imported.quantityMilli ?? 0)
    : (imported.arrivedMilli ?? 0);
  if (here <= 0) return;
  const on = imported.arrivedOn ?? batch.on;
  const owner = imported.owner ?? 'not named';
  const dueOn = addDays(later(on, batch.on), loanDays);
  const value =
    own === 'borrowed' || imported.estimateLineMinor === undefined
      ? undefined
      : batch.inBase(imported.estimateLineMinor, imported.currency, batch.on);
  const lot = batch.writer.make('lots', {
    part,
    build: batch.build,
    source: own,
    owner: own === 'borrowed' ? owner.slice(0, 80) : '',
    dueOn: own === 'borrowed' ? dueOn : null,
    bin: null,
    cameInOn: on,
  });
  batch.writer.post(
    {
      kind: 'came-in',
      on,
      build: batch.build,
      part,
      lot: lot.id,
      quantityMilli: here,
      ...(value === undefined ? {} : { amountMinor: value }),
      payload: { source: own, ...(own === 'borrowed' ? { owner: owner.slice(0, 80), dueOn } : {}) },
    },
    [lot.edit],
  );
  const worth = value === undefined ? '' : ` at ${formatMoney(value, batch.base)}, as money spent before`;
  batch.say(
    imported.row,
    own === 'borrowed'
      ? `on loan from ${owner}, taken to be due back ${dayWords(dueOn)}`
      : `in hand without an order${own === 'donor' ? ', from a donor' : ''}${worth}`,
  );
  placeUnits(batch, part, lot.id, here, imported, later(on, batch.on));
}

/** A quote and an open decision: they move nothing, and must not be forgotten. */
function writeWords(batch: ImportBatch, part: number, imported: ImportedPart): void {
  if (imported.state === 'quoted') {
    batch.writer.post({
      kind: 'quoted',
      on: imported.orderedOn ?? batch.on,
      build: batch.build,
      part,
      payload: imported.vendor === undefined ? {} : { by: imported.vendor },
    });
    batch.say(imported.row, 'quoted');
  }
  if (imported.state === 'decision-open') {
    const title = `Keep ${imported.description}?`.slice(0, 200);
    const note = imported.stateText === '' ? '' : `The list says “${imported.stateText}”.`;
    createRecord(batch.writer, 'decision', batch.build, batch.on, { title, note });
    batch.writer.made.pop();
    batch.say(imported.row, `a decision to make: “${title}”`);
  }
  if (imported.state === 'not-needed') batch.say(imported.row, `not needed, the list says “${imported.stateText}”`);
  if (imported.state === 'needed' && !isOrdered(imported)) batch.say(imported.row, 'needed');
}

function putInBin(batch: ImportBatch, row: number, name: string, arrivedOn: string | undefined): void {
  const { part } = batch.fateOf(row);
  const bin = batch.named('bin', name);
  if (part === null || bin === null) return;
  const edit = batch.writer.change('parts', part, { bin });
  if (edit === undefined) return;
  batch.writer.post(
    { kind: 'put-in-bin', on: arrivedOn ?? batch.on, build: batch.build, part, payload: { to: name } },
    [edit],
  );
  batch.say(row, `in ${name}`);
}
