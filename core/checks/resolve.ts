/** Finds the value behind a source: on a part, on the target sheet, on a measuring sheet, typed, or worked out. */
import type { Given } from '../calculators/calculator.ts';
import { findCalculator } from '../calculators/index.ts';
import { type Answer, runCalculator } from '../calculators/run.ts';
import { Refusal } from '../refusal.ts';
import { formatMeasure, toSI } from '../units/measure.ts';
import { factTerms, plainKey } from './fact-terms.ts';
import { type FigurePlan, figures } from './figures.ts';
import { applyRule, ruleDimensions, ruleNeeds } from './rules.ts';
import type { CheckContext, CheckPart, CheckSource, PartStanding } from './source.ts';
import { targetTerm } from './target-terms.ts';
import { type CheckValue, givenFor, measureValue, problemOf, siOf, siValue } from './values.ts';

export interface Lack {
  readonly text: string;
  readonly part: number | null;
}

export interface Found {
  readonly value: CheckValue | null;
  readonly from: string;
  readonly part: number | null;
  readonly assumed: boolean;
  readonly lacks: readonly Lack[];
  /** It is another one at the other end of the fuel range. */
  readonly blend: boolean;
}

export type Blend = 'least' | 'most';

/** Runs a calculator, or gives what it answered to the same inputs before. */
export type Run = (calculator: string, given: Readonly<Record<string, Given>>) => Answer;

/** Results are kept by what went in, so that a check is worked out again only where something changed. */
export function runKept(kept: Map<string, Answer | Refusal>, most = 4000): Run {
  return (id, given) => {
    const key = `${id} ${JSON.stringify(Object.entries(given).sort(([a], [b]) => (a < b ? -1 : 1)))}`;
    let answer = kept.get(key);
    if (answer === undefined) {
      const calculator = findCalculator(id);
      if (calculator === undefined)
        throw new Refusal('not-found', `There is no calculator ${id}. Nothing was changed.`, { field: 'calculator' });
      try {
        answer = runCalculator(calculator, { inputs: given });
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        answer = error;
      }
      if (kept.size >= most) kept.delete(kept.keys().next().value as string);
      kept.set(key, answer);
    }
    if (answer instanceof Refusal) throw answer;
    return answer;
  };
}

const rank: Readonly<Record<PartStanding, number>> = { fitted: 0, 'in hand': 1, 'on order': 2, needed: 3 };

/**
 * Of the parts of a kind the one that counts: what is fitted, else in hand, else on order, else needed; of several that
 * stand alike the first on the list that says the fact, else the first.
 */
export function partThatCounts(parts: readonly CheckPart[], kind: string, key: string): CheckPart | undefined {
  const ofKind = parts
    .filter((part) => part.kind === kind)
    .sort((a, b) => rank[a.standing] - rank[b.standing] || a.id - b.id);
  const best = ofKind[0]?.standing;
  const level = ofKind.filter(({ standing }) => standing === best);
  return level.find((part) => factOf(part, key) !== undefined) ?? level[0];
}

const factOf = (part: CheckPart, key: string) =>
  part.facts.find((one) => plainKey(one.key) === plainKey(key) && one.value.trim() !== '');

const nothing = { part: null, assumed: false, blend: false } as const;
const lack = (text: string, from: string, part: number | null = null): Found => ({
  ...nothing,
  value: null,
  from,
  part,
  lacks: [{ text, part }],
});

/** Resolves the sources of one build at one end of its fuel range. */
export class Resolver {
  private readonly known = new Map<string, Found>();
  private readonly working = new Set<string>();
  private readonly context: CheckContext;
  private readonly blend: Blend;
  private readonly run: Run;

  constructor(context: CheckContext, blend: Blend, run: Run) {
    this.context = context;
    this.blend = blend;
    this.run = run;
  }

  find(source: CheckSource): Found {
    switch (source.from) {
      case 'fact':
        return this.fact(source);
      case 'target':
        return this.target(source.target);
      case 'measurement':
        return this.measurement(source);
      default: {
        const { value, unit } = source.given;
        const text = `${Array.isArray(value) ? value.join(', ') : String(value)}${unit === undefined || unit === '' || unit === '-' ? '' : ` ${unit}`}`;
        if (typeof value === 'string' && value.trim() === '') return lack('a value to be typed on the check', 'typed');
        const from = source.source === '' ? 'typed on the check' : `typed on the check: ${source.source}`;
        return {
          ...nothing,
          value: { given: { value, ...(unit === undefined ? {} : { unit }) }, dimension: null, text },
          from,
          lacks: [],
        };
      }
    }
  }

