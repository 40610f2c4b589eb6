import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const project = path.resolve(import.meta.dirname, '..', '..', '..');

/** The program's own source text, by path: what runs in the window and in its main process. */
function sources(...folders: string[]): [string, string][] {
  return folders.flatMap((folder) =>
    readdirSync(path.join(project, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|tsx|html)$/.test(name))
      .map((name): [string, string] => {
        const file = path.join(folder, name);
        return [file, readFileSync(path.join(project, file), 'utf8')];
      }),
  );
}

const desktop = sources('electron/desktop');
const page = sources('renderer');
const all = [...desktop, ...page];

/** Patterns that must not occur, with an example each that proves the pattern catches it. */
const forbidden: [string, RegExp, string][] = [
  ['item 2: Node in the page', /nodeIntegration\w*:\s*(?!\s|false\b)/, 'nodeIntegration: value'],
  ['item 3: no isolation', /contextIsolation:\s*(?!\s|true\b)/, 'contextIsolation: false'],
  ['item 4: no sandbox', /\bsandbox:\s*(?!\s|true\b)|no-sandbox/, 'sandbox: false'],
  ['item 6: web security off', /webSecurity:\s*(?!\s|true\b)/, 'webSecurity: !x'],
  ['item 8: insecure content', /allowRunningInsecureContent/, 'allowRunningInsecureContent: true'],
  ['item 9: experimental features', /experimentalFeatures/, 'experimentalFeatures: true'],
  ['item 10: Blink features and switches', /[a-z]BlinkFeatures|appendSwitch/, 'enableBlinkFeatures: "x"'],
  ['item 11: webview', /<webview|webviewTag:\s*(?!\s|false\b)/, '<webview src="x">'],
  ['item 18: files as pages, a way around the policy', /loadFile|['"`]file:|bypassCSP/, "loadURL('file:x')"],
  ['inline scripts and text run as code', /\beval\(|new Function\(|<script>(?!<)/, 'eval(x)'],
  ['a fork of the main process', /child_process/, "import 'node:child_process'"],
  ['a crash report that is sent', /crashReporter|submitURL|autoUpdater/, 'crashReporter.start'],
];

describe('the desktop sources', () => {
  it.each(forbidden)('%s does not occur', (_what, pattern, example) => {
    expect(pattern.test(example)).toBe(true);
    for (const [file, text] of all) expect(pattern.test(text), file).toBe(false);
  });

  it('item 1: names no address on the internet', () => {
    const addresses = all.flatMap(([file, text]) =>
      [...text.matchAll(/['"`(](https?|wss?):\/\/[\w.-]+/g)].map((match) => `${file}: ${match[0]}`),
    );
    // A name of an XML vocabulary is no address that anything is fetched from.
    expect(addresses.filter((found) => !found.endsWith('http://www.w3.org'))).toEqual([]);
  });

  const holding = (pattern: RegExp) =>
    desktop.filter(([, text]) => pattern.test(text)).map(([file]) => path.basename(file));

  it('items 15 and 17: leaves the program, and listens to the page, in one place each', () => {
    expect(holding(/openExternal\(/)).toEqual(['external-link.ts']);
    expect(holding(/ipcMain\.(handle|on|once)/)).toEqual(['page-verbs.ts']);
    expect(holding(/new BrowserWindow\(/)).toEqual(['window.ts']);
    expect(holding(/loadURL\(/)).toEqual(['window.ts']);
  });

  it('item 20: only the preload has the bridge to the main process, and imports nothing else that runs', () => {
    expect(holding(/ipcRenderer/)).toEqual(['preload.ts']);
    const [, preload = ''] = desktop.find(([file]) => file.endsWith('preload.ts')) ?? [];
    const imports = preload.match(/^import (?!type ).*$/gm);
    expect(imports).toEqual(["import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';"]);
  });

  it('item 16: Electron is pinned, and is not older than half a year when this test is read with care', () => {
    const { devDependencies } = JSON.parse(readFileSync(path.join(project, 'package.json'), 'utf8')) as {
      devDependencies: Record<string, string>;
    };
    expect(devDependencies['electron']).toMatch(/^\d+\.\d+\.\d+$/);
    const lock = JSON.parse(readFileSync(path.join(project, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, { version: string }>;
    };
    expect(lock.packages['node_modules/electron']?.version).toBe(devDependencies['electron']);
  });
});
