import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { Refusal } from '../core/refusal.ts';

/** What the person asked for on the command line. */
export interface LaunchChoices {
  readonly open: boolean;
  readonly browser: boolean;
  readonly port: number;
  readonly file: string | null;
  readonly folder: string | null;
  /** Start with the demo workbook open; it is made when it isn't there yet. */
  readonly demo: boolean;
  readonly help: boolean;
}

export const launchHelp = `Starts Hoistday.

  --file <path>     open this workbook
  --demo            open the demo workbook, made in the workbook folder when it isn't there
  --folder <path>   keep workbooks in this folder
  --browser         show the workbook in the browser even where a desktop window is to be had
  --port <number>   the browser's port on this machine, 1024 to 65535 (a free one if left out)
  --no-open         print the link and leave the opening to you
  --help            these lines`;

const accepted = 'npm start -- --help lists them';

/** Reads the command line. Throws a `Refusal` that names the argument. */
export function launchChoices(args: readonly string[]): LaunchChoices {
  const { values, positionals } = parsed(args);
  if (positionals.length > 1) throw new Refusal('bad-input', 'Only one workbook can be opened. Nothing was changed.');
  return {
    open: values.open ?? true,
    browser: values.browser ?? false,
    port: portOf(values.port),
    file: values.file ?? positionals[0] ?? null,
    folder: values.folder ?? null,
    demo: values.demo ?? false,
    help: values.help ?? false,
  };
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      allowNegative: true,
      options: {
        open: { type: 'boolean' },
        browser: { type: 'boolean' },
        port: { type: 'string' },
        file: { type: 'string' },
        folder: { type: 'string' },
        demo: { type: 'boolean' },
        help: { type: 'boolean' },
      },
    });
  } catch (failure) {
    const [reason = 'An argument can’t be read'] = failure instanceof Error ? failure.message.split('. ') : [];
    throw new Refusal('bad-input', `${reason}. Nothing was changed.`, { field: 'arguments', accepted });
  }
}

function portOf(text: string | undefined): number {
  if (text === undefined) return 0;
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port === 0 || (port >= 1024 && port <= 65_535)) return port;
  throw new Refusal('bad-input', `--port ${text} is not a port that can be used. Nothing was changed.`, {
    field: 'port',
    accepted: 'a whole number from 1024 to 65535, or none for a free one',
  });
}

/** What is known about the machine before anything is started. */
export interface MachineFacts {
  readonly platform: NodeJS.Platform;
  /** A desktop that a window can be shown on. */
  readonly display: boolean;
  /** Started by the machine's administrator account (Linux), under which the window's sandbox doesn't run. */
  readonly administrator: boolean;
  /** The desktop program on disk, or null. */
  readonly binary: string | null;
  /** Whether fetching it was tried (in this start, or without success in the last day), or can't work. */
  readonly fetching: 'possible' | 'tried' | 'offline' | 'not-wanted';
}

/** Which shell is started, and for the browser why. */
export type LaunchDecision =
  | { readonly kind: 'desktop'; readonly binary: string }
  | { readonly kind: 'fetch' }
  | { readonly kind: 'browser'; readonly why: string | null };

/** Decides between the desktop window, fetching the program for it, and the browser. */
export function decideLaunch(facts: MachineFacts, choices: Pick<LaunchChoices, 'browser'>): LaunchDecision {
  if (choices.browser) return { kind: 'browser', why: null };
  if (!facts.display) return { kind: 'browser', why: 'there is no display' };
  if (facts.administrator) return { kind: 'browser', why: 'it does not run as the administrator' };
  if (facts.binary !== null) return { kind: 'desktop', binary: facts.binary };
  const reasons = {
    possible: null,
    tried: 'its program could not be fetched',
    offline: 'its program is not on this machine and there is no connection to fetch it',
    'not-wanted': 'its program is not on this machine',
  } as const;
  const why = reasons[facts.fetching];
  return why === null ? { kind: 'fetch' } : { kind: 'browser', why };
}

/** True if a window can be shown: always taken for granted except where Unix says whether there is a display. */
export function hasDisplay(platform: NodeJS.Platform, env: Readonly<Record<string, string | undefined>>): boolean {
  if (platform === 'win32' || platform === 'darwin') return true;
  return Boolean(env['DISPLAY'] || env['WAYLAND_DISPLAY']);
}

/**
 * The desktop program on disk, where its package keeps it: `path.txt` names it under `dist`. The package itself is not
 * imported, because that would start a download and throw without one.
 */
export function electronBinary(projectFolder: string, override: string | undefined): string | null {
  const home = path.join(projectFolder, 'node_modules', 'electron');
  try {
    const name = readFileSync(path.join(home, 'path.txt'), 'utf8');
    const binary = path.join(override ?? path.join(home, 'dist'), name);
    return existsSync(binary) ? binary : null;
  } catch {
    return null;
  }
}
