/** Works a check out: its inputs, the calculator's answer, and how the answer stands against the limit. */
import type { Calculator, Given, Output } from '../calculators/calculator.ts';
import { makersValueGoverns } from '../calculators/cautions.ts';
import { findCalculator } from '../calculators/index.ts';
import { exceeds, fallsShort } from '../calculators/limits.ts';
import { inputsOfMode, pickMode } from '../calculators/pick-mode.ts';
import type { Answer } from '../calculators/run.ts';
import { Refusal } from '../refusal.ts';
import { formatMeasure, fromSI, toSI } from '../units/measure.ts';
import { type Found, Resolver, type Run } from './resolve.ts';
import type { CheckContext, CheckPlan, CheckSource } from './source.ts';
import { givenFor, problemOf, siOf } from './values.ts';

export type Verdict = 'holds' | 'close' | 'fails' | 'lacks data';

export interface WorkedInput {
  readonly name: string;
  readonly label: string;
  readonly source: CheckSource;
  readonly from: string;
  readonly value: string | null;
  readonly unit: string;
  readonly assumed: boolean;
  readonly lacks: string;
  readonly part: number | null;
}

export interface WorkedCheck {
  readonly verdict: Verdict;
  readonly says: string;
  readonly value: number | null;
  readonly unit: string;
  /** The bounds as they came out, where they stand elsewhere. */
  readonly least: number | null;
  readonly most: number | null;
  readonly margin: number | null;
  readonly inputs: readonly WorkedInput[];
  readonly outputs: readonly { readonly name: string; readonly label: string; readonly text: string }[];
  readonly warnings: readonly string[];
  readonly formula: string;
  readonly source: string;
  readonly caution: string;
}

interface Bounds {
  readonly least: number | null;
  readonly most: number | null;
  readonly leastFrom: string;
  readonly mostFrom: string;
  readonly lacks: readonly string[];
  readonly blend: boolean;
}

interface Once {
  readonly check: WorkedCheck;
  readonly blend: boolean;
}

/** Worked out at both ends of the fuel range where the fuel has a say; the worse of the two stands. */
export function evaluateCheck(plan: CheckPlan, context: CheckContext, run: Run): WorkedCheck {
  const low = once(plan, new Resolver(context, 'least', run), run);
  if (!low.blend) return low.check;
  const high = once(plan, new Resolver(context, 'most', run), run);
  const [worse, end] = isWorse(high.check, low.check) ? [high, 'most' as const] : [low, 'least' as const];
  if (worse.check.verdict === 'lacks data') return worse.check;
  const ethanol = new Resolver(context, end, run).find({ from: 'target', target: 'ethanol' }).value?.text;
  const at = ethanol === undefined ? `the blend with the ${end} ethanol` : `${ethanol} ethanol`;
  return { ...worse.check, says: `${worse.check.says} Worst of the fuel range: ${at}.` };
}

const order: readonly Verdict[] = ['holds', 'close', 'fails', 'lacks data'];

function isWorse(a: WorkedCheck, b: WorkedCheck): boolean {
  const step = order.indexOf(a.verdict) - order.indexOf(b.verdict);
  return step !== 0 ? step > 0 : (a.margin ?? 0) < (b.margin ?? 0);
}

const blank = { value: null, least: null, most: null, margin: null, outputs: [], warnings: [] } as const;

