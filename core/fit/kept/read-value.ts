/** Reading what was typed for a value of a declared fit, by the sort that its rule asks for. */
import { Refusal } from '../../refusal.ts';
import type { Dimension } from '../../units/dimensions.ts';
import type { Measure } from '../../units/measure.ts';
import { parseMeasure } from '../../units/parse-measure.ts';
import type { FactValue, PressureReference } from '../checks/check.ts';
import { readPort } from './joined.ts';
import type { AskedPath, ValueSort } from './paths.ts';
import type { FitValue } from './records.ts';

const references: Readonly<Record<string, PressureReference>> = {
  abs: 'abs',
  absolute: 'abs',
  gauge: 'gauge',
  gage: 'gauge',
  boost: 'gauge',
  g: 'gauge',
  a: 'abs',
};
const referenceAtEnd = /^(.*?)[\s(]*\b(absolute|abs|gauge|gage|boost|a|g)\b\)?\.?$/i;

/** How each sort is written, for a refusal. */
export const waysToWrite: Readonly<Record<ValueSort, string>> = {
  count: 'a whole number from 0, such as 8',
  length: 'a length with its unit, such as 86.5 mm or 3 3/8 in',
  range: 'a span with its unit, such as 0 to 3.5 bar abs or 80 to 84 degC',
  text: 'a word or two',
  port: 'a port such as M14x1.5 male, ORB -6 female or pattern 4xM10 80x60',
  list: 'things parted by commas, such as petrol, E85',
  pressure: 'a pressure with its unit and whether it is gauge or absolute, such as 1.4 bar gauge or 2.4 bar abs',
  temperature: 'a temperature with its unit, such as 82 degC',
  number: 'a number such as 1.5',
  measure: 'a number, with its unit where it has one, such as 25.4 mm',
  value: 'a number or a word',
  'yes or no': 'yes or no',
};

/** Dimensions that a value of a rule of one's own may have, the usual first. */
const measurable: readonly Dimension[] = [
  'length',
  'temperature',
  'pressureDifference',
  'torque',
  'angle',
  'volume',
  'mass',
  'volumeFlow',
  'rotation',
  'force',
  'power',
  'current',
  'voltage',
  'resistance',
];

class Unread extends Error {}

const measureIn = (text: string, unit: string, dimension: Dimension): Measure =>
  parseMeasure(text, dimension, { unit });

function splitReference(text: string): { rest: string; ref: PressureReference | undefined } {
  const match = referenceAtEnd.exec(text.trim());
  const ref = match === null ? undefined : references[(match[2] ?? '').toLowerCase()];
  return ref === undefined ? { rest: text.trim(), ref: undefined } : { rest: (match?.[1] ?? '').trim(), ref };
}

/** A number with its unit, whatever it measures; a pressure must say from where it counts. */
function anyMeasure(
  text: string,
  unit: string,
  only?: readonly Dimension[],
): { value: number; unit?: string; ref?: PressureReference } {
  const own = splitReference(text);
  const beside = splitReference(unit);
  const ref = own.ref ?? beside.ref;
  // A number without a unit is a count, not the degrees that angles are when nothing is said.
  if (only === undefined && unit === '') {
    const bare = attempt(() => measureIn(text, '', 'number'));
    if (bare !== undefined) return { value: bare.value };
  }
  for (const dimension of only ?? measurable) {
    const isPressure = dimension === 'pressureDifference';
    const read = attempt(() =>
      isPressure ? measureIn(own.rest, beside.rest, dimension) : measureIn(text, unit, dimension),
    );
    if (read === undefined) continue;
    if (!isPressure) return { value: read.value, unit: read.unit };
    if (ref === undefined) throw new Unread('it isn’t said whether the pressure is gauge or absolute');
    return { value: read.value, unit: read.unit, ref };
  }
  throw new Unread('its number or unit can’t be read');
}

function attempt<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

const span = /^(.*?)\s*(?:\bto\b|\.\.|–|—|(?<=[\d\s])-(?=\s*[\d+]))\s*(.+)$/i;
const openSpan = /^(up to|at most|from|at least)\s+(.+)$/i;

