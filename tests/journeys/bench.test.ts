import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, picture } from './open-shell.ts';
import { show, sideways } from './screens.ts';

/** An evening at the bench with the demo: readings that were missing, and a flange brought to its final torque. */
let shell: OpenShell;
let page: Page;
let build = 0;

const client = () => shell.host.client;
const main = () => page.getByRole('main');

beforeAll(async () => {
  shell = await openShell();
  await shell.host.makeDemo(join(shell.folder, 'Demo.hoistday'));
  build = (await client().builds.list())[0]?.id ?? 0;
});
afterAll(async () => {
  await shell.close();
});
beforeEach(async () => {
  page = await shell.open();
});
afterEach(async () => {
  await page.context().close();
});

const blockingSheets = async () =>
  (await client().gate.review({ build })).blockers.filter(({ subject }) => subject.kind === 'measuring-sheet');

describe('a measuring sheet', () => {
  test('takes readings in any unit, blocks the hoist check while one is out, and no longer once it is mended', async () => {
    const { sheets } = await client().bench.view({ build });
    const lash = sheets.find(({ title }) => title === 'Valve lash, cold');
    expect(lash?.standing).toBe('missing');
    expect((await blockingSheets()).map(({ kind }) => kind)).toEqual(['measurement missing']);

    await show(page, '#/bench');
    await main().getByRole('link', { name: 'Valve lash, cold' }).click();
    await main()
      .getByText(/Not measured: Ex 5, Ex 6/)
      .first()
      .waitFor();
    const cell = (place: string) => main().getByRole('textbox', { name: `${place}, lash` });
    await cell('Ex 5').fill('0.30');
    await cell('Ex 5').press('Enter');
    expect(await cell('Ex 6').evaluate((element) => element === document.activeElement)).toBe(true);

    // What nobody can read is refused at its cell, and what was typed stays.
    await cell('Ex 6').fill('a bit');
    await main().getByRole('button', { name: 'Write down 2 readings' }).click();
    await main()
      .getByText(/Nothing was changed/)
      .first()
      .waitFor();
    expect(await cell('Ex 5').inputValue()).toBe('0.30');
    expect((await blockingSheets()).map(({ kind }) => kind)).toEqual(['measurement missing']);

    // 0.016 in is 0.4064 mm (0.0254 m to the inch, NIST SP 811), above the 0.35 of the sheet.
    await cell('Ex 6').fill('0.016 in');
    await main().getByRole('button', { name: 'Write down 2 readings' }).click();
    await main()
      .getByText(/Outside 0.2 to 0.35 mm: .*Ex 6/)
      .first()
      .waitFor();
    await picture(page, 'measuring sheet, one out');
    expect((await blockingSheets()).map(({ kind, title }) => [kind, title])).toEqual([
      ['measurement out', 'Valve lash, cold'],
    ]);
    await show(page, '#/hoist-check');
    await main()
      .getByRole('table', { name: /^Measurements out of limits/ })
      .waitFor();
    await main().getByRole('link', { name: 'Valve lash, cold' }).first().click();

    await cell('Ex 6').fill('12 thou');
    await main().getByRole('button', { name: 'Write down 1 reading' }).click();
    await main()
      .getByText(/All 12 places are measured and inside the limits/)
      .first()
      .waitFor();
    expect(await blockingSheets()).toEqual([]);
    expect(await violations(page)).toEqual([]);
  });
});

describe('a torque sheet', () => {
  test('is walked by taps on a touch screen, and seen at the desk as it goes', async () => {
    const { groups } = await client().bench.view({ build });
    const flange = groups.find(({ name }) => name === 'Turbo flange nuts');
    expect(flange?.standing).toBe('snug');
    const address = `#/bench?torque=${flange?.id ?? 0}`;
    const desk = await shell.beside(page);
    await show(desk, address);
    const tablet = await shell.open({ touch: true, bench: true, width: 820, height: 1100 });
    await show(tablet, address);
    expect(await sideways(tablet)).toEqual([]);

    // Four nuts crosswise, 1 3 2 4, from 18 to 36 N·m; the first stage is done.
    const order = [1, 3, 2, 4];
    for (const [index, bolt] of order.entries()) {
      const button = tablet.getByRole('main').getByRole('button', { name: `Bolt ${bolt} done to 36 N·m` });
      const box = await button.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(60);
      await button.tap();
      await desk
        .getByRole('main')
        .getByText(`36 N·m ${index + 1} of 4`)
        .waitFor();
    }
    await tablet
      .getByText(/All 4 are at final torque; not yet gone over again/)
      .first()
      .waitFor();
    const final = await client().records.list({ kind: 'boltGroup', build });
    expect(final.find(({ id }) => id === flange?.id)?.standing).toMatchObject({ bolts: 4, final: 4, snug: 0 });

    await tablet.getByRole('button', { name: 'Take it back' }).tap();
    await tablet.getByRole('button', { name: 'Bolt 4 done to 36 N·m' }).tap();
    await tablet.getByRole('button', { name: 'All gone over again' }).tap();
    await desk
      .getByText(/All 4 are at final torque and gone over again/)
      .first()
      .waitFor();
    await picture(tablet, 'torque sheet, rechecked');
    expect(await violations(tablet)).toEqual([]);
    await tablet.context().close();
  });

  test('says what the wrench is set to with a crowfoot, and writes that down', async () => {
    const { groups } = await client().bench.view({ build });
    const cover = groups.find(({ name }) => name === 'Clutch cover bolts');
    await show(page, `#/bench?torque=${cover?.id ?? 0}`);
    await main().getByText('With a crowfoot or another adapter').click();
    await main().getByRole('textbox', { name: 'Wrench, grip to drive' }).fill('400');
    await main().getByRole('textbox', { name: 'Adapter, drive to bolt' }).fill('80');
    // 12 · 400/(400 + 80) = 10 N·m, the lever equation by hand.
    await main().getByText('Wrench at 10 N·m').waitFor();
    await main().getByRole('button', { name: 'Bolt 1 done to 12 N·m' }).click();
    await main()
      .getByText(/Bolt 1: stage 1, to 12 N·m, wrench at 10 N·m/)
      .waitFor();
    // Tapping another bolt of the stage is let in, and said.
    await main().getByRole('button', { name: 'Bolt 4, loose' }).click();
    await main()
      .getByText(/Out of sequence: bolt 5 was next/)
      .waitFor();
  });
});
