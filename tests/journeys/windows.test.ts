import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, type PageOptions, picture } from './open-shell.ts';
import { settled, show, sideways } from './screens.ts';

const looks: Readonly<Record<string, PageOptions>> = {
  'the desk by day': { width: 1440, height: 900 },
  'a telephone by night': { width: 360, height: 740, night: true, bench: true },
};
const list = join(dirname(fileURLToPath(import.meta.url)), '..', 'samples', 'drover-parts.csv');

let shell: OpenShell;
/** The demo's clutch kit, which is on back-order, and the order that it is on. */
let clutch = 0;
let order = 0;

beforeAll(async () => {
  shell = await openShell();
  const { client } = shell.host;
  await shell.host.makeDemo(join(shell.folder, 'Demo.hoistday'));
  const [build] = await client.builds.list();
  const due = (await client.orders.due({ build: build?.id ?? 0 })).find(({ orderNumber }) => orderNumber === 'D-7015');
  clutch = due?.part ?? 0;
  order = due?.order ?? 0;
});
afterAll(async () => {
  await shell.close();
});

describe.each(Object.entries(looks))('at %s', (look, options) => {
  let page: Page;
  beforeAll(async () => {
    page = await shell.open(options);
  });
  afterAll(async () => {
    await page.context().close();
  });

  async function standsUp(name: string): Promise<void> {
    await settled(page);
    await picture(page, `${name} ${look}`);
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toEqual([]);
  }
  async function closed(): Promise<void> {
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }

  test('a part in full, and where one of its figures comes from', async () => {
    await show(page, `#/parts?part=${clutch}`);
    const panel = page.getByRole('dialog', { name: /^Clutch kit/ });
    await panel.getByRole('heading', { name: 'Entries' }).waitFor();
    await standsUp('part panel');
    const ask = panel.getByRole('button', { name: 'Why? paid' });
    await ask.focus();
    await page.keyboard.press('Enter');
    // A press that is only tried: it finds out whether the panel lies on top of the part's.
    await page.getByText('Entries behind it').click({ trial: true });
    await standsUp('why panel');
    await page.keyboard.press('Escape');
    await page.getByText('Entries behind it').waitFor({ state: 'detached' });
    await expect.poll(() => ask.evaluate((element) => element === document.activeElement)).toBe(true);
    await closed();
  });

  test('the form that receives a box', async () => {
    await show(page, `#/orders?order=${order}&do=receive`);
    await page.getByRole('button', { name: /^Wrong, damaged, too many/ }).click();
    await standsUp('receive a box');
  });

  test('the form of a new order', async () => {
    await show(page, '#/orders?order=new');
    await page.getByRole('checkbox').first().check();
    await standsUp('new order');
  });

  test('one order, and what can be noted about it', async () => {
    await show(page, `#/orders?order=${order}`);
    await standsUp('one order');
    await page.getByRole('button', { name: 'Chased' }).click();
    await page.getByRole('dialog').waitFor();
    await standsUp('vendor asked');
    await closed();
  });

  test('the search', async () => {
    await show(page, '#/');
    await page.keyboard.press('ControlOrMeta+K');
    await page.getByRole('dialog').getByRole('combobox').fill('clutch');
    await page
      .getByRole('option', { name: /^Clutch kit/ })
      .first()
      .waitFor();
    await standsUp('search');
    await closed();
  });

  test('a past day to be chosen', async () => {
    await page.getByRole('button', { name: /^Shown as of/ }).click();
    await page.getByRole('dialog').waitFor();
    await standsUp('past day');
    await closed();
  });

  test('every row of a list before it is brought in', async () => {
    await show(page, '#/bring-in');
    await page.getByLabel(/^Choose a file/).setInputFiles(list);
    for (const step of ['On to the columns', 'On to the words', 'On to every row']) {
      await page.getByRole('button', { name: step }).waitFor();
      await standsUp(step);
      await page.getByRole('button', { name: step }).click();
    }
    await page.getByRole('grid', { name: 'Every row of the file' }).waitFor();
    await standsUp('every row');
  });
});

test('nothing was complained about in the console', () => {
  expect(shell.complaints).toEqual([]);
});