function rangeIn(text: string, unit: string): FactValue {
  const open = openSpan.exec(text.trim());
  if (open !== null) {
    const { value, ...measure } = anyMeasure(open[2] ?? '', unit);
    return /^(up|at most)/i.test(open[1] ?? '') ? { max: value, ...measure } : { min: value, ...measure };
  }
  const both = span.exec(text.trim());
  if (both === null) throw new Unread('it names no span');
  const most = anyMeasure(both[2] ?? '', unit);
  const unitOfMost = `${most.unit ?? ''} ${most.ref ?? ''}`.trim();
  const least = anyMeasure(both[1] ?? '', unitOfMost);
  if (least.unit !== most.unit || least.ref !== most.ref) throw new Unread('its two ends are in different units');
  if (least.value > most.value) throw new Unread('it ends below its beginning');
  const { value, ...measure } = most;
  return { min: least.value, max: value, ...measure };
}

const plainNumber = (text: string): number => measureIn(text, '', 'number').value;

function readBySort({ sort, role }: AskedPath, text: string, unit: string): FactValue {
  switch (sort) {
    case 'count': {
      const count = plainNumber(text);
      if (!Number.isInteger(count) || count < 0) throw new Unread('it is no whole number from 0');
      return count;
    }
    case 'number':
      return plainNumber(text);
    case 'length': {
      const read = measureIn(text, unit, 'length');
      return { value: read.value, unit: read.unit };
    }
    case 'temperature': {
      const read = measureIn(text, unit, 'temperature');
      return { value: read.value, unit: read.unit };
    }
    case 'pressure':
      return anyMeasure(text, unit, ['pressureDifference']);
    case 'range':
      return rangeIn(text, unit);
    case 'measure':
      return anyMeasure(text, unit);
    case 'port': {
      const read = readPort(text, role);
      if (!read.ok) throw new Unread(read.message);
      return text;
    }
    case 'list': {
      const items = text.split(/[,;]/).map((item) => item.trim());
      if (items.length === 0 || items.some((item) => item === '')) throw new Unread('one of its things is empty');
      return items;
    }
    case 'yes or no': {
      const said = /^(yes|true|y)$/i.test(text) ? true : /^(no|false|n)$/i.test(text) ? false : undefined;
      if (said === undefined) throw new Unread('it is neither yes nor no');
      return said;
    }
    case 'value': {
      if (!/\d/.test(text)) return text;
      try {
        const read = anyMeasure(text, unit);
        return read.unit === undefined ? read.value : { ...read };
      } catch (error) {
        // A class such as 10.9 U is a word, but a pressure from nowhere is a mistake.
        if (error instanceof Unread && /gauge/.test(error.message)) throw error;
        return text;
      }
    }
    case 'text':
      return text;
  }
}

const said = (error: unknown): string => (error instanceof Unread ? error.message : 'its number or unit can’t be read');

/**
 * Reads a typed value of a declared fit by the sort that its path asks for.
 * @param field what the value is called in a refusal
 * @throws Refusal `bad-input` naming the field, what is wrong with it, and how to write it
 */
export function readFitValue(asked: AskedPath, { value, unit }: Omit<FitValue, 'path'>, field: string): FactValue {
  const text = value.trim();
  try {
    if (text === '') throw new Unread('nothing is written');
    return readBySort(asked, text, unit.trim());
  } catch (error) {
    if (!(error instanceof Unread || error instanceof Refusal)) throw error;
    throw new Refusal(
      'bad-input',
      `“${`${text} ${unit}`.trim()}” for ${asked.label} can't be used: ${said(error)}. Nothing was changed.`,
      { field, accepted: waysToWrite[asked.sort] },
    );
  }
}

/** The value, or undefined where it can't be read: for what other records say. */
export function tryFitValue(asked: AskedPath, value: string, unit: string): FactValue | undefined {
  return attempt(() => readFitValue(asked, { value, unit }, asked.path));
}
