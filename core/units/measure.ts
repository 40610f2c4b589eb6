/**
 * A measure: a value with its unit, as somebody typed it. Calculators work in SI inside; these functions are the only
 * way in and out.
 */
import { Refusal } from '../refusal.ts';
import { type Dimension, dimensions, type UnitFacts } from './dimensions.ts';
import { inSymbols } from './spelt-out.ts';

export interface Measure {
  readonly value: number;
  readonly unit: string;
}

/** The symbols of the units of a dimension, in the order in which they are offered. */
export function unitsOf(dimension: Dimension): readonly string[] {
  return Object.keys(dimensions[dimension].units);
}

/** Separators and brackets say nothing about a unit: `ft-lb`, `ft lb` and `ft·lb` are one. */
const squeezed = (text: string): string =>
  text
    .replace(/[·⋅×*\s().^-]/g, '')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[°º]/g, 'deg')
    .replace(/[µμ]/g, 'u')
    .replace(/[Ωω]/g, 'ohm')
    .replace(/[″“”]/g, '"')
    .replace(/[′’]/g, "'");

interface Spelling {
  readonly symbol: string;
  readonly exactCase: boolean;
}

/** Every spelling of the units of a dimension, made once each. */
const spellings = new Map<Dimension, ReadonlyMap<string, Spelling>>();

function spellingsOf(dimension: Dimension): ReadonlyMap<string, Spelling> {
  let map = spellings.get(dimension) as Map<string, Spelling> | undefined;
  if (map === undefined) {
    map = new Map();
    for (const [symbol, { also = [], label = symbol, exactCase = false }] of Object.entries(
      dimensions[dimension].units,
    )) {
      for (const text of [symbol, label, ...also].filter((one) => one !== '')) {
        const key = squeezed(text);
        map.set(key, { symbol, exactCase });
        if (!exactCase && !map.has(key.toLowerCase())) map.set(key.toLowerCase(), { symbol, exactCase });
      }
    }
    spellings.set(dimension, map);
  }
  return map;
}

/** What stands behind a unit of pressure: `psig`, `bar gauge`, `bar-g`, `kPa abs`, `psi boost`. */
const pressureWord = /^(.*?)[\s(-]*(gauge|gage|boost|absolute|abs|differential|diff|g|a|d)\)?\.?$/i;

const saidAs = {
  absolute: 'an absolute pressure',
  gauge: 'a gauge pressure',
  difference: 'a pressure difference',
} as const;

function saidOf(word: string): keyof typeof saidAs {
  const [initial] = word.toLowerCase();
  return initial === 'a' ? 'absolute' : initial === 'd' ? 'difference' : 'gauge';
}

/**
 * The symbol of the unit that `text` names, such as `lbf*ft` for "ft lb".
 * @param field name of the field, for the refusal.
 * @throws Refusal `bad-input` listing the units accepted, or saying that an absolute pressure is asked for and a gauge
 * pressure was given.
 */
export function unitNamed(text: string, dimension: Dimension, field = 'unit'): string {
  const found = findUnit(text, dimension);
  if (found !== undefined) return found;
  const { name, pressure } = dimensions[dimension];
  const worded = pressureWord.exec(text.trim());
  const base = worded === null ? undefined : findUnit(worded[1] ?? '', dimension);
  if (worded !== null && base !== undefined && base !== '-' && pressure !== undefined) {
    const said = saidOf(worded[2] ?? '');
    if (pressure === said || (pressure === 'either' && said !== 'difference')) return base;
    throw new Refusal(
      'bad-input',
      `The ${field} is ${name}, and “${text.trim()}” is ${saidAs[said]}. Nothing was changed.`,
      { field, accepted: `${name} in ${unitsOf(dimension).join(', ')}` },
    );
  }
  const list = unitsOf(dimension).filter((unit) => unit !== '-');
  const accepted = list.length === 0 ? 'a number without a unit' : `a unit of ${list.join(', ')}`;
  const problem =
    text.trim() === '' ? `The ${field} needs a unit.` : `The ${field} can't be in “${text.trim()}”: it is ${name}.`;
  throw new Refusal('bad-input', `${problem} Nothing was changed.`, { field, accepted });
}

function findUnit(text: string, dimension: Dimension): string | undefined {
  const { units, bare } = dimensions[dimension];
  const plain = text.trim();
  if (Object.hasOwn(units, plain)) return plain;
  if (plain === '' || plain === '-') return bare;
  return findSpelling(plain, dimension) ?? findSpelling(inSymbols(plain), dimension);
}

function findSpelling(text: string, dimension: Dimension): string | undefined {
  const key = squeezed(text);
  const exact = spellingsOf(dimension).get(key);
  if (exact !== undefined) return exact.symbol;
  const loose = spellingsOf(dimension).get(key.toLowerCase());
  return loose === undefined || loose.exactCase ? undefined : loose.symbol;
}

function factsOf(unit: string, dimension: Dimension): UnitFacts {
  const found = dimensions[dimension].units[unitNamed(unit, dimension)];
  if (found === undefined) throw new Error(`No unit ${unit} of ${dimension}.`);
  return found;
}

/**
 * A value in SI: `toSI(1, 'lbf*ft', 'torque')` is 1.3558… N·m.
 * @throws Refusal `bad-input` when the unit isn't one of the dimension's.
 */
export function toSI(value: number, unit: string, dimension: Dimension): number {
  const { factor, shift = 0 } = factsOf(unit, dimension);
  return (value + shift) * factor;
}

/**
 * An SI value in a unit: the inverse of `toSI`.
 * @throws Refusal `bad-input` when the unit isn't one of the dimension's.
 */
export function fromSI(value: number, unit: string, dimension: Dimension): number {
  const { factor, shift = 0 } = factsOf(unit, dimension);
  return value / factor - shift;
}

/** A unit as people read it: `N·m` for `N*m`, nothing for a pure number. */
export function unitLabel(unit: string, dimension: Dimension): string {
  return factsOf(unit, dimension).label ?? unit;
}

/** One formatter a locale and number of digits: making one costs a thousand times its use. */
const formats = new Map<string, Intl.NumberFormat>();

/** From here on a number is written with a power of ten: nobody counts noughts. */
const tooLong = 1e15;
const tooSmall = 1e-12;
const shortly = (value: number, digits: number): string => value.toExponential(digits - 1).replace(/\.?0*e\+?/, 'e');

/** A value as people read it, rounded to at most `digits` significant digits: "88.128 N·m". Copies carry all digits. */
export function formatMeasure({ value, unit }: Measure, dimension: Dimension, digits = 5, locale = 'en'): string {
  const key = `${locale} ${digits}`;
  let format = formats.get(key);
  if (format === undefined) {
    format = new Intl.NumberFormat(locale, { maximumSignificantDigits: digits });
    formats.set(key, format);
  }
  const label = unitLabel(unit, dimension);
  const glue = label === '' || label === '°' ? '' : ' ';
  const size = Math.abs(value);
  const text = size >= tooLong || (size > 0 && size < tooSmall) ? shortly(value, digits) : format.format(value);
  return `${text}${glue}${label}`;
}
