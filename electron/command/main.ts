import { parseArgs } from 'node:util';
import type { RefusalData } from '../../core/contract/common.ts';
import { createHost } from '../../core/procedures/host.ts';
import { Refusal } from '../../core/refusal.ts';
import { workbookFolder } from '../folders.ts';
import { helpFor, helpForAll } from './help.ts';
import { exitCodes, type Given, type Room, UsageError, type Verb } from './verb.ts';
import { verbs } from './verbs.ts';

const everyVerb = { help: { type: 'boolean', short: 'h' }, json: { type: 'boolean' } } as const;

function read(verb: Verb, args: readonly string[]): Given & { readonly help: boolean } {
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({
      args: verb.dashedNames === true ? args.map((arg) => (/^-\s*\d/.test(arg) ? ` ${arg}` : arg)) : [...args],
      options: { ...verb.options, ...everyVerb },
      allowPositionals: true,
      strict: true,
    });
  } catch (error) {
    throw new UsageError(unreadable(verb, error));
  }
  const values = parsed.values as Record<string, string | boolean | readonly string[] | undefined>;
  const given = {
    positionals: parsed.positionals,
    text: (name: string) => (typeof values[name] === 'string' ? values[name] : undefined),
    list: (name: string) => (Array.isArray(values[name]) ? (values[name] as readonly string[]) : []),
    flag: (name: string) => values[name] === true,
    help: values['help'] === true,
  };
  const [fewest, most] = verb.takes;
  if (!given.help && (given.positionals.length < fewest || given.positionals.length > most)) {
    throw new UsageError(
      `${verb.name} takes ${verb.usage}; here ${given.positionals.length === 1 ? 'is 1 name' : `are ${given.positionals.length} names`}.`,
    );
  }
  return given;
}

/** Why the options could not be read, in words that say what would be. */
function unreadable(verb: Verb, error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  const code = (error as { code?: unknown } | null)?.code;
  const named = /'(-[^' ]*)/.exec(text)?.[1];
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION' && named !== undefined) {
    const known = [...Object.keys(verb.options), ...Object.keys(everyVerb)].map((name) => `--${name}`);
    return `${verb.name} has no option ${named}. It has: ${known.join(', ')}.`;
  }
  if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE' && named !== undefined) {
    const name = (/--([\w-]+)/.exec(text)?.[1] ?? '') as keyof typeof verb.options;
    return verb.options[name]?.type === 'string'
      ? `--${name} needs a value after it, such as --${name}=VALUE.`
      : `${named} takes no value.`;
  }
  return text;
}

/** What the command line has for a file that is known already; other ways in have a button. */
const againHint = 'To bring it in again all the same, add --again.';

/** What went wrong as the one refusal shape, if it was one. */
function refusalIn(error: unknown): RefusalData | undefined {
  if (error instanceof Refusal) {
    const { code, message, field, accepted, detail } = error;
    return {
      code,
      message,
      ...(field === undefined ? {} : { field }),
      ...(accepted === undefined ? {} : { accepted }),
      detail: detail as RefusalData['detail'],
    };
  }
  const data =
    (error as { code?: unknown; data?: RefusalData } | null)?.code === 'REFUSED'
      ? (error as { data: RefusalData }).data
      : undefined;
  return data;
}

/**
 * Runs one command line and returns its exit code: see `exitCodes`. Answers go to `room.out`, errors to `room.error`,
 * as JSON in both places with `--json`.
 */
export async function runCommand(args: readonly string[], room: Room): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    const about = verbs.find((verb) => verb.name === rest[0]);
    room.out(about === undefined ? helpForAll(verbs) : helpFor(about));
    return name === undefined ? exitCodes.usage : exitCodes.done;
  }
  const verb = verbs.find((one) => one.name === name);
  const json = rest.includes('--json') || verb?.speaksJson?.(rest) === true;
  const complain = (code: number, text: string, data: unknown): number => {
    room.error(json ? JSON.stringify(data) : text);
    return code;
  };
  if (verb === undefined) {
    const text = `There is no verb “${name}”. One of: ${verbs.map((one) => one.name).join(', ')}.`;
    return complain(exitCodes.usage, text, { code: 'usage', message: text });
  }
  try {
    const given = read(verb, rest);
    if (given.help) {
      room.out(verb.helpAbout?.(given) ?? helpFor(verb));
      return exitCodes.done;
    }
    const said = await verb.run(given, room);
    room.out(json ? JSON.stringify(said.data, null, 2) : said.lines.join('\n'));
    return said.exit ?? exitCodes.done;
  } catch (error) {
    if (error instanceof UsageError) {
      return complain(exitCodes.usage, `${error.message}\nSee: ${verb.name} --help`, {
        code: 'usage',
        message: error.message,
      });
    }
    const refusal = refusalIn(error);
    if (refusal !== undefined) {
      const accepted = refusal.accepted === undefined ? '' : `\nAccepted: ${refusal.accepted}`;
      const hint = refusal.code === 'file-known' && !rest.includes('--again') ? `\n${againHint}` : '';
      return complain(verb.refusedExit ?? exitCodes.refused, `${refusal.message}${accepted}${hint}`, refusal);
    }
    const text = error instanceof Error ? error.message : String(error);
    return complain(exitCodes.failed, `The program failed: ${text}`, { code: 'failed', message: text });
  }
}

if (import.meta.main) {
  const now = (): Date => new Date();
  // Whoever reads the answer may stop half-way (`| head`): that is no failure of ours.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  process.exitCode = await runCommand(process.argv.slice(2), {
    cwd: process.env['INIT_CWD'] ?? process.cwd(),
    now,
    out: (text) => process.stdout.write(`${text}\n`),
    error: (text) => process.stderr.write(`${text}\n`),
    env: process.env,
    openHost: (folder) =>
      createHost({ folder, allowAnyPath: true, now, log: (line) => process.stderr.write(`${line}\n`) }),
    workbookFolder: () => workbookFolder(),
  });
}
