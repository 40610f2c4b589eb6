import type { Calculator, Given } from '../../../core/calculators/calculator.ts';
import { inputsOfMode } from '../../../core/calculators/pick-mode.ts';
import { readInput } from '../../../core/calculators/read-inputs.ts';
import { type Answer, runCalculator } from '../../../core/calculators/run.ts';
import { Refusal } from '../../../core/refusal.ts';
import { givenOf, type Typed } from './typed.ts';

interface Refused {
  readonly state: 'refused';
  readonly field: string;
  readonly message: string;
  readonly accepted?: string;
}

/** How far what was typed has come: a result, something still missing, or something that can't be taken. */
export type Reading =
  | { readonly state: 'answered'; readonly answer: Answer }
  | { readonly state: 'waiting'; readonly missing: readonly string[] }
  | Refused;

/** Runs a calculator over what was typed; never throws for what a person can type. */
export function readingOf(calculator: Calculator, { texts, units, outputUnits }: Typed): Reading {
  const inputs: Record<string, Given> = {};
  try {
    for (const [name, input] of Object.entries(calculator.inputs)) {
      const given = givenOf(input, texts[name], units[name]);
      if (given === undefined) continue;
      // Read here already, so that a bad text is told at its field while others are still empty.
      readInput(name, input, given, []);
      inputs[name] = given;
    }
    return unfinished(calculator, Object.keys(inputs)) ?? answered(calculator, inputs, outputUnits);
  } catch (error) {
    if (error instanceof Refusal) return refused(calculator, error);
    throw error;
  }
}

function answered(
  calculator: Calculator,
  inputs: Readonly<Record<string, Given>>,
  units: Typed['outputUnits'],
): Reading {
  return { state: 'answered', answer: runCalculator(calculator, { inputs, units }) };
}

function refused({ inputs, outputs }: Calculator, { field = '', message, accepted }: Refusal): Refused {
  const label = inputs[field]?.label ?? outputs[field]?.label ?? field;
  return {
    state: 'refused',
    field,
    // What a script calls the field says nothing to somebody who stands before it.
    message: message
      .replace(/ ?Nothing was changed\.$/, '')
      .replaceAll(` (${field})`, '')
      .replace(`The ${field} `, `${label} `),
    ...(accepted === undefined ? {} : { accepted }),
  };
}

/** What the way that is nearest to being asked still needs, or the input that fits no way together with the others. */
function unfinished(calculator: Calculator, given: readonly string[]): Reading | undefined {
  const ways = calculator.modes.map((mode) => {
    const takes = inputsOfMode(calculator, mode);
    return {
      foreign: given.filter((name) => !takes.includes(name)),
      missing: mode.needs.filter((name) => !given.includes(name)),
    };
  });
  const fitting = ways.filter(({ foreign }) => foreign.length === 0);
  if (fitting.some(({ missing }) => missing.length === 0)) return undefined;
  const [nearest] = [...(fitting.length > 0 ? fitting : ways)].sort(
    (a, b) => a.foreign.length - b.foreign.length || a.missing.length - b.missing.length,
  );
  if (nearest === undefined) return undefined;
  const [foreign] = nearest.foreign;
  if (foreign === undefined) return { state: 'waiting', missing: nearest.missing };
  const label = calculator.inputs[foreign]?.label ?? foreign;
  return {
    state: 'refused',
    field: foreign,
    message: `${label} can't be given together with the other inputs: ask one of the ways above at a time.`,
  };
}
