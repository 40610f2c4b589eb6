import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { createHost, type Host } from '../../core/procedures/host.ts';
import { startBrowserShell } from '../../electron/browser/shell.ts';
import { chromiumFlags, chromiumPath } from '../chromium-path.ts';

const projectFolder = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** The day that every journey happens on, unless it asks for another. */
export const journeyDay = '2026-11-20';

/** The page as it was built; HOISTDAY_RENDERER names another folder than dist/renderer. */
function rendererFolder(): string {
  const folder = process.env['HOISTDAY_RENDERER'] ?? join(projectFolder, 'dist', 'renderer');
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error(`There is no built page in ${folder}. Run npm run build, then the journeys again.`);
  }
  return folder;
}

export interface PageOptions {
  readonly width?: number;
  readonly height?: number;
  readonly night?: boolean;
  readonly bench?: boolean;
  /** A screen that is touched. */
  readonly touch?: boolean;
}

export interface OpenShell {
  readonly host: Host;
  readonly folder: string;
  /** A page of the shell, signed in, in a window of its own (its own storage too, unless `context` is handed over). */
  open(options?: PageOptions): Promise<Page>;
  /** One more page in the window of another: both are signed in and share their storage. */
  beside(page: Page): Promise<Page>;
  /** Sets the host's clock, which stands still otherwise. */
  clock(at: Date): void;
  /** What the pages complained of so far: console errors, uncaught errors, breaches of the page's policy. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/**
 * A host over a temporary folder, the browser shell that serves it and a Chromium. The host's clock stands at noon of
 * `today`, so that figures that hang on the day stay what they are.
 */
export async function openShell({ today = journeyDay }: { readonly today?: string } = {}): Promise<OpenShell> {
  const renderer = rendererFolder();
  const program = chromiumPath();
  if (program === undefined) throw new Error('The journeys need Chromium: set HOISTDAY_CHROMIUM to its path.');
  const folder = mkdtempSync(join(tmpdir(), 'hoistday-journey-'));
  let now = new Date(`${today}T12:00:00`);
  const host = createHost({ folder, allowAnyPath: false, now: () => now });
  const shell = await startBrowserShell({ host, rendererFolder: renderer });
  const browser: Browser = await chromium.launch({ executablePath: program, args: chromiumFlags });
  const complaints: string[] = [];
  const contexts: BrowserContext[] = [];

  const pageIn = async (context: BrowserContext): Promise<Page> => {
    const page = await context.newPage();
    page.setDefaultTimeout(20_000);
    listen(page, complaints);
    await page.goto(shell.url);
    await page.getByRole('main').waitFor();
    return page;
  };
  return {
    host,
    folder,
    complaints,
    clock: (at) => {
      now = at;
    },
    async open({ width = 1440, height = 900, night = false, bench = false, touch = false } = {}) {
      const context = await browser.newContext({
        viewport: { width, height },
        locale: 'en-GB',
        reducedMotion: 'reduce',
        hasTouch: touch,
      });
      contexts.push(context);
      const look = JSON.stringify({ theme: night ? 'night' : 'day', density: bench ? 'bench' : 'desk' });
      await context.addInitScript((text) => {
        if (localStorage.getItem('hoistday.look') === null) localStorage.setItem('hoistday.look', text);
        addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
          console.error(`page policy: ${effectiveDirective} ${blockedURI}`),
        );
      }, look);
      return pageIn(context);
    },
    beside: (page) => pageIn(page.context()),
    async close() {
      for (const context of contexts) await context.close();
      await browser.close();
      await shell.close();
      host.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function listen(page: Page, complaints: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(`uncaught: ${error.message}`));
}

/** A picture of the page, only when HOISTDAY_PICTURES names a folder to keep pictures in. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['HOISTDAY_PICTURES'];
  if (folder === undefined || !existsSync(folder)) return;
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: false });
}
