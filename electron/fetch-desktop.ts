import { spawn } from 'node:child_process';
import { lookup } from 'node:dns/promises';
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import path from 'node:path';
import type { MachineFacts } from './launch-decision.ts';

const day = 24 * 60 * 60 * 1000;
const nameTimeout = 2_000;
const fetchTimeout = 3 * 60 * 1000;
const usualSource = 'https://github.com';

const markerOf = (projectFolder: string) =>
  path.join(projectFolder, 'node_modules', '.cache', 'hoistday', 'desktop-not-fetched');

/**
 * Whether it is worth asking the desktop package for its program: not after a try that failed in the last day, not when
 * the environment forbids it, and not when the place it comes from has no address from here.
 */
export async function fetchingOf(projectFolder: string, now: Date): Promise<MachineFacts['fetching']> {
  if (process.env['CI'] || process.env['ELECTRON_SKIP_BINARY_DOWNLOAD']) return 'not-wanted';
  const tried = statSync(markerOf(projectFolder), { throwIfNoEntry: false })?.mtimeMs;
  if (tried !== undefined && now.getTime() - tried < day) return 'tried';
  const connected = Object.values(networkInterfaces()).some((found) => found?.some((address) => !address.internal));
  if (!connected) return 'offline';
  const source = process.env['ELECTRON_MIRROR'] ?? process.env['npm_config_electron_mirror'] ?? usualSource;
  const name = URL.parse(source)?.hostname ?? '';
  const found = await Promise.race([
    lookup(name).then(
      () => true,
      () => false,
    ),
    new Promise<boolean>((resolve) => setTimeout(resolve, nameTimeout, false).unref()),
  ]);
  return found ? 'possible' : 'offline';
}

/** Runs the desktop package's own downloader, which checks what it fetched. True if the program is there afterwards. */
export async function fetchDesktop(projectFolder: string): Promise<boolean> {
  const installer = path.join(projectFolder, 'node_modules', 'electron', 'install.js');
  const fetched = await new Promise<boolean>((resolve) => {
    const child = spawn(process.execPath, [installer], { stdio: 'ignore', timeout: fetchTimeout });
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
  });
  if (!fetched) {
    const marker = markerOf(projectFolder);
    mkdirSync(path.dirname(marker), { recursive: true });
    writeFileSync(marker, '');
  }
  return fetched;
}
