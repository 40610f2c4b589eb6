import { existsSync } from 'node:fs';

const usual = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Where a Chromium is on this machine; HOISTDAY_CHROMIUM goes first. Undefined when there is none. */
export function chromiumPath(): string | undefined {
  return [process.env['HOISTDAY_CHROMIUM'] ?? '', ...usual].find((path) => path !== '' && existsSync(path));
}

/** Flags under which a test's Chromium is alone with the page: no sandbox (root), no network of its own. */
export const chromiumFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
