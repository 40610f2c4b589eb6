import type { z } from 'zod';
import type { quickAddReading } from '../contract/parts.ts';
import { plainAmount } from '../money/currency.ts';
import { unitPriceFromMinor } from '../money/line-value.ts';
import { parseMoneyText } from '../money/money-text.ts';
import { isUnit, parseQuantity } from '../units/quantity.ts';
import { type Connection, readSettings } from '../workbook/store/connection.ts';
import { quantityWords } from '../workbook/store/entry-text.ts';
import { foldText } from '../workbook/store/folded-text.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { partDefaults } from './part-writing.ts';

type Reading = z.infer<typeof quickAddReading>;

const unitWords: Record<string, string> = {
  pc: 'each',
  pcs: 'each',
  pieces: 'each',
  off: 'each',
  x: 'each',
  metre: 'm',
  metres: 'm',
  litre: 'L',
  litres: 'L',
  l: 'L',
  sets: 'set',
  pairs: 'pair',
};

const lead = /^\s*(\d+(?:[.,]\d+)?)\s*(?:(x|×)\s+|([A-Za-z]+)\s+)?(.*)$/u;
const partNumber = /^(?=.*\d)[A-Z0-9][A-Z0-9./-]{2,}$/;
const priced = /^(?:at\s+|~\s*)?(.*?)(?:\s*(?:each|ea\.?|per \w+))?$/i;

/**
 * Reads one typed line, such as `8 head studs M12x1.75, 4.50 each, Keld Fasteners, block`: quantity and description
 * first, then in any order a price, a vendor, system, phase, job or bin by the beginning of its name, a part number.
 * What fits nothing is kept in the note, and said.
 */
export function readQuickAdd(connection: Connection, build: number, text: string): Reading {
  const { currency } = readSettings(connection);
  const understood: Reading['understood'] = [];
  const findings: string[] = [];
  const [head = '', ...pieces] = text.split(/[,;](?=\s|$)/).map((piece) => piece.trim());
  const values: Reading['values'] = { ...partDefaults, description: '', needMilli: 1000 };
  const [, number, times, word, rest] = lead.exec(head) ?? [];
  values.description = head;
  if (number !== undefined && rest !== undefined && rest !== '') {
    const named = word === undefined ? 'each' : (unitWords[word.toLowerCase()] ?? (isUnit(word) ? word : undefined));
    const unit = times === undefined ? named : 'each';
    try {
      const milli = parseQuantity(number, isUnit(unit ?? 'each') ? ((unit ?? 'each') as 'each') : 'each');
      values.needMilli = milli;
      values.unit = unit ?? 'each';
      values.description = (unit === undefined ? `${word} ${rest}` : rest).trim();
      const taken = unit === undefined ? number : head.slice(0, head.length - rest.length).trim();
      understood.push({ text: taken, as: `quantity: ${quantityWords(milli, values.unit)}` });
    } catch (error) {
      findings.push(error instanceof Error ? error.message : String(error));
    }
  }
  understood.push({ text: values.description, as: 'description' });

  const lists = [
    { field: 'vendor', table: 'vendors', column: 'name' },
    { field: 'system', table: 'systems', column: 'name' },
    { field: 'phase', table: 'phases', column: 'name' },
    { field: 'job', table: 'jobs', column: 'title' },
  ] as const;
  for (const piece of pieces.filter((each) => each !== '')) {
    const folded = foldText(piece);
    const money = parseMoneyText(priced.exec(piece)?.[1] ?? piece, currency);
    const found = lists.flatMap(({ field, table, column }) =>
      values[field] !== null
        ? []
        : listRecords(connection, table, 'retired_on IS NULL AND (build IS NULL OR build = ?)', build)
            .map((record) => ({ field, id: record.id, name: String(record[column]) }))
            .filter(({ name }) => foldText(name).startsWith(folded)),
    );
    const exact = found.filter(({ name }) => foldText(name) === folded);
    const pick = exact.length === 1 ? exact[0] : found.length === 1 ? found[0] : undefined;
    if (values.estimateEachE4 === null && money.kind === 'amount' && /\d/.test(piece)) {
      values.estimateEachE4 = unitPriceFromMinor(money.minor);
      understood.push({ text: piece, as: `price each: ${plainAmount(money.minor, currency)} ${currency}` });
    } else if (pick !== undefined) {
      values[pick.field] = pick.id;
      understood.push({ text: piece, as: `${pick.field}: ${pick.name}` });
    } else if (values.partNumber === '' && partNumber.test(piece)) {
      values.partNumber = piece;
      understood.push({ text: piece, as: 'part number' });
    } else {
      values.note = values.note === '' ? piece : `${values.note}, ${piece}`;
      understood.push({ text: piece, as: 'note' });
      if (found.length > 1)
        findings.push(
          `“${piece}” could be ${found
            .map(({ name }) => name)
            .slice(0, 5)
            .join(' or ')}; kept in the note.`,
        );
    }
  }
  if (values.description === '') findings.push('There is no description yet.');
  return { values, understood, findings };
}
