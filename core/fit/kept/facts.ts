/**
 * Where the values of a declared fit come from: what was typed for the fit itself, then the facts and ports of the part
 * line that the thing is, or the engine's own ports, then the target sheet.
 */
import { plainKey } from '../../checks/fact-terms.ts';
import { toSI } from '../../units/measure.ts';
import { parseMeasure } from '../../units/parse-measure.ts';
import type { Facts, FactValue } from '../checks/check.ts';
import { readPort } from './joined.ts';
import type { AskedPath } from './paths.ts';
import { tryFitValue } from './read-value.ts';
import type { FitContext, FitPart, FitValue, KeptPort } from './records.ts';
import { isStanding, ownerOf } from './sides.ts';

/** A path with what it was given and where from; `from` is empty while it has nothing. */
export interface AnsweredPath extends AskedPath {
  readonly value: string;
  readonly from: string;
  readonly fact: FactValue | undefined;
}

type Bound = Readonly<Record<string, number>>;

/** Facts of parts that say what a shipped fit asks for under another name. */
const alsoCalled: Readonly<Record<string, readonly string[]>> = {
  'gasket.bore': ['gasket bore', 'bore'],
  'spark_plug.port': ['thread'],
  'head_bolt.port': ['thread'],
  'bolt.property_class': ['strength class'],
  'thermostat.opens_at': ['opening temperature'],
  'timing_belt.teeth': ['belt teeth', 'teeth'],
  'flywheel.bolts': ['bolts', 'bolt holes'],
  'rod.width': ['big end width', 'width'],
};

/** Things whose thread is on the outside, so that a part's fact needn't say it. */
const malePaths = new Set(['spark_plug.port', 'head_bolt.port']);

const words = (text: string): string => plainKey(text.replaceAll(/[_-]+/g, ' '));

const split = (path: string): readonly [thing: string, attribute: string] => {
  const at = path.indexOf('.');
  return at < 0 ? ['', path] : [path.slice(0, at), path.slice(at + 1)];
};

const factText = ({ value, unit }: { value: string; unit: string }): string => `${value} ${unit}`.trim();

/** A span of two facts of a pressure sensor. */
function sensorRange(part: FitPart, asked: AskedPath): { value: string; fact: FactValue } | undefined {
  if (asked.path !== 'sensor.range') return undefined;
  const named = (key: string) => part.facts.find((fact) => plainKey(fact.key) === key);
  const [least, most] = [named('least reading'), named('full scale')];
  if (most === undefined) return undefined;
  const value = `${least === undefined ? 'up to' : `${factText(least)} abs to`} ${factText(most)} abs`;
  const fact = tryFitValue(asked, value, '');
  return fact === undefined ? undefined : { value, fact };
}

function fromPart(part: FitPart, asked: AskedPath): Omit<AnsweredPath, keyof AskedPath> | undefined {
  const [, attribute] = split(asked.path);
  for (const key of [words(attribute), ...(alsoCalled[asked.path] ?? [])]) {
    const found = part.facts.find((fact) => plainKey(fact.key) === key);
    if (found === undefined) continue;
    const male =
      asked.sort === 'port' && malePaths.has(asked.path) && !/\b(male|female)\b/i.test(found.value) ? ' male' : '';
    const fact = tryFitValue(asked, `${found.value}${male}`, found.unit);
    if (fact === undefined) continue;
    return { value: `${factText(found)}${male}`, from: `fact “${found.key}” of ${part.description}`, fact };
  }
  const range = sensorRange(part, asked);
  return range === undefined ? undefined : { ...range, from: `facts of ${part.description}` };
}

/** A port is meant by its name, with or without the word port; a part's only port by "port" alone. */
function portNamed(ports: readonly KeptPort[], attribute: string): KeptPort | undefined {
  const bare = (text: string): string => words(text).replace(/\s*\b(port|pattern)$/, '');
  const wanted = bare(attribute);
  if (wanted === '') return ports.length === 1 ? ports[0] : undefined;
  return ports.find(({ name }) => words(name) === words(attribute)) ?? ports.find(({ name }) => bare(name) === wanted);
}

function fromPorts(bound: number | undefined, asked: AskedPath, context: FitContext) {
  if (asked.sort !== 'port') return undefined;
  const [thing, attribute] = split(asked.path);
  const ports = [...context.ports.values()].filter(
    (port) =>
      isStanding(port, context) &&
      (bound === undefined ? port.part === null && words(port.place) === words(thing) : port.part === bound),
  );
  const port = portNamed(ports, attribute);
  if (port === undefined || !readPort(port.designation, asked.role).ok) return undefined;
  return {
    value: port.designation,
    from: `port “${port.name}” of ${ownerOf(port, context)}`,
    fact: port.designation,
  };
}

function fromTargets(asked: AskedPath, { targets }: FitContext) {
  const [thing, attribute] = split(asked.path);
  if (thing !== 'plan') return undefined;
  const line = targets.find(({ name }) => plainKey(name) === words(attribute));
  if (line === undefined) return undefined;
  // The target sheet keeps its pressures over the air outside, but for the air itself.
  const gauge = asked.sort === 'pressure' && !/abs|gauge/i.test(line.unit) ? ' gauge' : '';
  const unit = `${line.unit}${gauge}`.trim();
  const fact = tryFitValue(asked, line.value, unit);
  if (fact === undefined) return undefined;
  return { value: `${line.value} ${unit}`.trim(), from: `target sheet: ${line.name}`, fact };
}

/** Every path with its value. A typed one goes before what parts, ports and the target sheet say. */
export function answerPaths(
  asked: readonly AskedPath[],
  values: readonly FitValue[],
  things: Bound,
  context: FitContext,
): readonly AnsweredPath[] {
  return asked.map((one) => {
    const typed = values.find(({ path }) => path === one.path);
    if (typed !== undefined) {
      const fact = tryFitValue(one, typed.value, typed.unit);
      return { ...one, value: factText(typed), from: 'typed for this fit', fact };
    }
    const [thing] = split(one.path);
    const bound = things[thing];
    const part = bound === undefined ? undefined : context.parts.get(bound);
    // What was dropped from the list says nothing any more.
    if (bound !== undefined && part?.listed !== true) return { ...one, value: '', from: '', fact: undefined };
    const found =
      (part === undefined ? undefined : fromPart(part, one)) ??
      fromPorts(bound, one, context) ??
      fromTargets(one, context);
    return found === undefined ? { ...one, value: '', from: '', fact: undefined } : { ...one, ...found };
  });
}

/** The answers as facts that a check reads. */
export function factsOf(answers: readonly AnsweredPath[]): Facts {
  const facts: Record<string, FactValue | undefined> = {};
  for (const { path, fact } of answers) {
    if (fact === undefined) continue;
    const steps = path.split('.');
    const last = steps.pop() ?? '';
    let at = facts;
    for (const step of steps) {
      const next = Object.hasOwn(at, step) ? at[step] : undefined;
      const inner = (typeof next === 'object' && next !== null ? next : {}) as Record<string, FactValue | undefined>;
      at[step] = inner;
      at = inner;
    }
    at[last] = fact;
  }
  return facts;
}

/** The air outside in bar, where the target sheet states it. */
export function ambientBarOf({ targets }: FitContext): number | undefined {
  const line = targets.find(({ name }) => plainKey(name) === 'ambient pressure');
  if (line === undefined) return undefined;
  const { value, unit } = parseMeasure(line.value, 'pressureDifference', {
    unit: line.unit.replace(/\s*abs\w*$/i, ''),
  });
  return toSI(value, unit, 'pressureDifference') / 1e5;
}