function once(plan: CheckPlan, resolver: Resolver, run: Run): Once {
  const calculator = findCalculator(plan.calculator);
  const output = calculator?.outputs[plan.output];
  if (calculator === undefined || output === undefined) {
    const says = `Lacks a calculator: there is no ${plan.calculator} with an output ${plan.output}.`;
    return {
      check: { ...blank, verdict: 'lacks data', says, unit: '', inputs: [], formula: '', source: '', caution: '' },
      blend: false,
    };
  }
  const found = new Map(Object.entries(plan.inputs).map(([name, source]) => [name, resolver.find(source)]));
  const given: Record<string, Given> = {};
  const problems = new Map<string, string>();
  for (const [name, one] of found) {
    const input = calculator.inputs[name];
    if (input === undefined) problems.set(name, `an input that ${calculator.id} has, instead of ${name}`);
    else if (one.value !== null) {
      try {
        given[name] = givenFor(one.value, input, () => resolver.barometer(), input.label);
      } catch (error) {
        problems.set(name, `a figure that fits: ${problemIn(error)}`);
      }
    }
  }
  const bounds = boundsOf(plan, output, resolver);
  const inputs = rowsOf(calculator, plan, found, problems);
  const facts = {
    unit: unitOf(plan, output),
    inputs,
    formula: calculator.formula,
    source: calculator.source,
    caution: calculator.caution ?? makersValueGoverns,
  };
  const blend = bounds.blend || [...found.values()].some((one) => one.blend);
  // A target that several inputs are worked out from is named once.
  const pieces = [...inputs.map(({ lacks }) => lacks), ...bounds.lacks].flatMap((text) => text.split('; '));
  const lacking = [...new Set(pieces.filter((text) => text !== ''))];
  const lacks = (texts: readonly string[]): Once => ({
    check: {
      ...blank,
      ...facts,
      least: bounds.least,
      most: bounds.most,
      verdict: 'lacks data',
      says: `Lacks ${texts.join('; ')}.`,
    },
    blend,
  });
  if (inputs.some((input) => input.lacks !== '')) return lacks(lacking);
  let answer: Answer;
  try {
    answer = run(plan.calculator, given);
  } catch (error) {
    return lacks([`a figure: ${problemIn(error)}`]);
  }
  const outputs = Object.entries(answer.outputs).flatMap(([name, one]) => {
    const declared = calculator.outputs[name];
    return declared === undefined ? [] : [{ name, label: declared.label, text: textOf(declared, one.value, one.unit) }];
  });
  const said = answer.outputs[plan.output];
  const worked = { ...facts, outputs, warnings: answer.warnings.map(({ message }) => message) };
  if (said === undefined || typeof said.value === 'string') {
    return lacks([`${output.label.toLowerCase()}, which these inputs don't give`]);
  }
  const value =
    typeof said.value === 'boolean' ? Number(said.value) : inLimitUnit(said.value, said.unit, output, facts.unit);
  if (bounds.lacks.length > 0) {
    const figure = figureText(output, value, facts.unit);
    const check: WorkedCheck = {
      ...worked,
      verdict: 'lacks data',
      says: `${labelOf(plan, output)} comes to ${figure}; lacks ${bounds.lacks.join('; ')}.`,
      value,
      least: bounds.least,
      most: bounds.most,
      margin: null,
    };
    return { check, blend };
  }
  return { check: { ...worked, ...judge(plan, output, value, facts.unit, bounds) }, blend };
}

const problemIn = (error: unknown): string => {
  if (error instanceof Refusal) return problemOf(error).replace(/\.$/, '');
  throw error;
};

const unitOf = (plan: CheckPlan, output: Output): string =>
  !('unit' in output) ? '-' : plan.limit.unit === '' ? output.unit : plan.limit.unit;

const inLimitUnit = (value: number, unit: string, output: Output, wanted: string): number =>
  'unit' in output && unit !== wanted ? fromSI(toSI(value, unit, output.dimension), wanted, output.dimension) : value;

function textOf(output: Output, value: number | string | boolean, unit: string): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string' || !('unit' in output)) return String(value);
  return formatMeasure({ value, unit }, output.dimension, 5);
}

const figureText = (output: Output, value: number, unit: string): string =>
  'unit' in output ? formatMeasure({ value, unit }, output.dimension, 4) : value === 1 ? 'yes' : 'no';

/** The bounds, typed or standing elsewhere. Of two that stand elsewhere one may be left open. */
function boundsOf({ limit }: CheckPlan, output: Output, resolver: Resolver): Bounds {
  const unit = 'unit' in output ? (limit.unit === '' ? output.unit : limit.unit) : '-';
  const read = (
    source: CheckSource | undefined,
    own: number | null,
  ): { value: number | null; found: Found | null; problem: string } => {
    if (source === undefined) return { value: own, found: null, problem: '' };
    const found = resolver.find(source);
    if (found.value === null || !('unit' in output)) return { value: null, found, problem: '' };
    try {
      const input = { label: '', dimension: output.dimension, unit } as const;
      const given = givenFor(found.value, input, () => resolver.barometer(), output.label);
      const si = siOf({ given, dimension: output.dimension, text: '' }, output.dimension, output.label);
      return { value: fromSI(si, unit, output.dimension), found, problem: '' };
    } catch (error) {
      return { value: null, found, problem: `a limit that fits: ${problemIn(error)}` };
    }
  };
  const least = read(limit.leastFrom, limit.least);
  const most = read(limit.mostFrom, limit.most);
  const lacks = [...(least.found?.lacks ?? []), ...(most.found?.lacks ?? [])].map(({ text }) => text);
  const problems = [least.problem, most.problem].filter((text) => text !== '');
  const none = least.value === null && most.value === null;
  return {
    least: least.value,
    most: most.value,
    leastFrom: least.found?.from ?? limit.source,
    mostFrom: most.found?.from ?? limit.source,
    lacks:
      problems.length > 0
        ? problems
        : !none
          ? []
          : lacks.length > 0
            ? [lacks.join(', or ')]
            : ['a limit: nobody has typed one'],
    blend: least.found?.blend === true || most.found?.blend === true,
  };
}

/** A conversion has no name of its own for what it gives. */
const labelOf = (plan: CheckPlan, output: Output): string =>
  plan.calculator.startsWith('A') ? plan.title : output.label;

