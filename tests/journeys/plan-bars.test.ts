import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, picture } from './open-shell.ts';
import { show, sideways } from './screens.ts';

/** Jobs as bars over the calendar: changed by key, by typing and by dragging, and taken back. */
const monday = '2026-03-02';
let shell: OpenShell;
let page: Page;
let build = 0;
const jobs = { glue: 0, fit: 0 };

const client = () => shell.host.client;
let keys = 0;
const act = () => {
  keys += 1;
  return { key: `plan-bars-${keys}`, on: monday };
};
const save = async (kind: 'job' | 'tool', values: Record<string, unknown>): Promise<number> =>
  (await client().records.save({ ...act(), kind, build, values })).made[0] ?? 0;
const barOf = async (id: number) => (await client().plan.bars({ build })).bars.find((bar) => bar.id === id);
const name = (title: string) => page.locator('.bars-names').getByRole('button', { name: new RegExp(`^${title}:`) });
const answer = () => page.locator('.bars-answer').textContent();

beforeAll(async () => {
  shell = await openShell({ today: monday });
  await client().workbook.create({ name: 'Drover', currency: 'USD', build: '1978 Tarnwell Drover' });
  build = (await client().builds.list())[0]?.id ?? 0;
  const press = await save('tool', { name: 'press', whereabouts: 'neighbour' });
  jobs.glue = await save('job', { title: 'Glue', minutesGuess: 300 });
  jobs.fit = await save('job', {
    title: 'Fit',
    minutesGuess: 200,
    earlier: [jobs.glue],
    lags: [{ job: jobs.glue, minutes: 1440, on: 'clock' }],
  });
  await save('job', { title: 'Press', minutesGuess: 60, tools: [press] });
  const waiting = await save('job', { title: 'Hang', minutesGuess: 60 });
  await client().parts.add({ ...act(), build, parts: [{ description: 'Bracket', needMilli: 1000, job: waiting }] });
  const wash = await save('job', { title: 'Wash', minutesGuess: 30 });
  await client().plan.finishJob({ ...act(), jobs: [wash], by: 'Ray', minutesSpent: 30, note: '' });
  const begun = await save('job', { title: 'Hone', minutesGuess: 90 });
  await client().plan.addHours({ ...act(), job: begun, minutes: 30, note: '' });
});
afterAll(async () => {
  expect(shell.complaints).toEqual([]);
  await shell.close();
});
beforeEach(async () => {
  page = await shell.open({ width: 1440, height: 900 });
  await show(page, '#/plan?view=bars');
  await name('Glue').waitFor();
});
afterEach(async () => {
  await page.context().close();
});

test('every state stands in words, the bars lie in the drawing with today and arrows, and the table says the same', async () => {
  await page.getByRole('button', { name: 'Done jobs too' }).click();
  const { bars, answer: said } = await client().plan.bars({ build });
  expect(await answer()).toBe(said);
  expect(new Set(bars.map(({ state }) => state))).toEqual(
    new Set(['free', 'in hand', 'waiting for parts', 'waiting for a tool', 'waiting for another job', 'done']),
  );
  const drawing = page.getByRole('region', { name: 'Bars over the days' });
  expect(await drawing.getByText('today').count()).toBeGreaterThan(0);
  expect(await drawing.locator('path[marker-end]').count()).toBeGreaterThan(0);
  const rows = page.getByRole('table', { name: 'The plan over the calendar' }).locator('tbody tr');
  expect(await rows.count()).toBe(bars.length);
  expect((await rows.locator('th').allTextContents()).sort()).toEqual(bars.map(({ title }) => title).sort());
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toEqual([]);
  await picture(page, 'plan-bars');
});

test('keys move a job by a day, and undo brings it back', async () => {
  const before = await barOf(jobs.glue);
  await name('Glue').focus();
  // From its evening on Tuesday the third to the next day that it may begin on: Thursday the fifth.
  await page.keyboard.press('Alt+ArrowRight');
  await expect.poll(async () => (await barOf(jobs.glue))?.notBefore).toBe('2026-03-04');
  const after = await barOf(jobs.glue);
  expect([before?.startOn, after?.startOn]).toEqual(['2026-03-03', '2026-03-05']);
  await expect.poll(answer).toBe((await client().plan.bars({ build })).answer);
  await page.locator('.said').getByRole('button', { name: 'Undo' }).first().click();
  await expect.poll(async () => (await barOf(jobs.glue))?.startOn).toBe('2026-03-03');
});

test('a first day and hours are typed; what can’t be is said at its field and nothing changes', async () => {
  await name('Glue').press('Enter');
  const form = page.getByRole('dialog', { name: 'Glue' });
  const guess = form.getByRole('textbox', { name: 'Guess of the hours' });
  await guess.fill('as long as it takes');
  await form.getByRole('button', { name: 'Keep the changes' }).click();
  expect(await form.getByText(/is no length of work/).count()).toBeGreaterThan(0);
  expect((await barOf(jobs.glue))?.minutesGuess).toBe(300);
  await guess.fill('2:30');
  await form.getByRole('button', { name: 'Keep the changes' }).click();
  await form.waitFor({ state: 'detached' });
  // By hand: Tuesday 18:30 to 21:00, a day of cure, so that the fitting begins on Thursday.
  await expect.poll(async () => (await barOf(jobs.glue))?.finishOn).toBe('2026-03-03');
  expect((await barOf(jobs.fit))?.startOn).toBe('2026-03-05');
  await client().journal.undo({ key: 'plan-bars-undo' });
});

test('a bar is dragged to a later day', async () => {
  const bar = page.getByRole('region', { name: 'Bars over the days' }).locator(`[data-job="${jobs.glue}"] .bars-grab`);
  const box = await bar.boundingBox();
  if (box === null) throw new Error('The bar is not drawn');
  const [x, y] = [box.x + Math.min(6, box.width / 3), box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y, { steps: 6 });
  await page.mouse.move(x + 120, y, { steps: 6 });
  await page.mouse.up();
  await expect.poll(async () => (await barOf(jobs.glue))?.notBefore ?? '').toMatch(/^2026-03-/);
  expect(((await barOf(jobs.glue))?.startOn ?? '') > '2026-03-03').toBe(true);
});
