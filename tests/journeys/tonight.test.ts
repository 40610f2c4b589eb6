import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { journeyDay, type OpenShell, openShell, picture } from './open-shell.ts';
import { show, sideways } from './screens.ts';

/** An evening at the bench: what can be done here, one tap to begin, to stop and to be done. */
let shell: OpenShell;
let page: Page;
let build = 0;
const jobs = { crank: 0, pistons: 0, covers: 0 };

const client = () => shell.host.client;
let keys = 0;
const act = () => {
  keys += 1;
  return { key: `tonight-${keys}`, on: journeyDay };
};
const planned = async (id: number) =>
  (await client().plan.view({ build })).phases.flatMap((phase) => phase.jobs).find((job) => job.id === id);
const job = async (values: Record<string, unknown>): Promise<number> =>
  (await client().records.save({ ...act(), kind: 'job', build, values })).made[0] ?? 0;

beforeAll(async () => {
  shell = await openShell();
  await client().workbook.create({ name: 'Drover', currency: 'USD', build: '1978 Tarnwell Drover' });
  build = (await client().builds.list())[0]?.id ?? 0;
  const camTool = await client().records.save({
    ...act(),
    kind: 'tool',
    build,
    values: { name: 'cam tool', whereabouts: 'Uncle’s garage' },
  });
  jobs.crank = await job({ title: 'Hang the crank', minutesGuess: 120, place: 'garage', consumables: 'assembly lube' });
  jobs.pistons = await job({ title: 'File the rings', minutesGuess: 60, place: 'indoor bench' });
  jobs.covers = await job({ title: 'Fit covers', minutesGuess: 45, earlier: [jobs.crank] });
  await job({ title: 'Degree the cam', minutesGuess: 90, tools: camTool.made });
});
afterAll(async () => {
  // The browser writes every refused act down; one is refused here on purpose.
  expect(shell.complaints.filter((text) => !text.includes('409 (Conflict)'))).toEqual([]);
  await shell.close();
});
beforeEach(async () => {
  page = await shell.open({ width: 1024, height: 768, bench: true });
});
afterEach(async () => {
  await page.context().close();
});

test('a job is begun, survives a reload, is stopped with what is left, and is finished', async () => {
  await show(page, '#/bench');
  await page.getByRole('button', { name: 'Start: Hang the crank' }).waitFor();
  expect(await page.getByText('Uses up: assembly lube.').count()).toBe(1);
  expect(await page.getByText(/Borrow the cam tool: brings “Degree the cam”/).count()).toBe(1);
  expect(await violations(page)).toEqual([]);
  await picture(page, 'tonight-before');

  await page.getByRole('button', { name: 'Start: Hang the crank' }).click();
  const card = page.getByRole('region', { name: 'At work: Hang the crank' });
  await card.waitFor();
  expect(await card.getByRole('timer').textContent()).toBe('0 min');
  expect((await client().tonight.view({ build })).jobs[0]?.running).toMatchObject({ minutes: 0, unsure: false });
  await page.reload();
  await card.waitFor();
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toEqual([]);
  await picture(page, 'tonight-at-work');

  await card.getByRole('button', { name: 'Stop: Hang the crank' }).click();
  const left = page.getByRole('form', { name: 'What is left of Hang the crank' });
  await left.waitFor();
  await left.getByRole('button', { name: '+ 30 min' }).click();
  await picture(page, 'tonight-left');
  await left.getByRole('button', { name: 'Keep as the new guess' }).click();
  await left.waitFor({ state: 'detached' });
  await expect.poll(async () => (await planned(jobs.crank))?.minutesGuess).toBe(150);

  // Started by mistake, and taken back by the message's own button.
  await page.getByRole('button', { name: 'Start: Hang the crank' }).click();
  await card.waitFor();
  await page
    .locator('.said', { hasText: 'Start of Hang the crank' })
    .getByRole('button', { name: 'Undo' })
    .first()
    .click();
  await card.waitFor({ state: 'detached' });

  await page.getByRole('button', { name: 'Start: Hang the crank' }).click();
  await card.getByRole('button', { name: 'Done: Hang the crank' }).click();
  await card.waitFor({ state: 'detached' });
  await expect.poll(async () => (await planned(jobs.crank))?.done).toBe(true);
  // What waited for it can begin now.
  await page.getByRole('button', { name: 'Start: Fit covers' }).waitFor();
});

test('the place is chosen once and kept; what is done elsewhere is said', async () => {
  await show(page, '#/bench');
  await page.getByRole('combobox', { name: 'Place' }).click();
  await page.getByRole('option', { name: 'indoor bench' }).click();
  await page.getByRole('button', { name: 'Start: File the rings' }).waitFor();
  const garage = await job({ title: 'Paint the bay', minutesGuess: 60, place: 'garage' });
  await page.reload();
  await page.getByRole('button', { name: 'Start: File the rings' }).waitFor();
  expect(await page.getByRole('button', { name: 'Start: Paint the bay' }).count()).toBe(0);
  await page.getByText('Not here, or not yet').click();
  expect(await page.getByText('Paint the bay: done at another place, garage.').count()).toBe(1);
  await client().tonight.done({ ...act(), job: garage, by: '', minutes: null, note: '' });
});

test('what ran over night asks how long it really was', async () => {
  await client().tonight.start({ ...act(), job: jobs.pistons, by: 'Ray' });
  shell.clock(new Date(Date.parse(`${journeyDay}T12:00:00`) + 14 * 3_600_000));
  await show(page, '#/bench');
  const card = page.getByRole('region', { name: 'At work: File the rings' });
  await card.getByRole('button', { name: 'Stop: File the rings' }).click();
  await card.getByRole('alert').waitFor();
  expect(await card.getByRole('alert').textContent()).toContain('Nothing was changed.');
  await card.getByRole('textbox', { name: 'Really worked' }).fill('0:40');
  await picture(page, 'tonight-over-night');
  await card.getByRole('button', { name: 'Stop: File the rings' }).click();
  await card.waitFor({ state: 'detached' });
  await expect.poll(async () => (await planned(jobs.pistons))?.minutesSpent).toBe(40);
});
