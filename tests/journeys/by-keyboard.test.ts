import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { goTo, press, tabTo, tick, write } from './keyboard.ts';
import { type OpenShell, openShell, picture } from './open-shell.ts';

/** The whole way of a part, from somebody's own list to the engine, without a mouse. Each step goes on from the last. */
const list = join(dirname(fileURLToPath(import.meta.url)), '..', 'samples', 'drover-parts.csv');

let shell: OpenShell;
let page: Page;
let build = 0;

const client = () => shell.host.client;
const button = (name: string | RegExp) => page.getByRole('button', { name });
const blockers = async (): Promise<number> => (await client().gate.review({ build })).blockers.length;

async function part(description: string) {
  const { columns, rows } = await client().parts.rows({ build, from: 0, count: 1000 });
  const at = (name: string) => columns.indexOf(name);
  const row = rows.find((cells) => cells[at('description')] === description);
  const figure = (name: string) => Number(row?.[at(name)]);
  return { id: figure('id'), standing: row?.[at('standing')], figure };
}

/** Finds a line of the parts list by its words, goes into the list and selects it. */
async function select(description: string): Promise<void> {
  await goTo(page, 'Parts');
  await write(page, page.getByRole('searchbox', { name: 'Find in Parts' }), description);
  await page.getByText('1 of 111 lines').waitFor();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Space');
  await page.getByRole('checkbox', { name: `Select ${description}`, checked: true }).waitFor();
}

/** Chooses an act out of one of the menus below the list, and does it as the form proposes. */
async function act(menu: string, item: RegExp, submit: RegExp): Promise<void> {
  await press(page, button(menu));
  await tabToItem(item);
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await press(page, dialog.getByRole('button', { name: submit }));
  await dialog.waitFor({ state: 'detached' });
}

