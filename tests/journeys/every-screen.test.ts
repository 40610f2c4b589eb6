import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, type PageOptions, picture } from './open-shell.ts';
import { screens, show, sideways } from './screens.ts';

const looks: Readonly<Record<string, PageOptions>> = {
  'the desk by day': { width: 1440, height: 900 },
  'the bench by night': { width: 1024, height: 768, night: true, bench: true },
  'a telephone': { width: 360, height: 740 },
};

let shell: OpenShell;

beforeAll(async () => {
  shell = await openShell();
  await shell.host.makeDemo(join(shell.folder, 'Demo.hoistday'));
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

  test.each(Object.entries(screens))(
    '%s can be used by everybody and needs no scrolling sideways',
    async (name, hash) => {
      await show(page, hash);
      await picture(page, `${name} ${look}`);
      expect(await violations(page)).toEqual([]);
      expect(await sideways(page)).toEqual([]);
    },
  );
});

test('nothing was complained about in the console', () => {
  expect(shell.complaints).toEqual([]);
});
