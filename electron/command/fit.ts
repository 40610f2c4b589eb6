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
    return {
      lines: [canonical, ...notes.map((note) => `Read as: ${note}.`), ...warnings.map((one) => `Look again: ${one}.`)],
      data: { typed: typed.trim(), canonical, warnings, notes, port },
    };
  },
};
