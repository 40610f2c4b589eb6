import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, picture } from './open-shell.ts';
import { settled, show, sideways } from './screens.ts';

let shell: OpenShell;

beforeAll(async () => {
  shell = await openShell();
  await shell.host.makeDemo(join(shell.folder, 'demo.hoistday'));
  shell.host.openFile(join(shell.folder, 'demo.hoistday'));
}, 120_000);

afterAll(async () => {
  expect(shell.complaints).toEqual([]);
  await shell.close();
});

test('the forecast runs in the window, is stopped, kept and shown in its history', async () => {
  const page = await shell.open();
  await show(page, '#/forecast');
  const answer = page.locator('.answer p');
  const said = await shell.host.client.forecast.run({ build: 1, runs: 2000, seed: 1 });
  await expect.poll(() => answer.textContent(), { timeout: 30_000 }).toBe(said.answer);
  await page.getByText('2000 runs with seed 1').waitFor();
  expect(await page.locator('.chart-drawing svg').count()).toBeGreaterThan(0);
  await picture(page, 'forecast');

  // The same figures stand in the table behind the picture.
  await page.getByRole('button', { name: 'Show the table' }).first().click();
  await page.getByRole('columnheader', { name: 'Of the runs' }).waitFor();
  await page.getByRole('button', { name: 'Show the chart' }).first().click();
  expect(await page.getByRole('heading', { name: /^What holds / }).count()).toBe(1);
  expect(await violations(page)).toEqual([]);

  // Many runs show how far they are, and stop when told to; what was done by then stays on the page.
  // Pressed in the page itself, at the first frame that has the button: a remote hand may be slower than the runs.
  const stopped = page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        const look = () => {
          const button = [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Stop');
          const bar = document.querySelector('progress');
          if (button === undefined || bar === null || bar.value === 0) return void requestAnimationFrame(look);
          button.click();
          resolve(`${bar.max}`);
        };
        look();
      }),
  );
  await page.getByRole('textbox', { name: 'Runs' }).fill('20000');
  expect(await stopped).toBe('20000');
  await page.getByText(/Stopped after \d+ of 20000 runs/).waitFor();
  await page.getByRole('textbox', { name: 'Runs' }).fill('500');
  await page.getByText('500 runs with seed 1').waitFor();

  await page.getByRole('tab', { name: 'What it said' }).click();
  const rows = page.getByRole('table').locator('tbody tr');
  await settled(page);
  const before = await rows.count();
  await page.getByRole('button', { name: 'Keep this forecast' }).click();
  await expect.poll(() => rows.count()).toBe(before + 1);
  const day = page.getByRole('textbox', { name: 'As it stands at the end of' });
  await day.fill('2026-08-20');
  await page.getByRole('button', { name: 'Keep this forecast' }).click();
  await expect.poll(() => rows.count()).toBe(before + 2);
  await page.locator('.chart-drawing svg').waitFor();
  await picture(page, 'forecast-history');
  const history = await shell.host.client.forecast.history({ build: 1 });
  expect(history.map(({ on }) => on)).toEqual(expect.arrayContaining(['2026-08-20', '2026-11-20']));
  await page.getByRole('button', { name: 'Undo' }).last().click();
  await expect.poll(() => rows.count()).toBe(before + 1);

  await page.getByRole('tab', { name: 'Lead times' }).click();
  await page.locator('.lead-table tbody button').first().click();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  await settled(page);
  await picture(page, 'forecast-lead-times');
  expect(await violations(page)).toEqual([]);
}, 120_000);

test('the hoist check shows the days of the forecast', async () => {
  const page = await shell.open({ night: true });
  await show(page, '#/hoist-check');
  const days = await shell.host.client.forecast.gateDays({ build: 1 });
  await page.locator(`.gate-figures time[datetime="${days?.p50On}"]`).first().waitFor();
  await page.locator(`.gate-figures time[datetime="${days?.p80On}"]`).first().waitFor();
  await picture(page, 'hoist-check-night');
}, 60_000);

test('a narrow window and the bench show all of it without going sideways', async () => {
  const narrow = await shell.open({ width: 360, height: 740, night: true });
  const bench = await shell.open({ width: 1024, height: 768, bench: true });
  for (const [page, name] of [
    [narrow, '360'],
    [bench, 'bench'],
  ] as const) {
    for (const view of ['', '?view=leads', '?view=history']) {
      await show(page, `#/forecast${view}`);
      if (view === '') await page.getByText('2000 runs with seed 1').waitFor();
      await settled(page);
      expect(await sideways(page)).toEqual([]);
      expect(await violations(page)).toEqual([]);
      await picture(page, `forecast-${name}${view.replace('?view=', '-')}`);
    }
  }
}, 120_000);