  private fact({ fact: key, part: id, partKind }: CheckSource & { readonly from: 'fact' }): Found {
    const part =
      id === null ? partThatCounts(this.context.parts, partKind, key) : this.context.parts.find((one) => one.id === id);
    if (part === undefined) {
      return id === null
        ? lack(`a part of the kind ${partKind}, for its ${key}`, `${key} of a ${partKind}`)
        : lack(`${key} of part line ${id}, which is not on the list`, `${key} of part line ${id}`);
    }
    const from = `${part.description} (${part.standing})`;
    const said = factOf(part, key);
    if (said === undefined) return lack(`${key} of ${part.description}`, from, part.id);
    const term = factTerms.get(plainKey(key));
    if (term === undefined || term.dimension === 'word') {
      const text = `${said.value}${said.unit === '' ? '' : ` ${said.unit}`}`;
      const given = { value: said.value, ...(said.unit === '' ? {} : { unit: said.unit }) };
      return { ...nothing, value: { given, dimension: null, text }, from, part: part.id, lacks: [] };
    }
    return this.read(said.value, said.unit, term.dimension, key, from, part.id);
  }

  private read(
    value: string,
    unit: string,
    dimension: CheckValue['dimension'] & string,
    name: string,
    from: string,
    part: number | null,
  ): Found {
    try {
      return { ...nothing, value: measureValue(value, unit, dimension, name), from, part, lacks: [] };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return lack(`${name} that can be read: ${problemOf(error).replace(/\.$/, '')}`, from, part);
    }
  }

  private target(name: string): Found {
    const key = plainKey(name);
    const kept = this.known.get(key);
    if (kept !== undefined) return kept;
    if (this.working.has(key)) return lack(`${name}, which would be worked out from itself`, name);
    this.working.add(key);
    const found = this.targetOrFigure(key, name);
    this.working.delete(key);
    this.known.set(key, found);
    return found;
  }

  private targetOrFigure(key: string, name: string): Found {
    const line = this.context.targets.find((one) => plainKey(one.name) === key && one.value.trim() !== '');
    const term = targetTerm(name);
    if (line !== undefined) {
      const from = `target sheet: ${line.name}`;
      if (term !== undefined) return this.read(line.value, line.unit, term.dimension, line.name, from, null);
      const text = `${line.value}${line.unit === '' ? '' : ` ${line.unit}`}`;
      const given = { value: line.value, ...(line.unit === '' ? {} : { unit: line.unit }) };
      return { ...nothing, value: { given, dimension: null, text }, from, lacks: [] };
    }
    const plan = Object.hasOwn(figures, key) ? figures[key] : undefined;
    if (plan !== undefined) return this.figure(plan, key);
    if (term?.assumed !== undefined) {
      const { value, source } = term.assumed;
      return { ...this.read(value, term.unit, term.dimension, name, `assumed: ${source}`, null), assumed: true };
    }
    return lack(`${term?.name ?? name} on the target sheet`, `target sheet: ${name}`);
  }

  private figure(plan: FigurePlan, name: string): Found {
    if ('first' in plan) return this.first(plan.first);
    if ('atLeast' in plan) return this.atEnd(plan.atLeast, plan.atMost);
    if ('rule' in plan) return this.rule(plan, name);
    const calculator = findCalculator(plan.calculator);
    const given: Record<string, Given> = {};
    const found: Found[] = [];
    for (const [input, source] of Object.entries(plan.inputs)) {
      const one = this.find(source);
      found.push(one);
      const declared = calculator?.inputs[input];
      if (one.value === null || declared === undefined) continue;
      try {
        given[input] = givenFor(one.value, declared, () => this.barometer(), input);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        return { ...lack(problemOf(error), name, one.part), blend: one.blend };
      }
    }
    const blend = found.some((one) => one.blend);
    const lacks = found.flatMap((one) => one.lacks);
    if (lacks.length > 0) return { ...nothing, value: null, from: name, lacks, blend };
    const part = found.find((one) => one.part !== null)?.part ?? null;
    try {
      const output = this.run(plan.calculator, given).outputs[plan.output];
      const declared = calculator?.outputs[plan.output];
      if (output === undefined || declared === undefined || !('unit' in declared) || typeof output.value !== 'number') {
        return lack(`${name}, which ${plan.calculator} doesn't give`, name);
      }
      const measure = { value: output.value, unit: output.unit };
      const value = { given: measure, dimension: declared.dimension, text: formatMeasure(measure, declared.dimension) };
      const assumed = found.some((one) => one.assumed);
      return {
        value,
        from: `worked out with ${plan.calculator} from ${sourcesOf(found)}`,
        part,
        assumed,
        lacks: [],
        blend,
      };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return { ...lack(`${name}: ${problemOf(error)}`, name, part), blend };
    }
  }

