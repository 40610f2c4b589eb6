/** Whether a check can be kept: what it names is there, and its limit can be held against its output. */
import type { Given, Input } from '../calculators/calculator.ts';
import { findCalculator } from '../calculators/index.ts';
import { pickMode } from '../calculators/pick-mode.ts';
import { readInput } from '../calculators/read-inputs.ts';
import { Refusal } from '../refusal.ts';
import { unitNamed } from '../units/measure.ts';
import { plainKey } from './fact-terms.ts';
import { partKindNamed, partKinds } from './part-kinds.ts';
import type { CheckPlan, CheckSource } from './source.ts';

function refuse(field: string, problem: string, accepted: string): never {
  throw new Refusal('bad-input', `${problem} Nothing was changed.`, { field, accepted });
}

/** @throws Refusal `bad-input` naming the field of the check. */
export function checkPlan({ calculator: id, inputs, output, limit }: CheckPlan): void {
  const calculator = findCalculator(id);
  if (calculator === undefined)
    refuse('calculator', `There is no calculator “${id}”.`, 'a calculator of the list, such as D6');
  for (const [name, source] of Object.entries(inputs)) {
    if (!Object.hasOwn(calculator.inputs, name)) {
      refuse(
        `inputs.${name}`,
        `${calculator.id} has no input “${name}”.`,
        `the inputs ${Object.keys(calculator.inputs).join(', ')}`,
      );
    }
    checkSource(`inputs.${name}`, source);
    const input = calculator.inputs[name];
    if (input !== undefined && source.from === 'typed') checkTyped(name, input, source.given);
  }
  try {
    pickMode(calculator, new Set(Object.keys(inputs)));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(error.code, error.message, {
      field: `inputs.${error.field ?? ''}`,
      accepted: error.accepted ?? '',
    });
  }
  const declared = Object.hasOwn(calculator.outputs, output) ? calculator.outputs[output] : undefined;
  if (declared === undefined || declared.kind === 'text') {
    refuse(
      'output',
      `${calculator.id} has no output “${output}” that a limit can be held against.`,
      `one of ${Object.entries(calculator.outputs)
        .filter(([, one]) => one.kind !== 'text')
        .map(([name]) => name)
        .join(', ')}`,
    );
  }
  if ('unit' in declared && limit.unit !== '') unitNamed(limit.unit, declared.dimension, 'limit.unit');
  for (const bound of ['least', 'most'] as const) {
    const from = limit[`${bound}From`];
    if (from !== undefined) checkSource(`limit.${bound}From`, from);
    const value = limit[bound];
    if (value !== null && !Number.isFinite(value)) refuse(`limit.${bound}`, `The limit is not a number.`, 'a number');
  }
  if (limit.least !== null && limit.most !== null && limit.least > limit.most) {
    refuse(
      'limit.least',
      `The least, ${limit.least}, is above the most, ${limit.most}.`,
      `a number up to ${limit.most}`,
    );
  }
}

/** A typed value must be one that the calculator takes; empty is to be typed later, and the check lacks it until then. */
function checkTyped(name: string, input: Input, given: Given): void {
  if (typeof given.value === 'string' && given.value.trim() === '') return;
  try {
    readInput(name, input, given, []);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(error.code, error.message, { field: `inputs.${name}`, accepted: error.accepted ?? '' });
  }
}

function checkSource(field: string, source: CheckSource): void {
  if (source.from === 'fact' && source.part === null && partKindNamed(source.partKind) === undefined) {
    refuse(
      field,
      plainKey(source.partKind) === ''
        ? 'The check needs a part line or a kind of part to look at.'
        : `“${source.partKind}” is no kind of part.`,
      `a part line, or one of ${partKinds.map(({ kind }) => kind).join(', ')}`,
    );
  }
}
