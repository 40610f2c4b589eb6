import type { Calculator } from '../../../core/calculators/calculator.ts';
import type { GivenData, RecordRow, RecordValues } from '../../../core/contract/records.ts';
import type { Dimension } from '../../../core/units/dimensions.ts';
import { presentValue } from './plot-points.ts';
import { type Reading, readingOf } from './reading.ts';
import { listOf, type Typed } from './typed.ts';

export type SavedCase = RecordValues['savedCase'];

/** A record of the kind `savedCase` as its contract describes it. */
export const caseOf = ({ values }: RecordRow): SavedCase => values as unknown as SavedCase;

/** What was typed, as it is kept: the text itself with its unit, not a converted number. */
export function inputsToSave({ inputs }: Calculator, { texts }: Typed, unitOf: (name: string) => string) {
  const kept: Record<string, GivenData> = {};
  for (const [name, text] of Object.entries(texts)) {
    const input = inputs[name];
    if (input === undefined || text.trim() === '') continue;
    if (!('unit' in input)) kept[name] = { value: text };
    else kept[name] = { value: input.kind === 'list' ? [...listOf(text)] : text.trim(), unit: unitOf(name) };
  }
  return kept;
}

/** A saved case as though somebody had typed it again. */
export function typedOfCase(calculator: Calculator, saved: SavedCase): Typed {
  const texts: Record<string, string> = {};
  const units: Record<string, string> = {};
  for (const [name, { value, unit }] of Object.entries(saved.inputs)) {
    const input = calculator.inputs[name];
    if (input === undefined) continue;
    texts[name] = Array.isArray(value) ? value.join('; ') : String(value);
    if (unit !== undefined && unit !== '' && 'unit' in input) units[name] = unit;
  }
  return { texts, units, outputUnits: saved.units };
}

type Plain = number | string | boolean | undefined;

export interface Comparison {
  readonly name: string;
  readonly side: 'input' | 'output';
  readonly label: string;
  readonly before: Plain;
  readonly now: Plain;
  /** The unit that both are in. */
  readonly unit: string;
  /** Now less before; nothing where one of them isn't a number. */
  readonly change?: number;
  /** Of the value before; nothing where that is zero, and for temperatures, whose zero is a convention. */
  readonly share?: number;
  readonly differs: boolean;
}

/**
 * Inputs and outputs of a saved case beside those of now, in the units of now. Outputs are computed afresh for both,
 * so that a case that was saved under another version of the program is compared like with like.
 */
export function compare(calculator: Calculator, saved: SavedCase, now: Typed): readonly Comparison[] {
  const before = typedOfCase(calculator, saved);
  const inputs = Object.entries(calculator.inputs).flatMap(([name, input]): Comparison[] => {
    const [then, today] = [before.texts[name] ?? '', now.texts[name] ?? ''];
    if (then === '' && today === '') return [];
    const shared = { name, side: 'input' as const, label: input.label };
    if (!('unit' in input) || input.kind === 'list') {
      return [{ ...shared, before: then, now: today, unit: '', differs: then !== today }];
    }
    const unit = now.units[name] ?? input.unit;
    const value = (typed: Typed) => presentValue(input, name, typed, unit);
    return [compared(shared, value(before) ?? then, value(now) ?? today, unit, input.dimension)];
  });
  const [then, today] = [
    readingOf(calculator, { ...before, outputUnits: now.outputUnits }),
    readingOf(calculator, now),
  ];
  const outputs = Object.entries(calculator.outputs).flatMap(([name, output]): Comparison[] => {
    const [first, second] = [told(then, name), told(today, name)];
    if (first === undefined && second === undefined) return [];
    const shared = { name, side: 'output' as const, label: output.label };
    const unit = first?.unit ?? second?.unit ?? '';
    const dimension = 'unit' in output ? output.dimension : 'number';
    return [compared(shared, first?.value, second?.value, unit, dimension)];
  });
  return [...inputs, ...outputs];
}

const told = (reading: Reading, name: string) =>
  reading.state === 'answered' ? reading.answer.outputs[name] : undefined;

function compared(
  shared: Pick<Comparison, 'name' | 'side' | 'label'>,
  before: Plain,
  now: Plain,
  unit: string,
  dimension: Dimension,
): Comparison {
  if (typeof before !== 'number' || typeof now !== 'number') {
    return { ...shared, before, now, unit, differs: before !== now };
  }
  const change = now - before;
  const differs = Math.abs(change) > 1e-9 * Math.max(Math.abs(before), Math.abs(now));
  const share = before === 0 || dimension === 'temperature' ? {} : { share: change / Math.abs(before) };
  return { ...shared, before, now, unit, differs, change: differs ? change : 0, ...share };
}
