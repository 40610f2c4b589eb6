/** Which part line is the thing that a shipped fit speaks of, told by the line's kind or by its words. */
import { proposeKind } from '../../checks/proposals.ts';

interface NamedPart {
  readonly id: number;
  readonly description: string;
  /** What somebody said that it is; empty when nobody did. */
  readonly kind: string;
}

interface Thing {
  /** Kinds of part that the thing is. */
  readonly kinds: readonly string[];
  /** Words of a description, for things that have no kind of their own. */
  readonly words?: RegExp;
  /** Words of what goes with the thing and isn't it. */
  readonly unless?: RegExp;
}

const goesWith = /\b(gasket|bolts?|studs?|seal|kit|sensor|cover|bracket|clamp|hose|tool|spacer)\b/i;

/** Things that one part line is; a joint, a place or the engine as a whole is none. */
const things: Readonly<Record<string, Thing>> = {
  head: { kinds: ['cylinder head'] },
  block: { kinds: ['block'] },
  head_bolt: { kinds: [], words: /\bhead (bolts?|studs?)\b/i, unless: /\b(washers?|tool|cover)\b/i },
  gasket: { kinds: ['head gasket'] },
  sensor: { kinds: ['pressure sensor'] },
  injector: { kinds: ['injector'] },
  loom: { kinds: [], words: /\b(wiring )?(loom|harness)\b/i, unless: /\b(tape|tie|sleeve|clip|conduit)s?\b/i },
  rod: { kinds: ['connecting rod'] },
  crank: { kinds: ['crankshaft'] },
  turbo: { kinds: ['turbocharger'] },
  manifold: { kinds: [], words: /\b(exhaust|turbo|turbine) manifold\b/i, unless: goesWith },
  flywheel: { kinds: [], words: /\bflywheel\b/i, unless: goesWith },
  spark_plug: { kinds: [], words: /\bspark plugs?\b/i, unless: /\b(leads?|wires?|boots?|socket|tool|gap)\b/i },
  bolt: { kinds: ['bolt'] },
  pulley: { kinds: ['pulley'] },
  belt: { kinds: ['belt'] },
  timing_belt: { kinds: ['timing belt'] },
  throttle_body: { kinds: [], words: /\bthrottle bod(y|ies)\b/i, unless: goesWith },
  plenum: { kinds: [], words: /\b(plenum|intake manifold)\b/i, unless: goesWith },
  thermostat: { kinds: ['thermostat'] },
  fuel_hose: { kinds: ['fuel hose'] },
};

const isThing = ({ kinds, words, unless }: Thing, { description, kind }: NamedPart): boolean => {
  if (kinds.includes(kind === '' ? proposeKind(description).kind : kind)) return true;
  return words?.test(description) === true && unless?.test(description) !== true;
};

/** Part lines that could be the thing; undefined for a thing that no single part line is. */
export function partsForThing<Part extends NamedPart>(
  thing: string,
  parts: readonly Part[],
): readonly Part[] | undefined {
  const known = things[thing];
  return known === undefined ? undefined : parts.filter((part) => isThing(known, part));
}
