import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { Refusal } from '../core/refusal.ts';
import { type BrowserShell, startBrowserShell } from './browser/shell.ts';
import { fetchDesktop, fetchingOf } from './fetch-desktop.ts';
import { workbookFolder } from './folders.ts';
import type { HostLike } from './host-like.ts';
import {
  decideLaunch,
  electronBinary,
  hasDisplay,
  type LaunchChoices,
  launchChoices,
  launchHelp,
  type MachineFacts,
} from './launch-decision.ts';
import { openInBrowser } from './open-link.ts';

const projectFolder = path.resolve(import.meta.dirname, '..');
const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};
const log = (line: string): void => {
  process.stderr.write(`${line}\n`);
};
const now = () => new Date();
/** A window that ends sooner than this with an error never came up. */
const cameUp = 5_000;

async function launch(): Promise<void> {
  const asked = launchChoices(process.argv.slice(2));
  if (asked.help) return say(launchHelp);
  const folder = folderOf(asked);
  const choices = asked.demo && asked.file === null ? { ...asked, file: await demoIn(folder) } : asked;
  const display = hasDisplay(process.platform, process.env);
  const wished = choices.browser || !display;
  const facts: MachineFacts = {
    platform: process.platform,
    display,
    administrator: process.platform === 'linux' && process.getuid?.() === 0,
    binary: binary(),
    fetching: wished || binary() !== null ? 'not-wanted' : await fetchingOf(projectFolder, now()),
  };
  let decision = decideLaunch(facts, choices);
  if (decision.kind === 'fetch') {
    say('Fetching the program for the desktop window (about 120 MB, once) …');
    await fetchDesktop(projectFolder);
    decision = decideLaunch({ ...facts, binary: binary(), fetching: 'tried' }, choices);
  }
  if (decision.kind === 'desktop') {
    const failed = await desktop(decision.binary, folder, choices.file);
    if (failed === null) return;
    decision = { kind: 'browser', why: failed };
  }
  await browser(choices, folder, display, decision.kind === 'browser' ? decision.why : null);
}

/** A workbook that is named lies in the folder that the browser's page may open files of. */
function folderOf({ folder, file }: LaunchChoices): string {
  if (folder !== null) return path.resolve(folder);
  return file === null ? workbookFolder() : path.dirname(path.resolve(file));
}

/** The demo workbook of a folder, made by the acts that a person would do when it isn't there yet. */
async function demoIn(folder: string): Promise<string | null> {
  const { createHost } = await import('../core/procedures/host.ts');
  mkdirSync(folder, { recursive: true });
  const host = createHost({ folder, allowAnyPath: false, now, log });
  try {
    const { open } = await host.client.workbook.demo();
    return open?.path ?? null;
  } finally {
    host.close();
  }
}

function binary(): string | null {
  return electronBinary(projectFolder, process.env['ELECTRON_OVERRIDE_DIST_PATH']);
}

/** Runs the desktop window until it is closed. Answers why it didn't come up, or null if it did. */
function desktop(program: string, folder: string, file: string | null): Promise<string | null> {
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env;
  const began = performance.now();
  return new Promise((resolve) => {
    const child = spawn(program, [projectFolder, ...(file === null ? [] : [path.resolve(file)])], {
      stdio: 'inherit',
      env: { ...env, HOISTDAY_FOLDER: folder },
    });
    child.once('error', () => resolve('its program does not run here'));
    child.once('exit', (code) => {
      const early = performance.now() - began < cameUp;
      if (code !== 0 && early) return resolve('its program stopped at once');
      process.exitCode = code ?? 1;
      resolve(null);
    });
  });
}

/** Serves the workbook to this machine's browser until it is told to stop. */
async function browser(choices: LaunchChoices, folder: string, display: boolean, why: string | null): Promise<void> {
  // Loaded here: the desktop window has the host in a process of its own.
  const { createHost } = await import('../core/procedures/host.ts');
  mkdirSync(folder, { recursive: true });
  const host = createHost({ folder, allowAnyPath: false, now, log });
  const shell = await startShell(host, choices).catch((failure: unknown) => {
    host.close();
    throw failure;
  });
  if (why !== null) say(`No desktop window here (${why}): the workbook opens in your browser.`);
  const opened = choices.open && (await openInBrowser(process.platform, display, shell.openingUrl()));
  say(`${opened ? 'If it does not, open this link' : 'Open this link in a browser on this machine'}: ${shell.url}`);
  say('Keep this running while you work; Ctrl+C closes the workbook.');
  const stop = () => {
    void shell.close().then(() => {
      host.close();
      process.exit(0);
    });
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}

async function startShell(host: HostLike, { file, port }: LaunchChoices): Promise<BrowserShell> {
  if (file !== null) host.openFile(path.resolve(file));
  return startBrowserShell({ host, rendererFolder: path.join(projectFolder, 'dist', 'renderer'), port, log });
}

try {
  await launch();
} catch (failure) {
  if (!(failure instanceof Refusal)) throw failure;
  const { message, field, accepted } = failure;
  process.stderr.write(`${field === undefined ? '' : `${field}: `}${message}\n`);
  if (accepted !== undefined) process.stderr.write(`Accepted: ${accepted}\n`);
  process.exitCode = 1;
}
