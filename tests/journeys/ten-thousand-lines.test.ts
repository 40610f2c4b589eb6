import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { write } from './keyboard.ts';
import { journeyDay, type OpenShell, openShell, picture } from './open-shell.ts';
import { show } from './screens.ts';

const count = 10_000;
const name = (line: number): string => `Line ${String(line).padStart(5, '0')}, stud M${8 + (line % 5)}`;

let shell: OpenShell;
let page: Page;

beforeAll(async () => {
  shell = await openShell();
  const { client } = shell.host;
  await client.workbook.create({ name: 'Long list', currency: 'EUR', build: 'Long build' });
  const build = (await client.builds.list())[0]?.id ?? 0;
  const parts = Array.from({ length: count }, (_, index) => ({ description: name(index + 1), needMilli: 2000 }));
  await client.parts.add({ key: 'ten-thousand', on: journeyDay, build, parts });
  page = await shell.open();
});
afterAll(async () => {
  await shell.close();
});

test('ten thousand lines: the first are there, the last is a key away, a word finds one', async () => {
  await show(page, '#/parts');
  const grid = page.getByRole('grid', { name: 'Parts' });
  await grid.getByText(name(1)).waitFor();
  // Only what is seen is drawn.
  expect(await grid.getByRole('row').count()).toBeLessThan(200);
  const find = page.getByRole('searchbox', { name: 'Find in Parts' });
  await write(page, find, '');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ControlOrMeta+End');
  await grid.getByText(name(count)).waitFor();
  await page.keyboard.press('ControlOrMeta+Home');
  await grid.getByText(name(1)).waitFor();
  await page.keyboard.press('/');
  await page.keyboard.type('07777');
  await page.getByText(/^1 of 10,?\s?000 lines/).waitFor();
  await grid.getByText(name(7777)).waitFor();
  await picture(page, 'one of ten thousand');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ControlOrMeta+Enter');
  await page.getByRole('dialog', { name: name(7777) }).waitFor();
  expect(shell.complaints).toEqual([]);
});
