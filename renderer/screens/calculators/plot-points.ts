import type { Calculator, NumberInput, Warning } from '../../../core/calculators/calculator.ts';
import { inputsOfMode } from '../../../core/calculators/pick-mode.ts';
import { readInput } from '../../../core/calculators/read-inputs.ts';
import { fromSI, toSI } from '../../../core/units/measure.ts';
import { readingOf } from './reading.ts';
import type { Typed } from './typed.ts';

export interface PlotPoint {
  readonly x: number;
  /** Nothing where the calculator refuses. */
  readonly y: number | null;
  readonly level: 'none' | Warning['level'] | 'refused';
  /** What is said of it: its warnings, or why there is no result. */
  readonly remark: string;
}

/** The inputs that a result can be drawn against: numbers that the way in use takes. */
export function plottable(calculator: Calculator, mode: string): readonly (readonly [string, NumberInput])[] {
  const used = calculator.modes.find(({ name }) => name === mode);
  const taken = used === undefined ? [] : inputsOfMode(calculator, used);
  return Object.entries(calculator.inputs).flatMap(([name, input]) =>
    taken.includes(name) && 'unit' in input && input.kind !== 'list' ? [[name, input] as const] : [],
  );
}

const rounded = (value: number): number => Number(value.toPrecision(12));

/** The range in `unit`: the usual one where it has two ends, or else half to one and a half of what stands there. */
export function standingRange(
  input: NumberInput,
  unit: string,
  present: number | undefined,
): readonly [number, number] {
  const into = (value: number) =>
    Number(fromSI(toSI(value, input.unit, input.dimension), unit, input.dimension).toPrecision(4));
  const { usual = {}, must = {} } = input;
  const [least, most] = [must.atLeast ?? must.above, must.atMost ?? must.below];
  const [from, to] = [usual.from ?? least, usual.to ?? most];
  if (from !== undefined && to !== undefined && to > from) return [into(from), into(to)];
  const middle = present ?? into(input.default ?? from ?? to ?? 1);
  const [low, high] = middle === 0 ? [-1, 1] : [middle - Math.abs(middle) / 2, middle + Math.abs(middle) / 2];
  const bound = least === undefined ? low : Math.max(low, into(least));
  return [Number(bound.toPrecision(3)), Number(high.toPrecision(3))];
}

/** What stands in the field now, or its default, in `unit`; nothing while it can't be read. */
export function presentValue(input: NumberInput, name: string, typed: Typed, unit: string): number | undefined {
  const text = typed.texts[name] ?? '';
  try {
    if (text.trim() === '') {
      if (input.default === undefined) return undefined;
      return rounded(fromSI(toSI(input.default, input.unit, input.dimension), unit, input.dimension));
    }
    const si = readInput(name, input, { value: text, unit: typed.units[name] ?? input.unit }, []);
    return typeof si === 'number' ? rounded(fromSI(si, unit, input.dimension)) : undefined;
  } catch {
    return undefined;
  }
}

const steps = 48;

/** The result over a range of one input, all other inputs as they stand. */
export function plotPoints(
  calculator: Calculator,
  typed: Typed,
  against: { readonly name: string; readonly unit: string; readonly from: number; readonly to: number },
  output: string,
): readonly PlotPoint[] {
  const { name, unit, from, to } = against;
  const whole = calculator.inputs[name]?.kind === 'integer';
  const even = Array.from({ length: steps + 1 }, (_, step) => rounded(from + ((to - from) * step) / steps));
  const values = whole ? [...new Set(even.map(Math.round))].filter((value) => value >= from && value <= to) : even;
  return values.map((x) => pointAt(calculator, typed, name, unit, x, output));
}

/** One point of the curve. */
export function pointAt(
  calculator: Calculator,
  typed: Typed,
  name: string,
  unit: string,
  x: number,
  output: string,
): PlotPoint {
  const reading = readingOf(calculator, {
    ...typed,
    texts: { ...typed.texts, [name]: String(x) },
    units: { ...typed.units, [name]: unit },
  });
  if (reading.state !== 'answered') {
    return {
      x,
      y: null,
      level: 'refused',
      remark: reading.state === 'refused' ? reading.message : 'inputs are missing',
    };
  }
  const value = reading.answer.outputs[output]?.value;
  const { warnings } = reading.answer;
  const grave = warnings.some(({ level }) => level === 'grave');
  return {
    x,
    y: typeof value === 'number' ? value : null,
    level: grave ? 'grave' : warnings.length > 0 ? 'warning' : 'none',
    remark: warnings.map(({ message }) => message).join(' '),
  };
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly level: PlotPoint['level'];
}

/** Where along the range there are warnings or no result, as stretches from point to point. */
export function stretchesOf(points: readonly PlotPoint[]): readonly Stretch[] {
  const found: Stretch[] = [];
  points.forEach(({ x, level }, index) => {
    if (level === 'none') return;
    const last = found.at(-1);
    if (last !== undefined && last.level === level && last.to === points[index - 1]?.x) {
      found[found.length - 1] = { ...last, to: x };
    } else found.push({ from: points[index - 1]?.x ?? x, to: x, level });
  });
  // One point at an end, such as a power of nothing, is no stretch.
  return found.filter(({ from, to }) => to > from);
}
