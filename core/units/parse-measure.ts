/** Reads what people write for a measurement: `3/8"`, `10 thou`, `65 ft lb`, `1.2 bar gauge`, `25,4mm`, `1 1/2 in`. */
import { Refusal } from '../refusal.ts';
import { type Dimension, dimensions } from './dimensions.ts';
import { type Measure, unitNamed, unitsOf } from './measure.ts';

const decimal = String.raw`\d{1,15}(?:[.,]\d{1,15})?|[.,]\d{1,15}`;
const shape = new RegExp(
  String.raw`^([+-]?)(?:(?:(\d{1,6})(?:\s+|-))?(\d{1,6})\s*/\s*(\d{1,6})|(${decimal})(?:[eE]([+-]?\d{1,3}))?)\s*(.*)$`,
);

export interface ParseMeasureOptions {
  /** Name of the field, for the refusal. */
  readonly field?: string;
  /** The unit chosen beside the field, for a text that carries none itself. */
  readonly unit?: string;
}

/**
 * Reads a number, a fraction or a whole number with a fraction, and the unit behind it. A comma is a decimal mark; with
 * exactly three digits behind it, it could group thousands, so it is refused rather than guessed ("0,375" is clear).
 * @returns the value and the symbol of its unit, not converted.
 * @throws Refusal `bad-input` naming the field and listing the units accepted.
 */
export function parseMeasure(text: string, dimension: Dimension, options: ParseMeasureOptions = {}): Measure {
  const field = options.field ?? 'value';
  const plain = text
    .trim()
    .replace(/[−–]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/^([+-])\s+/, '$1')
    .replace(/(\d)\s*([½¼¾⅛⅜⅝⅞])/g, '$1 $2')
    .replace(/[½¼¾⅛⅜⅝⅞]/g, spelt);
  const match = shape.exec(plain);
  if (match === null) throw unreadable(text, dimension, field);
  const [, sign = '', whole, top, bottom, number, exponent, rest = ''] = match;
  const digitsLeft = /^[\s.,'_]*\d(?!\s*\/)/.exec(rest);
  if (digitsLeft !== null) throw unreadable(text, dimension, field);
  if (number !== undefined && mayGroup.test(number)) {
    throw unreadable(text, dimension, field, `may be ${number.replace(',', '.')} or ${number.replace(',', '')}`);
  }
  const value = number === undefined ? fraction(whole, top, bottom) : written(number, exponent);
  if (value === undefined || !Number.isFinite(value)) throw unreadable(text, dimension, field);
  const named = rest.trim() === '' ? (options.unit ?? '') : rest;
  return { value: sign === '-' ? -value : value, unit: unitNamed(named, dimension, field) };
}

const fractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const spelt = (sign: string): string => fractions[sign] ?? sign;

function fraction(whole: string | undefined, top: string | undefined, bottom: string | undefined): number | undefined {
  return Number(bottom) === 0 ? undefined : Number(whole ?? '0') + Number(top) / Number(bottom);
}

/** One to three digits, a comma and three more: a decimal mark, or a thousand. */
const mayGroup = /^[1-9]\d{0,2},\d{3}$/;

function written(number: string, exponent: string | undefined): number {
  return Number(`${number.replace(',', '.')}e${exponent ?? '0'}`);
}

function unreadable(text: string, dimension: Dimension, field: string, problem = "can't be read as a number"): Refusal {
  const list = unitsOf(dimension).filter((unit) => unit !== '-');
  const accepted =
    list.length === 0
      ? 'a number such as 2.5 or 3/8, without grouping of thousands'
      : `${dimensions[dimension].name}: a number such as 2.5, 2,5 or 1 1/2, without grouping of thousands, with a unit of ${list.join(', ')}`;
  return new Refusal('bad-input', `The ${field} “${text}” ${problem}. Nothing was changed.`, {
    field,
    accepted,
  });
}
