/** Kinds of part in field terms, the facts that each may say, and the words of a description that name the kind. */
import { type FactTerm, factTerms, plainKey } from './fact-terms.ts';

export interface PartKind {
  readonly kind: string;
  readonly label: string;
  readonly facts: readonly FactTerm[];
  /** A description that starts or reads like this is of the kind; null where words can't tell. */
  readonly words: RegExp | null;
  /** Words that say it is something for such a part, or near it. */
  readonly unless: RegExp | null;
}

const around =
  /seal|gasket|bolt|stud|kit|clip|clamp|bracket|rail|sensor|relay|sender|washer|spring|cap\b|work|grind|machin|test|balance|shroud|harness|connector/i;

function kind(name: string, facts: string, words: RegExp | null, unless: RegExp | null = around): PartKind {
  const terms = facts.split(', ').map((key) => {
    const found = factTerms.get(key);
    if (found === undefined) throw new Error(`The kind ${name} names ${key}, which is no fact.`);
    return found;
  });
  return { kind: name, label: name.charAt(0).toUpperCase() + name.slice(1), facts: terms, words, unless };
}

const line = 'inside diameter, outside diameter, wall thickness, dash size, length, working pressure';
const shells = 'bearing bore, journal, least clearance, most clearance';
const wire = 'wire length, cross-section, wire gauge, wire rating, fuse';

export const partKinds: readonly PartKind[] = [
  kind('injector', 'injector flow, rated pressure, dead time, resistance', /\binjectors?\b/i),
  kind('fuel pump', 'pump flow, pump pressure, second pump flow, second pump pressure, current', /\bfuel pump\b/i),
  kind('fuel hose', line, /\bfuel (hose|line|pipe)\b/i, /filter|fitting|\bend\b|clip|clamp|kit|return/i),
  kind('fuel pressure regulator', 'base pressure, dash size', /\bfuel pressure regulator\b/i),
  kind('hose', line, /\bhose\b/i, /\bend\b|clip|clamp|fitting|barb|drain/i),
  kind('head gasket', 'gasket bore, gasket thickness', /\bhead gasket\b/i, null),
  kind('gasket', 'gasket bore, gasket thickness, diameter', /\bgasket\b/i, null),
  kind(
    'piston',
    'bore, piston diameter, piston dish, compression height, pin diameter, least clearance, most clearance',
    /\bpistons?\b/i,
    /ring|\bwork\b|balance|squirter|tool/i,
  ),
  kind(
    'piston ring set',
    'bore, gap to bore, ring gap',
    /\b(piston )?ring set\b|\bpiston rings?\b/i,
    /tool|expander|compressor|pliers/i,
  ),
  kind(
    'crankshaft',
    'stroke, main journal, big end journal',
    /\bcrankshaft\b|^crank\b(?! (seal|damper|sprocket|bolt))/i,
  ),
  kind(
    'connecting rod',
    'rod length, pin diameter, big end journal, bearing bore',
    /\bconnecting rods?\b|\bcon-?rods?\b/i,
  ),
  kind('block', 'bore, cylinders, deck clearance, main journal', /\bengine block\b|^block\b/i),
  kind('cylinder head', 'chamber volume', /\bcylinder head\b/i),
  kind('camshaft', 'lift, duration, lobe separation, cam teeth', /\bcamshaft\b/i),
  kind('main bearing set', shells, /\bmain bearing/i, /\bcap\b|stud|bolt/i),
  kind('big end bearing set', shells, /\b(big end|rod|connecting rod) bearing/i, /\bcap\b|stud|bolt/i),
  kind(
    'turbocharger',
    'compressor inducer, turbine flange, most airflow, most pressure ratio, compressor efficiency, oil flow',
    /\bturbocharger\b|^turbo\b(?! (oil|water|drain|feed|blanket|stud|line|inlet|outlet))/i,
    /gasket|stud|bolt|kit|blanket|flange|line|drain|feed/i,
  ),
  kind(
    'intercooler',
    'effectiveness, outside diameter, inside diameter',
    /\b(intercooler|charge-?(air )?cooler)\b/i,
    /hose|pipe|bracket|clamp/i,
  ),
  kind(
    'pressure sensor',
    'full scale, least reading, thread',
    /\b(manifold|boost|charge|map)( air)? pressure sensor\b|\bmap sensor\b/i,
    null,
  ),
  kind('thermostat', 'opening temperature', /\bthermostat\b/i, /housing|gasket|plate|seal|cover/i),
  kind('radiator', 'rated heat, coolant flow', /\bradiator\b/i, /\bcap\b|hose|bracket|mount|fan/i),
  kind('pressure cap', 'opening pressure', /\b(radiator|pressure) cap\b/i, null),
  kind('water pump', 'coolant flow', /\bwater pump\b/i, /gasket|bolt|pulley|seal/i),
  kind('timing belt', 'belt teeth, crank teeth, cam teeth', /\b(timing|cam) belt\b/i, /tensioner|idler|cover|pulley/i),
  kind('belt', 'belt teeth, ribs, length', /\b(drive|ribbed|v-?) ?belt\b/i, /tensioner|idler|cover|pulley/i),
  kind('pulley', 'diameter, ribs, crank teeth, cam teeth', /\bpulley\b/i, /bolt|seal/i),
  kind(
    'bolt',
    'thread, nominal diameter, pitch, bolt length, strength class, bolt strength, hole strength, engagement',
    /\b(bolts?|studs?|screws?)\b/i,
    /kit|tool|clamp|extractor/i,
  ),
  kind('fuel pump wire', wire, /\bfuel pump (wire|feed|cable)\b/i, null),
  kind('fan wire', wire, /\bfan (wire|feed|cable)\b/i, null),
  kind('wire', wire, /\b(wire|cable)\b/i, /kit|brush|tie|sleeve|stripper|bracket/i),
  kind('fuse', 'fuse', /\bfuse\b/i, /box|holder/i),
  kind('fan', 'current, diameter', /\b(electric|cooling|radiator) fan\b/i, /shroud|relay|wire|cable|feed|switch/i),
  kind('charge pipe', line, /\b(charge|intercooler|boost) pipe\b/i, /clamp|boss|sensor/i),
  kind('exhaust pipe', line, /\b(exhaust pipe|exhaust tube|downpipe)\b/i, /flange|clamp|gasket|hanger|sensor/i),
  kind('oil drain', `${line}, slope`, /\boil drain\b/i, /plug|pan|bolt|flange gasket/i),
  kind('oil feed', line, /\boil feed\b/i, /restrictor|fitting/i),
  kind('oil pump', 'oil flow', /\boil pump\b/i),
];

const byKind = new Map(partKinds.map((one) => [one.kind, one]));

export const partKindNamed = (name: string): PartKind | undefined => byKind.get(plainKey(name));
