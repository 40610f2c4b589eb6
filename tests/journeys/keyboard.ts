import type { Locator, Page } from 'playwright-core';

const mostTabs = 160;

const hasFocus = (target: Locator): Promise<boolean> =>
  target.evaluate((element) => element === document.activeElement).catch(() => false);

/** Presses Tab until the focus is on the target, as somebody without a mouse would; throws where it never comes by. */
export async function tabTo(page: Page, target: Locator, { back = false } = {}): Promise<void> {
  await target.waitFor();
  for (let pressed = 0; pressed < mostTabs; pressed += 1) {
    if (await hasFocus(target)) return;
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
  }
  throw new Error(`${mostTabs} presses of Tab didn't bring the focus to ${target}.`);
}

/** Goes to a button or link by Tab and presses Enter. */
export async function press(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('Enter');
}

/** Goes to a field by Tab and writes over what stands in it. */
export async function write(page: Page, target: Locator, text: string): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
}

/** Goes to a box by Tab and ticks it with the space bar. */
export async function tick(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('Space');
}

/** Goes to a screen by the search (Ctrl+K), and waits until its heading has the focus. */
export async function goTo(page: Page, screen: string): Promise<void> {
  await page.keyboard.press('ControlOrMeta+K');
  const search = page.getByRole('dialog').getByRole('combobox');
  await search.waitFor();
  await page.keyboard.type(`Go to ${screen}`);
  await page
    .getByRole('option', { name: `Go to ${screen}` })
    .first()
    .waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await page.getByRole('heading', { level: 1, name: screen, exact: true }).waitFor();
}
