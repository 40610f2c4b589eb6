import { spawn } from 'node:child_process';

/** The program that opens an address in the person's browser, with its arguments; null where there is none to count on. */
export function opener(
  platform: NodeJS.Platform,
  display: boolean,
  url: string,
): readonly [string, ...string[]] | null {
  if (platform === 'darwin') return ['open', url];
  if (platform === 'win32') return ['rundll32', 'url.dll,FileProtocolHandler', url];
  return display ? ['xdg-open', url] : null;
}

/** Tries to open an address in the browser. False if it can't be tried or the opener isn't there. */
export function openInBrowser(platform: NodeJS.Platform, display: boolean, url: string): Promise<boolean> {
  const command = opener(platform, display, url);
  if (command === null) return Promise.resolve(false);
  const [program, ...args] = command;
  return new Promise((resolve) => {
    const child = spawn(program, args, { stdio: 'ignore', detached: true });
    child.once('error', () => resolve(false));
    child.once('spawn', () => resolve(true));
    child.unref();
  });
}
