/**
 * Quantities: integer thousandths of a unit (names end in `Milli`), so 8 pieces are 8000 and 2.5 L is 2500. Nobody
 * fits half a rod: units that are counted take whole numbers only. Units are never converted into one another.
 */
import { Refusal } from '../refusal.ts';

type Family = 'count' | 'length' | 'area' | 'volume' | 'mass';

interface UnitFacts {
  readonly family: Family;
  /** What stands behind one, and behind any other number. */
  readonly one: string;
  readonly many: string;
}

const facts = {
  each: { family: 'count', one: '', many: '' },
  set: { family: 'count', one: 'set', many: 'sets' },
  pair: { family: 'count', one: 'pair', many: 'pairs' },
  kit: { family: 'count', one: 'kit', many: 'kits' },
  box: { family: 'count', one: 'box', many: 'boxes' },
  can: { family: 'count', one: 'can', many: 'cans' },
  tube: { family: 'count', one: 'tube', many: 'tubes' },
  roll: { family: 'count', one: 'roll', many: 'rolls' },
  sheet: { family: 'count', one: 'sheet', many: 'sheets' },
  mm: { family: 'length', one: 'mm', many: 'mm' },
  cm: { family: 'length', one: 'cm', many: 'cm' },
  m: { family: 'length', one: 'm', many: 'm' },
  in: { family: 'length', one: 'in', many: 'in' },
  ft: { family: 'length', one: 'ft', many: 'ft' },
  m2: { family: 'area', one: 'm²', many: 'm²' },
  ft2: { family: 'area', one: 'ft²', many: 'ft²' },
  mL: { family: 'volume', one: 'mL', many: 'mL' },
  L: { family: 'volume', one: 'L', many: 'L' },
  'fl oz': { family: 'volume', one: 'fl oz', many: 'fl oz' },
  qt: { family: 'volume', one: 'qt', many: 'qt' },
  gal: { family: 'volume', one: 'gal', many: 'gal' },
  g: { family: 'mass', one: 'g', many: 'g' },
  kg: { family: 'mass', one: 'kg', many: 'kg' },
  oz: { family: 'mass', one: 'oz', many: 'oz' },
  lb: { family: 'mass', one: 'lb', many: 'lb' },
} as const satisfies Record<string, UnitFacts>;

export type Unit = keyof typeof facts;

/** Every unit the workbook accepts, counted ones first. */
export const units = Object.keys(facts) as readonly Unit[];

/** The largest quantity a line may carry: a million units, in thousandths. */
export const maximumQuantityMilli = 1_000_000_000;

/** Whether `text` names a unit. Capitals matter: L is litre. */
export function isUnit(text: string): text is Unit {
  return Object.hasOwn(facts, text);
}

/** What a unit measures; only quantities of one family can be added up for people to read. */
export function unitFamily(unit: Unit): Family {
  return facts[unit].family;
}

/** Whether a unit is counted in whole numbers. */
export function isCountable(unit: Unit): boolean {
  return facts[unit].family === 'count';
}

export interface QuantityOptions {
  /** Name of the field, for the refusal. */
  readonly field?: string;
  /** Whether 0 is accepted. */
  readonly zero?: boolean;
}

/**
 * Reads a quantity: "8", "2.5" or "2,5" give 8000, 2500 and 2500. A comma with exactly three digits behind it could
 * group thousands, so it is refused rather than guessed.
 * @returns thousandths, above 0 (or from 0 with `zero`) and at most a million units.
 * @throws Refusal `bad-input` naming the field and what it accepts.
 */
export function parseQuantity(text: string, unit: Unit, options: QuantityOptions = {}): number {
  const field = options.field ?? 'quantity';
  const match = /^(\d{1,12})(?:([.,])(\d{1,3}))?$/.exec(text.trim());
  if (match === null || (match[2] === ',' && match[3]?.length === 3)) {
    throw refused(field, unit, options, `The ${field} “${text}” can't be read as a number.`);
  }
  const milli = Number(match[1]) * 1000 + Number((match[3] ?? '').padEnd(3, '0'));
  return requireQuantity(milli, unit, options);
}

/**
 * Checks a quantity already in thousandths against the same bounds as `parseQuantity`, and hands it back.
 * @throws Refusal `bad-input` naming the field and what it accepts.
 */
export function requireQuantity(milli: number, unit: Unit, options: QuantityOptions = {}): number {
  const field = options.field ?? 'quantity';
  if (!Number.isSafeInteger(milli) || milli < 0 || (milli === 0 && options.zero !== true)) {
    throw refused(field, unit, options, `The ${field} must be ${options.zero === true ? '0 or more' : 'above 0'}.`);
  }
  if (milli > maximumQuantityMilli) throw refused(field, unit, options, `The ${field} is above a million.`);
  if (isCountable(unit) && milli % 1000 !== 0) {
    throw refused(field, unit, options, `The ${field} must be a whole number, because “${unit}” is counted.`);
  }
  return milli;
}

function refused(field: string, unit: Unit, options: QuantityOptions, reason: string): Refusal {
  const from = options.zero === true ? 'from 0' : 'above 0';
  const accepted = isCountable(unit)
    ? `a whole number ${from} and at most 1000000, such as 8`
    : `a number ${from} and at most 1000000 with up to three decimals, such as 2.5`;
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}

/** Thousandths as plain decimal text without trailing zeros: 2500 is "2.5". */
export function plainQuantity(milli: number): string {
  const size = Math.abs(milli);
  const fraction = (size % 1000).toString().padStart(3, '0').replace(/0+$/, '');
  const whole = `${milli < 0 ? '-' : ''}${Math.trunc(size / 1000)}`;
  return fraction === '' ? whole : `${whole}.${fraction}`;
}

/** One formatter a locale: making one costs a thousand times its use. */
const formats = new Map<string, Intl.NumberFormat>();

/** A quantity as people read it: "8", "1 set", "2.5 L". Pieces (`each`) stand without a unit. */
export function formatQuantity(milli: number, unit: Unit, locale = 'en'): string {
  let format = formats.get(locale);
  if (format === undefined) {
    format = new Intl.NumberFormat(locale, { maximumFractionDigits: 3 });
    formats.set(locale, format);
  }
  const number = format.format(milli / 1000);
  const label = Math.abs(milli) === 1000 ? facts[unit].one : facts[unit].many;
  return label === '' ? number : `${number} ${label}`;
}
