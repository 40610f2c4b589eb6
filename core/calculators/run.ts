/** Runs a calculator: checks what was given, picks the mode, computes in SI, and hands results back in units. */
import { fromSI, type Measure, unitNamed } from '../units/measure.ts';
import {
  type Calculator,
  type Given,
  hasDefault,
  type Input,
  type Output,
  refuseInput,
  type Warning,
} from './calculator.ts';
import { inputsOfMode, pickMode } from './pick-mode.ts';
import { readInput, type SIValue } from './read-inputs.ts';

export interface Asked {
  readonly inputs: Readonly<Record<string, Given>>;
  /** The unit wanted for an output; without it, the declared one. */
  readonly units?: Readonly<Record<string, string>>;
}

export interface Answer {
  readonly calculator: string;
  readonly mode: string;
  /** Numbers with all their digits; yes-no and text outputs have the unit `-`. */
  readonly outputs: Readonly<Record<string, { readonly value: number | boolean | string; readonly unit: string }>>;
  readonly warnings: readonly Warning[];
  /** Defaults that were used because nothing was given. */
  readonly assumed: readonly {
    readonly name: string;
    readonly value: number | boolean | string;
    readonly unit: string;
    readonly source?: string;
  }[];
  readonly notes: readonly string[];
  readonly caution?: string;
  readonly formula: string;
  readonly source: string;
}

const isBlank = (given: Given | undefined): boolean =>
  given === undefined ||
  given.value === undefined ||
  given.value === null ||
  (typeof given.value === 'string' && given.value.trim() === '');

/** The default of an input as though it had been given. */
function defaultOf(input: Input): { value: number | boolean | string; unit: string; source?: string } | undefined {
  if (!hasDefault(input) || input.kind === 'list') return undefined;
  const { default: value, defaultSource } = input;
  if (value === undefined) return undefined;
  const unit = 'unit' in input ? input.unit : '-';
  return { value, unit, ...(defaultSource === undefined ? {} : { source: defaultSource }) };
}

/** The values of a mode; reading an input of another mode is a bug, and throws. */
function guarded(id: string, values: Readonly<Record<string, SIValue | undefined>>): never {
  return new Proxy(values, {
    get(target, name) {
      if (typeof name === 'string' && Object.hasOwn(target, name)) return target[name];
      throw new Error(`${id} reads ${String(name)}, which this mode isn't given.`);
    },
  }) as never;
}

/** The unit each output is wanted in. */
function wantedUnits(outputs: Calculator['outputs'], units: Asked['units']): ReadonlyMap<string, string> {
  const wanted = new Map<string, string>();
  for (const [name, unit] of Object.entries(units ?? {})) {
    const output = Object.hasOwn(outputs, name) ? outputs[name] : undefined;
    if (output === undefined) {
      refuseInput(name, `There is no output “${name}”.`, `one of ${Object.keys(outputs).join(', ')}`);
    }
    wanted.set(name, 'unit' in output ? unitNamed(unit, output.dimension, name) : '-');
  }
  return wanted;
}

function inUnit(id: string, name: string, output: Output, si: SIValue, unit: string | undefined) {
  if (!('unit' in output)) return { value: si as boolean | string, unit: '-' };
  const measure: Measure = {
    value: fromSI(si as number, unit ?? output.unit, output.dimension),
    unit: unit ?? output.unit,
  };
  if (typeof si !== 'number') throw new Error(`${id} gives ${name} as ${typeof si}.`);
  // Finite entries of absurd size can overflow; better no figure than one that reads Infinity.
  if (!Number.isFinite(measure.value)) {
    refuseInput(name, `${output.label} (${name}) comes out beyond any number.`, 'inputs of a size met on an engine');
  }
  return measure;
}

/**
 * Runs one calculator.
 * @throws Refusal `bad-input` whose `field` is the name of the input (or output) to mend.
 */
export function runCalculator(calculator: Calculator, { inputs: given, units }: Asked): Answer {
  const { id, inputs, outputs } = calculator;
  for (const name of Object.keys(given)) {
    if (!Object.hasOwn(inputs, name)) {
      refuseInput(name, `${id} has no input “${name}”.`, `the inputs ${Object.keys(inputs).join(', ')}`);
    }
  }
  const wanted = wantedUnits(outputs, units);
  const mode = pickMode(calculator, new Set(Object.keys(given).filter((name) => !isBlank(given[name]))));
  const warnings: Warning[] = [];
  const assumed: Answer['assumed'][number][] = [];
  const values: Record<string, SIValue | undefined> = {};
  for (const name of inputsOfMode(calculator, mode)) {
    const input = inputs[name];
    if (input === undefined) throw new Error(`${id}: mode ${mode.name} names ${name}, which isn't an input.`);
    const one = given[name];
    if (one !== undefined && !isBlank(one)) values[name] = readInput(name, input, one, warnings);
    else {
      const fallback = defaultOf(input);
      if (fallback !== undefined) assumed.push({ name, ...fallback });
      values[name] = fallback === undefined ? undefined : readInput(name, input, fallback, []);
    }
  }
  const result = mode.compute(guarded(id, values));
  const told: Record<string, Answer['outputs'][string]> = {};
  for (const [name, output] of Object.entries(outputs)) {
    const si = result.outputs[name];
    if (si !== undefined) told[name] = inUnit(id, name, output, si, wanted.get(name));
  }
  const { caution, formula, source } = calculator;
  return {
    calculator: id,
    mode: mode.name,
    outputs: told,
    warnings: [...warnings, ...(result.warnings ?? [])],
    assumed,
    notes: [...(result.notes ?? []), ...calculator.notes],
    ...(caution === undefined ? {} : { caution }),
    formula,
    source,
  };
}
