import type { ParseArgsOptionsConfig } from 'node:util';
import type { Host } from '../../core/procedures/host.ts';

/** How a command ended; scripts may rely on these. */
export const exitCodes = {
  done: 0,
  /** The workbook understood and will not: see stderr. Nothing was changed. */
  refused: 1,
  /** The command line can't be read: see stderr. */
  usage: 2,
  /** `verify` found differences, or `review --strict` found something in the way. */
  found: 3,
  /** The program failed. */
  failed: 4,
} as const;

export interface Given {
  readonly positionals: readonly string[];
  readonly text: (name: string) => string | undefined;
  readonly list: (name: string) => readonly string[];
  readonly flag: (name: string) => boolean;
}

export interface Room {
  /** Folder that relative paths start from. */
  readonly cwd: string;
  readonly now: () => Date;
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Folder for workbooks when none is named. */
  readonly workbookFolder: () => string;
  /** A host over any file; closed by the caller. */
  readonly openHost: (folder: string) => Host;
  /** All of standard input, for verbs that read it; without this, the process's own. */
  readonly input?: () => string;
}

/** What a verb has to say: plain lines for people, data for `--json`. */
export interface Said {
  readonly lines: readonly string[];
  readonly data: unknown;
  readonly exit?: number;
}

export interface Verb {
  readonly name: string;
  /** One line for the list of verbs. */
  readonly summary: string;
  /** Positional arguments, as shown in the usage line. */
  readonly usage: string;
  readonly options: ParseArgsOptionsConfig;
  /** What each option does, in the order shown. */
  readonly optionHelp: readonly (readonly [string, string])[];
  readonly examples: readonly string[];
  /** Fewest and most positional arguments. */
  readonly takes: readonly [number, number];
  /** Whether these arguments are answered (and refused) in JSON even without `--json`. */
  readonly speaksJson?: (args: readonly string[]) => boolean;
  /** Whether names may begin with a dash and a digit (`-6AN`), which would be taken for options otherwise. */
  readonly dashedNames?: boolean;
  /** Exit code of a refusal, where scripts of this verb rely on another than `refused`. */
  readonly refusedExit?: number;
  /** Help on what the positional arguments name, where there is more to say than of the verb. */
  readonly helpAbout?: (given: Given) => string | undefined;
  run(given: Given, room: Room): Promise<Said>;
}

/** Thrown for a command line that can't be read. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}