  /** The first that has a value; where none has, what each lacks, in one piece. */
  private first(sources: readonly CheckSource[]): Found {
    const tried: Found[] = [];
    for (const source of sources) {
      const one = this.find(source);
      if (one.value !== null && !one.assumed) return one;
      tried.push(one);
    }
    const assumed = tried.find(({ value }) => value !== null);
    if (assumed !== undefined) return assumed;
    const part = tried.flatMap((one) => one.lacks).find((one) => one.part !== null)?.part ?? null;
    const text = [...new Set(tried.flatMap((one) => one.lacks.map((single) => single.text)))].join(', or ');
    return {
      ...nothing,
      value: null,
      from: tried[0]?.from ?? '',
      part,
      lacks: [{ text, part }],
      blend: tried.some(({ blend }) => blend),
    };
  }

  /** One end of the fuel range; where only one end is filled in, that one stands for both. */
  private atEnd(least: CheckSource, most: CheckSource): Found {
    const [low, high] = [this.find(least), this.find(most)];
    if (low.value === null || high.value === null)
      return low.value !== null ? low : high.value !== null ? high : this.first([least, most]);
    const blend = low.value.text !== high.value.text;
    return { ...(this.blend === 'least' ? low : high), blend };
  }

  private rule(plan: Extract<FigurePlan, { readonly rule: unknown }>, name: string): Found {
    const found = new Map(Object.entries(plan.of).map(([key, source]) => [key, this.find(source)]));
    const all = [...found.values()];
    const blend = all.some((one) => one.blend);
    const needs: readonly string[] = ruleNeeds[plan.rule];
    const lacks = needs.flatMap((key) => found.get(key)?.lacks ?? []);
    if (lacks.length > 0) return { ...nothing, value: null, from: name, lacks, blend };
    const part = all.find((one) => one.part !== null && one.value !== null)?.part ?? null;
    try {
      const si: Record<string, number> = {};
      for (const [key, { value }] of found) {
        const dimension = ruleDimensions[key];
        if (value !== null && dimension !== undefined) si[key] = siOf(value, dimension, name);
      }
      const made = applyRule(plan.rule, si, String(found.get('thread')?.value?.given.value ?? ''));
      if (!Number.isFinite(made.si)) return lack(`${name}, which comes out beyond any number`, name, part);
      const from = `${sourcesOf(all.filter(({ value }) => value !== null))}${made.says === '' ? '' : `; ${made.says}`}`;
      return {
        value: siValue(made.si, made.dimension, made.unit),
        from,
        part,
        assumed: all.some((one) => one.assumed),
        lacks: [],
        blend,
      };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      return { ...lack(problemOf(error).replace(/\.$/, ''), name, part), blend };
    }
  }

  private measurement({ sheet, figure }: CheckSource & { readonly from: 'measurement' }): Found {
    const read = this.context.measurements.get(sheet);
    if (read === undefined) return lack(`measuring sheet ${sheet}, which is not there`, `measuring sheet ${sheet}`);
    const from = `measured: ${read.title}, ${figure}`;
    const value = read.figures[figure];
    if (value === undefined || !Number.isFinite(value)) return lack(`readings on “${read.title}” (${figure})`, from);
    const text = `${Number(value.toPrecision(6))} ${read.unit}`;
    return { ...nothing, value: { given: { value, unit: read.unit }, dimension: null, text }, from, lacks: [] };
  }

  /** Air pressure of the build in Pa. */
  barometer(): number {
    const { value } = this.target('ambient pressure');
    const standard = toSI(101.325, 'kPa', 'pressureAbsolute');
    return value === null ? standard : siOf(value, 'pressureAbsolute', 'ambient pressure');
  }
}

/** "bore 86 mm (piston set, fitted), …" in few words: where the values came from, each place once. */
function sourcesOf(found: readonly Found[]): string {
  const places = [...new Set(found.map(({ from }) => from))].filter((from) => !from.startsWith('worked out'));
  const shown = places.slice(0, 3).join(', ');
  return places.length > 3 ? `${shown} and ${places.length - 3} more` : shown === '' ? 'other figures' : shown;
}
