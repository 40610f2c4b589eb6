/** A room for command lines in a folder of their own, with everything said kept. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { createHost } from '../../../core/procedures/host.ts';
import { runCommand } from '../../../electron/command/main.ts';

const today = '2026-11-25';
export const sample = (name: string): string => join(import.meta.dirname, '../../samples', name);

interface Answer {
  readonly exit: number;
  readonly out: string;
  readonly error: string;
  /** What `--json` put on stdout. */
  readonly json: () => unknown;
  /** What `--json` put on stderr. */
  readonly refusal: () => { code: string; message: string; field?: string; accepted?: string };
}

/** A folder that goes away with the test, and command lines run in it at a fixed time. */
export function openRoom(): { readonly folder: string; run: (...args: string[]) => Promise<Answer> } {
  const folder = mkdtempSync(join(tmpdir(), 'hoistday-command-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const now = (): Date => new Date(`${today}T10:00:00`);
  return {
    folder,
    async run(...args) {
      const out: string[] = [];
      const error: string[] = [];
      const exit = await runCommand(args, {
        cwd: folder,
        now,
        out: (text) => out.push(text),
        error: (text) => error.push(text),
        env: {},
        openHost: (home) => createHost({ folder: home, allowAnyPath: true, now, log: (line) => error.push(line) }),
        workbookFolder: () => folder,
      });
      return {
        exit,
        out: out.join('\n'),
        error: error.join('\n'),
        json: () => JSON.parse(out.join('\n')) as unknown,
        refusal: () => JSON.parse(error.join('\n')) as ReturnType<Answer['refusal']>,
      };
    },
  };
}

/** Runs a verb that opens no workbook and reads this text with `--in -`. */
export async function runOnText(verb: string, text: string, ...args: string[]) {
  const out: string[] = [];
  const error: string[] = [];
  const exit = await runCommand([verb, '--in', '-', ...args], {
    cwd: '/',
    now: () => new Date(0),
    out: (line) => out.push(line),
    error: (line) => error.push(line),
    env: {},
    workbookFolder: () => '/',
    openHost: () => {
      throw new Error(`${verb} opens no workbook.`);
    },
    input: () => text,
  });
  return { exit, out: out.join('\n'), error: error.join('\n') };
}

/** A room with an empty workbook, or with the builder's own list brought in. */
export async function openWorkbookRoom(listed = false): Promise<ReturnType<typeof openRoom>> {
  const room = openRoom();
  await room.run('new', 'drover.hoistday', '--build', 'Drover six', '--started', '2026-01-02');
  if (listed) await room.run('import', 'drover.hoistday', sample('drover-parts.csv'));
  return room;
}
