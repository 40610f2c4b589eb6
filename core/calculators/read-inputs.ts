/** From what was given to the SI values a calculator computes with, or a refusal that names the input. */
import { dimensions } from '../units/dimensions.ts';
import { formatMeasure, type Measure, toSI, unitNamed, unitsOf } from '../units/measure.ts';
import { parseMeasure } from '../units/parse-measure.ts';
import {
  type Given,
  type Input,
  type ListInput,
  type Must,
  type NumberInput,
  refuseInput,
  type Usual,
  type Warning,
  warning,
} from './calculator.ts';
import { exceeds, fallsShort } from './limits.ts';

export type SIValue = number | string | boolean | readonly number[];

/** `Rod length (rod_length)`: what the form says and what a script writes. */
export const named = (name: string, input: Input): string => `${input.label} (${name})`;

/** What an input accepts, in words. */
export function acceptedFor(input: Input): string {
  if (input.kind === 'choice') return `one of ${Object.keys(input.choices).join(', ')}`;
  if (input.kind === 'yes-no') return 'true or false';
  const units = unitsOf(input.dimension).filter((unit) => unit !== '-');
  const bounds = boundsText(input.must ?? {}, input);
  const range = usualText(input.usual ?? {}, input);
  const what =
    input.kind === 'integer'
      ? 'a whole number'
      : input.kind === 'list'
        ? `a list of ${input.fewest === undefined ? '' : `at least ${input.fewest} `}numbers`
        : 'a number';
  const inUnits = units.length === 0 ? '' : ` in ${units.join(', ')}`;
  return [`${what}${bounds === '' ? '' : ` ${bounds}`}${inUnits}`, ...(range === '' ? [] : [`usually ${range}`])].join(
    '; ',
  );
}

const show = (value: number, input: NumberInput | ListInput): string =>
  formatMeasure({ value, unit: input.unit }, input.dimension, 10);

function boundsText({ above, atLeast, below, atMost }: Must, input: NumberInput | ListInput): string {
  return [
    above === undefined ? '' : `above ${show(above, input)}`,
    atLeast === undefined ? '' : `at least ${show(atLeast, input)}`,
    below === undefined ? '' : `below ${show(below, input)}`,
    atMost === undefined ? '' : `at most ${show(atMost, input)}`,
  ]
    .filter((part) => part !== '')
    .join(' and ');
}

function usualText({ from, to }: Usual, input: NumberInput | ListInput): string {
  if (from !== undefined && to !== undefined) return `${show(from, input)} to ${show(to, input)}`;
  if (from !== undefined) return `${show(from, input)} or more`;
  return to === undefined ? '' : `up to ${show(to, input)}`;
}

/** The measure given for one number, its unit's symbol settled. */
function readMeasure(
  name: string,
  input: NumberInput | ListInput,
  value: Given['value'],
  unit: string | undefined,
): Measure {
  if (typeof value === 'string') {
    // A gauge written 00 or 0000 is another size than 0: what a leading zero means is for the writer to say.
    if (input.kind === 'integer' && /^\s*0\d/.test(value)) {
      refuseInput(name, `${named(name, input)} can't be read: “${value.trim()}”.`, acceptedFor(input));
    }
    return parseMeasure(value, input.dimension, { field: name, ...(unit === undefined ? {} : { unit }) });
  }
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    refuseInput(name, `${named(name, input)} must be a number.`, acceptedFor(input));
  }
  return { value, unit: unitNamed(unit ?? '', input.dimension, name) };
}

/** One number in SI, its bounds kept. */
function readNumber(
  name: string,
  input: NumberInput | ListInput,
  value: Given['value'],
  unit: string | undefined,
  warnings: Warning[],
): number {
  const measure = readMeasure(name, input, value, unit);
  if (input.kind === 'integer' && !Number.isInteger(measure.value)) {
    refuseInput(name, `${named(name, input)} must be a whole number, not ${measure.value}.`, acceptedFor(input));
  }
  const si = toSI(measure.value, measure.unit, input.dimension);
  const bound = (limit: number): number => toSI(limit, input.unit, input.dimension);
  const given = `${formatMeasure(measure, input.dimension, 10)}`;
  const { floor } = dimensions[input.dimension];
  if (floor !== undefined && si < floor) {
    const why = input.dimension === 'temperature' ? 'below absolute zero' : 'below zero, which no absolute pressure is';
    refuseInput(name, `${named(name, input)} of ${given} is ${why}.`, acceptedFor(input));
  }
  const { above, atLeast, below, atMost } = input.must ?? {};
  const broken =
    (above !== undefined && !exceeds(si, bound(above))) ||
    (atLeast !== undefined && fallsShort(si, bound(atLeast))) ||
    (below !== undefined && !fallsShort(si, bound(below))) ||
    (atMost !== undefined && exceeds(si, bound(atMost)));
  if (broken) {
    const must = boundsText(input.must ?? {}, input);
    refuseInput(name, `${named(name, input)} must be ${must}, not ${given}.`, acceptedFor(input));
  }
  const { from, to, because } = input.usual ?? {};
  if ((from !== undefined && fallsShort(si, bound(from))) || (to !== undefined && exceeds(si, bound(to)))) {
    const source = because === undefined ? '' : ` (${because})`;
    warnings.push(
      warning(
        `${named(name, input)} of ${given} is outside the usual ${usualText(input.usual ?? {}, input)}${source}: check the entry.`,
      ),
    );
  }
  return si;
}

/** One input in SI. Ranges that are unusual, but possible, are added to `warnings`. */
export function readInput(name: string, input: Input, given: Given, warnings: Warning[]): SIValue {
  const { value, unit } = given;
  switch (input.kind) {
    case 'yes-no': {
      const said = typeof value === 'string' ? { true: true, yes: true, false: false, no: false }[value] : value;
      if (typeof said === 'boolean') return said;
      return refuseInput(name, `${named(name, input)} must be true or false.`, acceptedFor(input));
    }
    case 'choice': {
      if (typeof value === 'string' && Object.hasOwn(input.choices, value)) return value;
      return refuseInput(name, `${named(name, input)} can't be “${String(value)}”.`, acceptedFor(input));
    }
    case 'list': {
      if (!Array.isArray(value)) refuseInput(name, `${named(name, input)} must be a list.`, acceptedFor(input));
      const list = value as readonly (number | string)[];
      if (list.length < (input.fewest ?? 1)) {
        refuseInput(
          name,
          `${named(name, input)} needs at least ${input.fewest ?? 1} values, not ${list.length}.`,
          acceptedFor(input),
        );
      }
      if (list.length > (input.most ?? 1000)) {
        refuseInput(
          name,
          `${named(name, input)} takes at most ${input.most ?? 1000} values, not ${list.length}.`,
          acceptedFor(input),
        );
      }
      return list.map((one) => readNumber(name, input, one, unit, warnings));
    }
    default:
      return readNumber(name, input, value, unit, warnings);
  }
}