function judge(plan: CheckPlan, output: Output, value: number, unit: string, bounds: Bounds) {
  const { least, most } = bounds;
  const label = labelOf(plan, output);
  const figure = figureText(output, value, unit);
  const source = (from: string): string => (from === '' ? '' : ` (${from})`);
  if (!('unit' in output)) {
    const wanted = least !== null && least > 0.5;
    const ok = wanted ? value === 1 : value === 0;
    const says = `${label}: ${figure}${ok ? '.' : `, and it must be ${wanted ? 'yes' : 'no'}${source(plan.limit.source)}.`}`;
    return { verdict: ok ? 'holds' : 'fails', says, value, least, most, margin: null } as const;
  }
  const rooms = [
    ...(least === null ? [] : [{ room: value - least, limit: least, words: 'at least', from: bounds.leastFrom }]),
    ...(most === null ? [] : [{ room: most - value, limit: most, words: 'at most', from: bounds.mostFrom }]),
  ].sort((a, b) => a.room - b.room);
  const [nearest] = rooms;
  if (nearest === undefined) throw new Error('A check is judged without a limit.');
  const fails = (most !== null && exceeds(value, most)) || (least !== null && fallsShort(value, least));
  const close = !fails && !exceeds(nearest.room, (plan.limit.closeMilli / 1000) * Math.abs(nearest.limit));
  const show = (amount: number): string => {
    // A difference of temperatures has no zero that is shifted.
    if (output.dimension === 'temperature')
      return `${Number(amount.toPrecision(3))} ${unit === 'degC' || unit === 'K' ? 'K' : unit}`;
    return formatMeasure({ value: amount, unit }, output.dimension, 3);
  };
  const same = rooms.length === 2 && bounds.leastFrom === bounds.mostFrom;
  const held = rooms
    .toSorted((a, b) => (a.words < b.words ? -1 : 1))
    .map(
      (bound, index) =>
        `${bound.words} ${figureText(output, bound.limit, unit)}${same && index === 0 ? '' : source(bound.from)}`,
    )
    .join(' and ');
  const room = show(Math.abs(nearest.room));
  const atLimit = !exceeds(nearest.room, 0) && !fails;
  const end = fails
    ? `${room} ${nearest.words === 'at most' ? 'too much' : 'too little'}.`
    : atLimit
      ? 'right at the limit.'
      : close
        ? `only ${room} of room.`
        : `${room} of room.`;
  return {
    verdict: fails ? 'fails' : close ? 'close' : 'holds',
    says: `${label} ${figure}, ${held}: ${end}`,
    value,
    least,
    most,
    margin: nearest.room,
  } as const;
}

/** One row an input: what is bound, and what the calculator needs or assumes besides. */
function rowsOf(
  calculator: Calculator,
  plan: CheckPlan,
  found: ReadonlyMap<string, Found>,
  problems: ReadonlyMap<string, string>,
): WorkedInput[] {
  const rows: WorkedInput[] = [];
  for (const [name, one] of found) {
    const input = calculator.inputs[name];
    const source = plan.inputs[name];
    if (source === undefined) continue;
    const unit = input !== undefined && 'unit' in input ? input.unit : '-';
    rows.push({
      name,
      label: input?.label ?? name,
      source,
      from: one.from,
      value: one.value?.text ?? null,
      unit: one.value?.given.unit ?? unit,
      assumed: one.assumed,
      lacks: problems.get(name) ?? one.lacks.map(({ text }) => text).join('; '),
      part: one.part ?? one.lacks.find(({ part }) => part !== null)?.part ?? null,
    });
  }
  return [...rows, ...unbound(calculator, new Set(found.keys()))];
}

/** Inputs that nothing is bound to, but that the way asked for needs, or fills in by itself. */
function unbound(calculator: Calculator, bound: ReadonlySet<string>): WorkedInput[] {
  let names: readonly string[];
  let needs: readonly string[];
  try {
    const mode = pickMode(calculator, bound);
    names = inputsOfMode(calculator, mode);
    needs = mode.needs;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    names = [error.field ?? ''];
    needs = names;
  }
  return names.flatMap((name) => {
    const input = calculator.inputs[name];
    if (bound.has(name) || input === undefined) return [];
    const given = 'default' in input ? input.default : undefined;
    if (given === undefined && !needs.includes(name)) return [];
    const unit = 'unit' in input ? input.unit : '-';
    const text =
      given === undefined
        ? null
        : 'dimension' in input && typeof given === 'number'
          ? formatMeasure({ value: given, unit }, input.dimension, 6)
          : String(given);
    const because = 'defaultSource' in input && input.defaultSource !== undefined ? `: ${input.defaultSource}` : '';
    return [
      {
        name,
        label: input.label,
        source: {
          from: 'typed',
          given: { value: given ?? '', ...('unit' in input ? { unit } : {}) },
          source: '',
        } as const,
        from: given === undefined ? 'nothing is bound' : `assumed by ${calculator.id}${because}`,
        value: text,
        unit,
        assumed: given !== undefined,
        lacks: given === undefined ? `something bound to ${input.label.toLowerCase()}` : '',
        part: null,
      },
    ];
  });
}
