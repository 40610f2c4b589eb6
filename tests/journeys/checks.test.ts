import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, picture } from './open-shell.ts';
import { show } from './screens.ts';

/** A part is swapped on the demo: the check that reads it flips, stands in the hoist check, and is waived. */
let shell: OpenShell;
let page: Page;
let build = 0;
let injector = 0;

const client = () => shell.host.client;
const main = () => page.getByRole('main');
const check = async () => {
  const found = (await client().checks.view({ build })).checks.find(({ title }) => title.startsWith('Injectors'));
  if (found === undefined) throw new Error('The demo has no check of the injectors.');
  return found;
};

beforeAll(async () => {
  shell = await openShell();
  await shell.host.makeDemo(join(shell.folder, 'Demo.hoistday'));
  build = (await client().builds.list())[0]?.id ?? 0;
  injector = (await check()).inputs.find(({ part }) => part !== null)?.part ?? 0;
});
afterAll(async () => {
  await shell.close();
});
beforeEach(async () => {
  page = await shell.open({ width: 1024, height: 768 });
});
afterEach(async () => {
  await page.context().close();
});

test('two candidates stand side by side with what each would change, and nothing is written', async () => {
  const entries = (await client().journal.list({ limit: 1 })).total;
  await show(page, `#/checks?swap=${injector}`);
  const [small, large] = [
    main().getByRole('group', { name: 'Candidate 1' }),
    main().getByRole('group', { name: 'Candidate 2' }),
  ];
  await small.getByRole('textbox', { name: 'What it is' }).fill('550 injector');
  await small.getByRole('textbox', { name: 'Injector flow' }).fill('550');
  await large.getByRole('textbox', { name: 'What it is' }).fill('1300 injector');
  await large.getByRole('textbox', { name: 'Injector flow' }).fill('1300');
  await large.getByRole('textbox', { name: /^Price/ }).fill('900');
  await main().getByRole('button', { name: 'Compare' }).click();
  const table = main().getByRole('table', { name: /As it stands/ });
  await table.waitFor();
  for (const name of ['As it stands', '550 injector', '1300 injector']) {
    await table.getByRole('columnheader', { name }).waitFor();
  }
  const cells = table.getByRole('row', { name: /^Injectors for/ }).getByRole('cell');
  expect(await cells.nth(0).textContent()).toContain('holds');
  expect(await cells.nth(1).textContent()).toContain('fails');
  expect(await cells.nth(2).textContent()).toContain('holds');
  const costs = await table
    .getByRole('row', { name: /^Forecast cost/ })
    .getByRole('cell')
    .allTextContents();
  expect(costs[2]).not.toBe(costs[0]);
  await picture(page, 'swap');
  expect((await client().journal.list({ limit: 1 })).total).toBe(entries);
});

test('a smaller injector makes its check fail; the hoist check lists it until it is waived', async () => {
  expect((await check()).verdict).toBe('holds');
  await show(page, `#/parts?part=${injector}`);
  await page.getByRole('button', { name: /^Change kind and facts/ }).click();
  const form = page.getByRole('dialog', { name: 'Kind and facts' });
  await form.getByRole('textbox', { name: 'Injector flow' }).fill('much');
  await form.getByRole('button', { name: 'Store the facts' }).click();
  await form
    .getByText(/Nothing was changed/)
    .first()
    .waitFor();
  await form.getByRole('textbox', { name: 'Injector flow' }).fill('550');
  await form.getByRole('button', { name: 'Store the facts' }).click();
  await form.waitFor({ state: 'hidden' });
  const failing = await check();
  expect(failing.verdict).toBe('fails');

  await show(page, '#/hoist-check');
  await main().getByRole('link', { name: failing.title }).first().click();
  const detail = page.getByRole('dialog', { name: failing.title });
  await detail.getByRole('heading', { name: 'What went in' }).waitFor();
  expect(await violations(page)).toEqual([]);
  await picture(page, 'failing check');
  await detail.getByRole('button', { name: /^Waive/ }).click();
  const waiver = page.getByRole('dialog', { name: `Waive: ${failing.title}` });
  await waiver.getByRole('textbox', { name: 'Reason' }).fill('First start on low boost; larger ones are on order.');
  await waiver.getByRole('textbox', { name: 'Who answers for it' }).fill('Ada');
  await waiver.getByRole('button', { name: 'Waive it' }).click();
  await detail.getByText(/Waived for the hoist check: First start/).waitFor();
  const review = await client().gate.review({ build });
  const isIt = ({ subject }: { subject: { kind: string; id: number } }) =>
    subject.kind === 'check' && subject.id === failing.id;
  expect(review.blockers.filter(isIt)).toEqual([]);
  expect(review.waived.find(isIt)?.reason).toContain('low boost');
});

test('the target sheet is changed in place and the verdicts follow', async () => {
  await show(page, '#/checks?view=targets');
  const boost = main().getByRole('textbox', { name: 'Boost: value' });
  await boost.fill('lots');
  await main().getByRole('button', { name: 'Save 1 line' }).click();
  await main()
    .getByText(/Nothing was changed/)
    .first()
    .waitFor();
  expect(await boost.inputValue()).toBe('lots');
  await boost.fill('1.2');
  await main().getByRole('button', { name: 'Save 1 line' }).click();
  await main().getByRole('button', { name: 'Save 1 line' }).waitFor({ state: 'hidden' });
  const { checks } = await client().checks.view({ build });
  expect(checks.find(({ title }) => title.startsWith('Boost'))?.verdict).toBe('fails');
  expect(await violations(page)).toEqual([]);
});

test('what a description says plainly is proposed, and is a fact once it is accepted', async () => {
  const { made } = await client().parts.add({
    key: 'journey-proposal-1',
    on: '2026-11-20',
    build,
    parts: [{ description: 'Fuel injector, 1050 cc', needMilli: 6000 }],
  });
  const part = made[0] ?? 0;
  await show(page, `#/parts?part=${part}`);
  const proposals = page.getByRole('region', { name: 'Proposals' });
  await proposals.getByRole('button', { name: 'Accept all' }).click();
  await page.getByRole('region', { name: 'Facts' }).getByText('1050 cc/min').waitFor();
  const detail = await client().parts.detail({ build, part });
  expect(detail.facts).toContainEqual(expect.objectContaining({ value: '1050', unit: 'cc/min' }));
});
