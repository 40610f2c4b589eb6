/**
 * What was typed for a calculator, kept in the address so that a reload, a link and the way back have it: `i.bore=3/8`
 * is the text of an input, `u.bore=in` the unit chosen beside it, `o.area=cm2` the unit wanted for an output.
 */
import type { Calculator, Given, Input } from '../../../core/calculators/calculator.ts';
import { unitNamed, unitsOf } from '../../../core/units/measure.ts';
import type { Params } from '../../app/route.tsx';

export interface Typed {
  /** By the name of the input, as typed; nothing for what was left empty. */
  readonly texts: Params;
  /** By the name of the input; only where another than the declared unit was chosen. */
  readonly units: Params;
  /** By the name of the output. */
  readonly outputUnits: Params;
}

/** The part of the address that belongs to a calculator; what it doesn't know is left out. */
export function typedOf({ inputs, outputs }: Calculator, params: Params): Typed {
  const texts: Record<string, string> = {};
  const units: Record<string, string> = {};
  const outputUnits: Record<string, string> = {};
  for (const [name, input] of Object.entries(inputs)) {
    const text = params[`i.${name}`];
    if (text !== undefined && text !== '') texts[name] = text;
    const unit = params[`u.${name}`];
    if (unit !== undefined && 'unit' in input && unitsOf(input.dimension).includes(unit)) units[name] = unit;
  }
  for (const [name, output] of Object.entries(outputs)) {
    const unit = params[`o.${name}`];
    if (unit !== undefined && 'unit' in output && unitsOf(output.dimension).includes(unit)) outputUnits[name] = unit;
  }
  return { texts, units, outputUnits };
}

/** The inverse of `typedOf`. */
export function paramsOf({ id }: Calculator, { texts, units, outputUnits }: Typed): Params {
  const params: Record<string, string> = { id };
  for (const [name, text] of Object.entries(texts)) params[`i.${name}`] = text;
  for (const [name, unit] of Object.entries(units)) params[`u.${name}`] = unit;
  for (const [name, unit] of Object.entries(outputUnits)) params[`o.${name}`] = unit;
  return params;
}

/** The example of the declaration as though somebody had typed it; units wanted for outputs stay as they are. */
export function exampleTyped({ inputs, example }: Calculator, outputUnits: Params): Typed {
  const texts: Record<string, string> = {};
  const units: Record<string, string> = {};
  for (const [name, { value, unit }] of Object.entries(example)) {
    const input = inputs[name];
    if (input === undefined) continue;
    texts[name] = Array.isArray(value) ? value.join('; ') : String(value);
    if (unit !== undefined && 'unit' in input) units[name] = unitNamed(unit, input.dimension, name);
  }
  return { texts, units, outputUnits };
}

/**
 * The numbers of a list. A semicolon or a new line parts them, or else a space or comma; a single comma inside a
 * number is its decimal mark, as everywhere, so "59,992 59,994" are two and "40,25,64" three.
 */
export function listOf(text: string): readonly string[] {
  const parts = /[;\n]/.test(text)
    ? text.split(/[;\n]+/)
    : text
        .split(/\s+|,\s+/)
        .flatMap((part) => (part.replace(/,$/, '').split(',').length > 2 ? part.split(',') : [part]));
  return parts.map((part) => part.trim().replace(/,$/, '')).filter((part) => part !== '');
}

/** One input as the calculator takes it; undefined where nothing was given. */
export function givenOf(input: Input, text: string | undefined, unit: string | undefined): Given | undefined {
  if (text === undefined || text.trim() === '') return undefined;
  if (!('unit' in input)) return { value: text };
  return { value: input.kind === 'list' ? listOf(text) : text, unit: unit ?? input.unit };
}
