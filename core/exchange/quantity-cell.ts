/** Quantities as builders write them: "14", "x14", "2 off", "1pcs", "5 L", "4,5 m", "pair". */
import { Refusal } from '../refusal.ts';
import { parseQuantity, requireQuantity, type Unit } from '../units/quantity.ts';
import { plainWords } from './clean-text.ts';

export type QuantityReading =
  | { readonly kind: 'blank' }
  | { readonly kind: 'quantity'; readonly milli: number; readonly unit: Unit | null }
  | { readonly kind: 'error'; readonly message: string; readonly accepted: string };

const unitWords = new Map<string, Unit>();
for (const [unit, list] of [
  ['each', 'each ea off pc pcs pce piece pieces no nos x stk stuck stueck st pz pza uds ud piece(s)'],
  ['set', 'set sets satz satze jeu juego'],
  ['pair', 'pair pairs pr prs paar paare paire par'],
  ['kit', 'kit kits'],
  ['box', 'box boxes packet packets pack packs pkt pkg packung schachtel'],
  ['can', 'can cans dose dosen tin tins'],
  ['tube', 'tube tubes tuben'],
  ['roll', 'roll rolls rolle rollen'],
  ['sheet', 'sheet sheets blatt tafel'],
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['m', 'm metre metres meter meters lm lfm'],
  ['in', 'in inch inches "'],
  ['ft', "ft foot feet '"],
  ['m2', 'm2 m² qm'],
  ['ft2', 'ft2 ft² sqft'],
  ['mL', 'ml'],
  ['L', 'l ltr litre litres liter liters'],
  ['fl oz', 'floz'],
  ['qt', 'qt quart quarts'],
  ['gal', 'gal gallon gallons'],
  ['g', 'g gram grams gramm'],
  ['kg', 'kg kilo kilos'],
  ['oz', 'oz ounce ounces'],
  ['lb', 'lb lbs pound pounds'],
] as const) {
  for (const word of list.split(' ')) unitWords.set(word, unit);
}

/** The unit that a word stands for, or null. */
export function unitOfWord(word: string): Unit | null {
  return unitWords.get(plainWords(word).replace(/[\s.]+/g, '')) ?? null;
}

const accepted = 'a number above 0, alone or with a unit, such as 8, x8, 8 pcs, 2 pair or 2.5 L';

/**
 * Reads a quantity cell.
 * @param columnUnit unit of the row when a column of its own names it.
 * @param certain the text is a number cell: "1.500" is one and a half and not fifteen hundred.
 * @param zero whether 0 is accepted, as it is for what has been shipped.
 */
export function readQuantityCell(
  text: string,
  columnUnit: Unit | null,
  options: { readonly certain?: boolean; readonly zero?: boolean } = {},
): QuantityReading {
  const trimmed = text.replace(/[\s\u00a0\u202f]+/g, ' ').trim();
  if (trimmed === '') return { kind: 'blank' };
  const match =
    trimmed.length > 40 ? null : /^(?:x|×|qty\.?:?)?\s*(\d+(?:[.,]\d+)?)\s*(?:x|×)?\s*(\D*?)\.?$/iu.exec(trimmed);
  const alone = match === null ? unitOfWord(trimmed) : null;
  if (alone !== null && alone !== 'each') return { kind: 'quantity', milli: 1000, unit: alone };
  const word = match?.[2] ?? '';
  const wordUnit = word === '' ? null : unitOfWord(word);
  if (match === null || (word !== '' && wordUnit === null)) {
    return { kind: 'error', message: `The quantity “${trimmed.slice(0, 60)}” can't be read as a number.`, accepted };
  }
  const number = match[1] ?? '';
  if (options.certain !== true && /[.,]\d{3}$/.test(number)) {
    return {
      kind: 'error',
      message: `The quantity “${trimmed.slice(0, 60)}” can be read as thousands or as a fraction.`,
      accepted: `${accepted}; thousands without a mark`,
    };
  }
  const unit = wordUnit ?? columnUnit;
  const zero = options.zero === true;
  try {
    const milli =
      options.certain === true
        ? requireQuantity(milliOf(number), unit ?? 'each', { zero })
        : parseQuantity(number, unit ?? 'each', { zero });
    return { kind: 'quantity', milli, unit };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return {
      kind: 'error',
      message: error.message.replace(' Nothing was changed.', ''),
      accepted: error.accepted ?? accepted,
    };
  }
}

/** Spreadsheet numbers may carry more decimals than thousandths; those are refused as a fraction of a thousandth. */
function milliOf(number: string): number {
  const [whole = '0', decimals = ''] = number.split('.');
  const cut = decimals.replace(/0+$/, '');
  return cut.length > 3 ? Number.NaN : Number(whole) * 1000 + Number(cut.padEnd(3, '0'));
}
