/** A calculator as data: what forms, `calc --list --json` and help are drawn from. */
import { unitsOf } from '../units/measure.ts';
import { type Calculator, groupTitles, type Input, type Output } from './calculator.ts';
import { inputsOfMode } from './pick-mode.ts';
import { acceptedFor } from './read-inputs.ts';

function describeInput(name: string, input: Input) {
  const { label, hint, optional = false } = input;
  const shared = { name, label, ...(hint === undefined ? {} : { hint }), optional, accepted: acceptedFor(input) };
  const standing =
    input.kind === 'list' || input.default === undefined
      ? {}
      : {
          default: input.default,
          ...(input.defaultSource === undefined ? {} : { defaultSource: input.defaultSource }),
        };
  if (input.kind === 'choice') return { ...shared, kind: input.kind, choices: input.choices, ...standing };
  if (input.kind === 'yes-no') return { ...shared, kind: input.kind, ...standing };
  const { kind = 'number', dimension, unit, must = {}, usual = {} } = input;
  return { ...shared, kind, dimension, unit, units: unitsOf(dimension), must, usual, ...standing };
}

function describeOutput(name: string, output: Output) {
  const { label, hint } = output;
  const shared = { name, label, ...(hint === undefined ? {} : { hint }) };
  if (!('unit' in output)) return { ...shared, kind: output.kind };
  const { dimension, unit } = output;
  return { ...shared, kind: 'number' as const, dimension, unit, units: unitsOf(dimension) };
}

/** Everything there is to know about a calculator, as plain data. */
export function describeCalculator(calculator: Calculator) {
  const { id, slug, title, about, group, formula, source, notes, caution, example, inputs, outputs, modes } =
    calculator;
  return {
    id,
    slug,
    title,
    about,
    group,
    groupTitle: groupTitles[group],
    inputs: Object.entries(inputs).map(([name, input]) => describeInput(name, input)),
    outputs: Object.entries(outputs).map(([name, output]) => describeOutput(name, output)),
    modes: modes.map((mode) => ({
      name: mode.name,
      title: mode.title,
      needs: mode.needs,
      takes: inputsOfMode(calculator, mode),
    })),
    formula,
    source,
    notes,
    ...(caution === undefined ? {} : { caution }),
    example,
  };
}