/** Menus are walked with the arrow keys. */
async function tabToItem(name: RegExp): Promise<void> {
  const item = page.getByRole('menuitem', { name });
  await item.waitFor();
  for (let pressed = 0; pressed < 30; pressed += 1) {
    if (await item.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`The arrows didn't reach ${item}.`);
}

const answerOf = (text: string | RegExp) => page.getByRole('main').getByText(text).first();

beforeAll(async () => {
  shell = await openShell();
  page = await shell.open();
});
afterAll(async () => {
  await shell.close();
});

describe('from an own list to fitted parts, on the keyboard alone', () => {
  test('makes a workbook in an empty folder', async () => {
    await press(page, button('New workbook'));
    await page.getByRole('dialog', { name: 'New workbook' }).waitFor();
    await page.keyboard.type('Evening book');
    await write(page, page.getByRole('textbox', { name: 'First build' }), '1978 Tarnwell Drover');
    await page.keyboard.press('ControlOrMeta+Enter');
    await page.getByRole('heading', { name: 'First steps' }).waitFor();
    const [first] = await client().builds.list();
    expect(first?.name).toBe('1978 Tarnwell Drover');
    build = first?.id ?? 0;
    await answerOf(/^Nothing is in this build yet/).waitFor();
  });

  test('brings a list in, answering what its words mean', async () => {
    await press(page, page.getByRole('main').getByRole('link', { name: /^Bring in the list/ }));
    await page.getByLabel(/^Choose a file/).setInputFiles(list);
    await answerOf(/142 rows and 10 columns/).waitFor();
    await press(page, button('On to the columns'));
    await press(page, button('On to the words'));
    const makes = page.getByRole('combobox', { name: 'What “make” under “Got it?” means' });
    await tabTo(page, makes);
    await page.keyboard.type('Still');
    await expect
      .poll(() => makes.evaluate((box: HTMLSelectElement) => box.selectedOptions[0]?.label))
      .toBe('Still to be decided');
    await press(page, button('On to every row'));
    await answerOf(/^142 rows: 111 part lines, 10 headings, 10 totals/).waitFor();
    await picture(page, 'bring-in-every-row');
    await press(page, button('On to bringing in'));
    await press(page, button('Bring in 111 lines'));
    const report = page.getByRole('heading', { level: 1, name: /drover-parts\.csv/ });
    await report.waitFor();
    // The button that had the focus is gone; the keyboard goes on from the report's name.
    await expect.poll(() => report.evaluate((heading) => heading === document.activeElement)).toBe(true);
    expect((await client().parts.rows({ build, from: 0, count: 1 })).total).toBe(111);
  });

  test('orders two of the parts that are still to get', async () => {
    await goTo(page, 'Orders');
    await press(page, button('New order'));
    const vendor = page.getByRole('combobox', { name: 'Vendor' });
    await tabTo(page, vendor);
    await page.keyboard.type('Pellow');
    await page.getByRole('option', { name: 'Pellow Fasteners' }).waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    const show = button(/^Show the other \d+ too$/);
    if (await show.isVisible()) await press(page, show);
    await tick(page, page.getByRole('checkbox', { name: 'hose end -6 straight' }));
    await tick(page, page.getByRole('checkbox', { name: 'T bolt clamps 2.5' }));
    await write(page, page.getByRole('textbox', { name: 'Shipping' }), '9.00');
    // 6 at 15.60 and 14 at 4.60 with 9.00 for freight: 93.60 + 64.40 + 9.00.
    await answerOf('$167.00').waitFor();
    await press(page, button('Place the order'));
    await button('Receive a box').waitFor();
    const clamps = await part('T bolt clamps 2.5');
    expect([clamps.standing, clamps.figure('onOrderMilli')]).toEqual(['ordered', 14_000]);
  });

  test('receives part of it, and notes the rest as back-ordered', async () => {
    await press(page, button('Receive a box'));
    await press(page, button(/^All 6.*: hose end -6 straight$/));
    await write(page, page.getByRole('textbox', { name: 'Good, T bolt clamps 2.5' }), '8');
    await tick(page, page.getByRole('checkbox', { name: 'The other 6 said to be on back-order' }));
    await tick(page, page.getByRole('checkbox', { name: /^Leave the good ones for inspection/ }));
    await press(page, button('Receive 2 lines'));
    await button('Receive a box').waitFor();
    const clamps = await part('T bolt clamps 2.5');
    expect(clamps.figure('inspectionMilli')).toBe(8000);
    expect(clamps.figure('backOrderedMilli')).toBe(6000);
    const hoses = await part('hose end -6 straight');
    expect([hoses.standing, hoses.figure('inspectionMilli')]).toEqual(['to inspect', 6000]);
  });

  test('accepts and fits what came, and the hoist check gets shorter', async () => {
    const before = await blockers();
    await goTo(page, 'Hoist check');
    await answerOf(`${before} things stand before engine-in`).waitFor();
    await select('hose end -6 straight');
    await act('Order and receive', /^Accept…/, /^Accept: hose end/);
    await expect.poll(async () => (await part('hose end -6 straight')).figure('shelfMilli')).toBe(6000);
    await act('On the engine', /^Fit…/, /^Fit: hose end/);
    await expect.poll(async () => (await part('hose end -6 straight')).standing).toBe('fitted');
    const after = await blockers();
    expect(after).toBe(before - 1);
    await goTo(page, 'Hoist check');
    await answerOf(`${after} things stand before engine-in`).waitFor();
    await picture(page, 'hoist-check-after');
  });

  test('takes the fitting back by its name, does it again, and keeps it through a new start of the page', async () => {
    const fitted = await blockers();
    const undo = button(/^Undo /);
    expect(await undo.getAttribute('aria-label')).toMatch(/^Undo fit/i);
    await page.keyboard.press('ControlOrMeta+Z');
    await answerOf(`${fitted + 1} things stand before engine-in`).waitFor();
    expect((await part('hose end -6 straight')).standing).toBe('in hand');
    await tabTo(page, button(/^Redo /), { back: true });
    await page.keyboard.press('Enter');
    await answerOf(`${fitted} things stand before engine-in`).waitFor();
    await page.reload();
    await answerOf(`${fitted} things stand before engine-in`).waitFor();
    expect((await part('hose end -6 straight')).standing).toBe('fitted');
    expect(await client().workbook.verify()).toMatchObject({ ok: true, differences: [], invariants: [] });
  });

  test('left nothing to complain about in the console', () => {
    expect(shell.complaints).toEqual([]);
  });
});
