/** Several lines at once, with what is on the list and on the shelf: what to order, and where to cut it from. */
import { Refusal } from '../refusal.ts';
import { addUp } from './bill.ts';
import { type CutListOptions, cutListOf, type HosePlan, type HoseStock } from './cut-list.ts';
import { type Data, type Fields, fieldsOf, isData, refuseField } from './fields.ts';
import { describeHose, splitHoseText } from './hose.ts';
import { type Held, type LineNeed, needsOf } from './needs.ts';
import { readLine } from './read-line.ts';
import { type TakeOff, takeOff } from './take-off.ts';

export interface TakeOffSet {
  readonly lines: readonly TakeOff[];
  readonly needs: readonly LineNeed[];
  readonly cutList: readonly HosePlan[];
}

const count = { dimension: 'number', unit: '-', above: 0, atMost: 100_000 } as const;
const whole = { ...count, whole: true, atMost: 1000 } as const;
const mm = { dimension: 'length', unit: 'mm', above: 0, atMost: 1_000_000 } as const;

const required = (value: string | undefined, fields: Fields, name: string): string =>
  value ??
  refuseField(fields.said(name), `The ${fields.said(name)} is missing.`, 'the text of the thing, as on a bill');

function readHeld(list: readonly Fields[] | undefined, where: 'onListMilli' | 'inStockMilli'): readonly Held[] {
  return (list ?? []).map((one) => {
    const item = required(one.text(['item', 'text']), one, 'item');
    const milli = Math.round((one.number('quantity', count) ?? 1) * 1000);
    one.done();
    return { item, onListMilli: 0, inStockMilli: 0, [where]: milli };
  });
}

function readStock(list: readonly Fields[] | undefined): readonly HoseStock[] {
  return (list ?? []).map((one, at) => {
    const typed = required(one.text(['hose_type', 'hose']), one, 'hose_type');
    const split = splitHoseText(typed);
    const dash = one.number('dash', whole) ?? split.dash;
    const boreMm = one.number(['bore_mm', 'bore'], mm);
    const length = one.number(['length_mm', 'length'], mm);
    const read = {
      id: one.text(['id', 'name']) ?? `length ${at + 1}`,
      hose: describeHose({ type: split.type, dash, boreMm }).label,
      // A rest is never longer than measured.
      lengthMm: Math.floor(
        length ?? refuseField(one.said('length_mm'), 'The length at hand is missing.', 'a number above 0 in mm'),
      ),
      count: one.number(['count', 'quantity'], whole) ?? 1,
    };
    if (read.lengthMm === 0) refuseField(one.said('length_mm'), 'The length at hand is under 1 mm.', 'at least 1 mm');
    one.done();
    return read;
  });
}

function readOptions(fields: Fields): CutListOptions {
  const lengthsMm = fields.numbers('sold_lengths_mm', { ...mm, whole: true });
  const kerfMm = fields.number('kerf_mm', { dimension: 'length', unit: 'mm', atLeast: 0, atMost: 20, whole: true });
  const keepFromMm = fields.number('keep_from_mm', { dimension: 'length', unit: 'mm', atLeast: 0, atMost: 100_000 });
  if (lengthsMm?.length === 0)
    refuseField('sold_lengths_mm', 'The lengths sold are an empty list.', 'at least one length');
  return {
    ...(lengthsMm === undefined ? {} : { supply: { kind: 'lengths', lengthsMm } }),
    ...(kerfMm === undefined ? {} : { kerfMm }),
    ...(keepFromMm === undefined ? {} : { keepFromMm }),
  };
}

const setNames = ['in_stock', 'on_list', 'hose_stock', 'sold_lengths_mm', 'kerf_mm', 'keep_from_mm'] as const;

/** Adds up the take-offs of several lines. Hose is bought as the cut list says, not as a sum of lengths. */
export function takeOffSet(
  lines: readonly TakeOff[],
  held: readonly Held[] = [],
  stock: readonly HoseStock[] = [],
  options: CutListOptions = {},
): TakeOffSet {
  const cuts = lines.map(({ line, hose, lengths }, at) => ({
    hose: hose.label,
    line: line.id ?? line.name ?? `line ${at + 1}`,
    cutMm: lengths.cutMm,
    count: line.quantity,
  }));
  const cutList = cutListOf(cuts, stock, options);
  const bill = addUp(lines.flatMap((one) => one.bill));
  const labels = new Map(
    lines.map(({ hose, bill: items }) => [items.find(({ kind }) => kind === 'hose')?.key, hose.label]),
  );
  const bought = new Map<string, number>();
  for (const [key, label] of labels) {
    const plan = cutList.find(({ hose }) => hose === label);
    // Without stock or fixed lengths the cut list buys the sum of the lengths, and hose on the shelf counts by the metre.
    if (key !== undefined && plan !== undefined && (stock.length > 0 || options.supply !== undefined)) {
      bought.set(key, plan.boughtMm);
    }
  }
  return { lines, needs: needsOf(bill, held, bought), cutList };
}

/**
 * A take-off from data: one line, or `{"lines": [...]}`; beside them `in_stock`, `on_list`, `hose_stock` and how hose is
 * sold and cut.
 * @throws Refusal `bad-input` naming the field.
 */
export function readTakeOffSet(data: Data): TakeOffSet {
  const beside: Record<string, unknown> = {};
  const rest: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(data)) {
    ((setNames as readonly string[]).includes(name) ? beside : rest)[name] = value;
  }
  const fields = fieldsOf(beside);
  const held = [
    ...readHeld(fields.records('in_stock'), 'inStockMilli'),
    ...readHeld(fields.records('on_list'), 'onListMilli'),
  ];
  const stock = readStock(fields.records('hose_stock'));
  const options = readOptions(fields);
  fields.done();
  const several = Object.hasOwn(rest, 'lines');
  const lines = readLines(rest).map((one, at) => named(several ? `lines[${at}].` : '', () => takeOff(readLine(one))));
  const total = lines.reduce((sum, { line }) => sum + line.quantity, 0);
  if (total > 1000) refuseField('quantity', `${total} hoses are more than one cut list holds.`, 'at most 1000 in all');
  return takeOffSet(lines, held, stock, options);
}

/** Puts the line's place before the field of a refusal that doesn't name it. */
function named<Result>(place: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof Refusal) || error.field === undefined || error.field.startsWith(place)) throw error;
    const { code, message, field, accepted, detail } = error;
    throw new Refusal(code, message, {
      field: `${place}${field}`,
      ...(accepted === undefined ? {} : { accepted }),
      detail,
    });
  }
}

function readLines(data: Data): readonly Fields[] {
  if (!Object.hasOwn(data, 'lines')) return [fieldsOf(data)];
  const { lines, ...other } = data;
  const [extra] = Object.keys(other);
  if (extra !== undefined) {
    refuseField(extra, `There is no field “${extra}” beside lines.`, `lines, ${setNames.join(', ')}`);
  }
  if (!Array.isArray(lines) || lines.length === 0 || lines.length > 200) {
    refuseField('lines', 'The lines must be a list of 1 to 200 objects.', 'a list of lines');
  }
  return lines.map((one: unknown, at) => {
    if (!isData(one)) refuseField(`lines[${at}]`, `lines[${at}] must be an object.`, 'an object in braces');
    return fieldsOf(one, `lines[${at}].`);
  });
}
