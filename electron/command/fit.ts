import { fit as judge } from '../../core/fit/fit.ts';
import { formatPort } from '../../core/fit/format.ts';
import { measuresOf } from '../../core/fit/measuring.ts';
import type { ParseContext } from '../../core/fit/parse/outcome.ts';
import { parsePort } from '../../core/fit/parse.ts';
import { dashKinds, type PortRole, portRoles } from '../../core/fit/port.ts';
import { Refusal } from '../../core/refusal.ts';
import { exitCodes, type Given, UsageError, type Verb } from './verb.ts';

function roleOf(given: Given): PortRole | undefined {
  const said = given.text('role');
  if (said === undefined) return undefined;
  const role = portRoles.find((one) => one === said);
  if (role === undefined) throw new UsageError(`--role is one of ${portRoles.join(', ')}, not “${said}”.`);
  return role;
}

const families = [...dashKinds, 'hose'] as const;

function familyOf(given: Given): ParseContext['family'] {
  const said = given.text('family');
  if (said === undefined) return undefined;
  const family = families.find((one) => one === said);
  if (family === undefined) throw new UsageError(`--family is one of ${families.join(', ')}, not “${said}”.`);
  return family;
}

/** The port, or a refusal that says how to write it. */
function needPort(typed: string, context: ParseContext, field: string) {
  const read = parsePort(typed, context);
  if (read.ok) return read;
  throw new Refusal('bad-input', `The port “${typed.trim()}” can't be read: ${read.message}. Nothing was changed.`, {
    field,
    accepted: read.write.join(', or '),
    detail: { reason: read.message, write: read.write },
  });
}

const roleHelp = ['--role ROLE', `what the joint is for: ${portRoles.join(', ')}; fluid if left out`] as const;

export const parse: Verb = {
  name: 'parse',
  summary: 'read a port as people write it, and show how it is kept',
  usage: 'PORT',
  options: { role: { type: 'string' }, family: { type: 'string' } },
  optionHelp: [roleHelp, ['--family FAMILY', `what a dash size alone belongs to: ${families.join(', ')}`]],
  examples: ['parse "AN -6"', 'parse "M 14 x 1,25" --json', 'parse "dash 6" --family orb'],
  takes: [1, 1],
  dashedNames: true,
  refusedExit: exitCodes.usage,
  async run(given) {
    const [typed = ''] = given.positionals;
    const role = roleOf(given);
    const family = familyOf(given);
    const context = { ...(role === undefined ? {} : { role }), ...(family === undefined ? {} : { family }) };
    const { port, canonical, warnings, notes } = needPort(typed, context, 'port');
    const measures = measuresOf(port);
    const { diameterMm, pitchMm, howToMeasure } = measures;
    return {
      lines: [
        canonical,
        ...notes.map((note) => `Read as: ${note}.`),
        ...warnings.map((one) => `Look again: ${one}.`),
        ...(diameterMm === undefined
          ? []
          : [`Diameter ${diameterMm} mm${pitchMm === undefined ? '' : `, pitch ${pitchMm} mm`}.`]),
        `How to measure: ${howToMeasure}`,
      ],
      data: { typed: typed.trim(), canonical, warnings, notes, measures, port },
    };
  },
};

const verdictWords = {
  mates: 'Fits.',
  adapter: 'Does not fit directly; an adapter joins them.',
  lookalike: 'Do not assemble: they only look alike.',
  no: 'Does not fit.',
  unknown: 'Not known yet.',
} as const;

function pressureOf(given: Given): number | undefined {
  const said = given.text('pressure');
  if (said === undefined) return undefined;
  const pressure = Number(said);
  if (said.trim() === '' || !Number.isFinite(pressure) || pressure < 0) {
    throw new UsageError(`--pressure is a gauge pressure in bar, such as --pressure=3, not “${said}”.`);
  }
  return pressure;
}

export const fit: Verb = {
  name: 'fit',
  summary: 'whether two ports join, what it needs, what looks alike, which adapter',
  usage: 'PORT PORT',
  options: { role: { type: 'string' }, medium: { type: 'string' }, pressure: { type: 'string' } },
  optionHelp: [
    roleHelp,
    ['--medium TEXT', 'what flows through it, such as fuel: raises the severity of a wrong joint'],
    ['--pressure BAR', 'gauge pressure in bar, for gases'],
  ],
  examples: [
    'fit "M14x1.5 male" "M14x1.25 female" --role fluid --json',
    'fit "JIC -6 female" "1/4 NPT female"',
    'fit "JIC -8 male" "SAE45 -8 female" --medium fuel',
  ],
  takes: [2, 2],
  dashedNames: true,
  refusedExit: exitCodes.usage,
  async run(given) {
    const [first = '', second = ''] = given.positionals;
    const role = roleOf(given) ?? 'fluid';
    const medium = given.text('medium');
    const pressureBar = pressureOf(given);
    const one = needPort(first, { role }, 'first port');
    const other = needPort(second, { role }, 'second port');
    const found = judge(one.port, other.port, {
      role,
      ...(medium === undefined ? {} : { medium }),
      ...(pressureBar === undefined ? {} : { pressureBar }),
    });
    const warnings = [one, other].flatMap((read) => read.warnings.map((warning) => `${read.canonical}: ${warning}`));
    const lines = [
      `${one.canonical} with ${other.canonical}: ${verdictWords[found.verdict]}`,
      `Why: ${found.reason}.`,
      ...(found.consequence === undefined ? [] : [`What happens: ${found.consequence}`]),
      ...(found.howToTell === undefined ? [] : [`How to tell: ${found.howToTell}.`]),
      ...found.missing.map((missing) => `Say: ${missing}.`),
      ...found.needs.map((need) => `Needs: ${need}.`),
      ...found.adapters.map(({ text }) => `Adapter: ${text}.`),
      ...found.notes.map((note) => `Note: ${note}`),
      ...warnings.map((warning) => `Look again: ${warning}.`),
      `Caution: ${found.caution}`,
      `Source: ${found.source}.`,
    ];
    const adapters = found.adapters.map((adapter) => ({
      ...adapter,
      pieces: adapter.pieces.map((piece) => ({ ...piece, ends: piece.ends.map(formatPort) })),
    }));
    return { lines, data: { ...found, adapters, role, ports: [one.canonical, other.canonical], warnings } };
  },
};
