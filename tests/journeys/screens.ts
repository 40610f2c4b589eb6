import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Every screen by the words of the navigation and its address. */
export const screens = {
  Start: '#/',
  Parts: '#/parts',
  Orders: '#/orders',
  Money: '#/money',
  Buying: '#/buying',
  Plan: '#/plan',
  Forecast: '#/forecast',
  'What if': '#/what-if',
  'Hoist check': '#/hoist-check',
  Checks: '#/checks',
  Fit: '#/fit',
  'Two ports tried': '#/fit?a=M14x1.5+male&b=M14x1.25+female&d=13.9&p=1.5',
  'Declared fits': '#/fit?view=declared',
  'Ports of the build': '#/fit?view=ports',
  Plumbing: '#/plumbing',
  'Drawing of the lines': '#/plumbing?view=drawing',
  'What the lines need': '#/plumbing?view=needs',
  'Cut list': '#/plumbing?view=cuts',
  Bench: '#/bench',
  Journal: '#/journal',
  Calculators: '#/calculators?id=D3',
  Lists: '#/lists',
  'Bring in': '#/bring-in',
  Settings: '#/settings',
} as const;

/** Goes to an address of the workbook and waits until the page there stands still. */
export async function show(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    window.location.hash = to;
  }, hash);
  await settled(page);
}

/** Waits until the page has its name and nothing on it is still on its way. */
export async function settled(page: Page): Promise<void> {
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  const busy = page.locator('.loading, [aria-busy="true"], .mantine-Loader-root');
  let before: string | null = null;
  await expect
    .poll(
      async () => {
        if ((await busy.count()) > 0) return false;
        const now = await page.locator('main').textContent();
        const same = now === before;
        before = now;
        return same;
      },
      { timeout: 60_000, interval: 150 },
    )
    .toBe(true);
}

/** What is wider than its place: the page, or a window on it. A wide table that scrolls in a frame of its own isn't. */
export async function sideways(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [document.documentElement, ...document.querySelectorAll<HTMLElement>('[role="dialog"]')]
      .filter((place) => place.scrollWidth > place.clientWidth)
      .map((place) => `${place.tagName} ${place.className}: ${place.scrollWidth} in ${place.clientWidth}`),
  );
}
