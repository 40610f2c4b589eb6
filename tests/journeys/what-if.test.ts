import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { journeyDay, type OpenShell, openShell, picture } from './open-shell.ts';
import { show, sideways } from './screens.ts';

/** Changes are tried out side by side with the build as it stands; only what is kept reaches the journal. */
let shell: OpenShell;
let page: Page;
let build = 0;

const client = () => shell.host.client;
const main = () => page.getByRole('main');
const acts = async () => (await client().journal.list({ build, limit: 1 })).total;

let keys = 0;
const key = () => {
  keys += 1;
  return `what-if-${keys}`;
};

beforeAll(async () => {
  shell = await openShell();
  await client().workbook.create({ name: 'Drover', currency: 'USD', build: '1978 Tarnwell Drover' });
  build = (await client().builds.list())[0]?.id ?? 0;
  const act = () => ({ key: key(), on: journeyDay });
  const job = await client().records.save({
    ...act(),
    kind: 'job',
    build,
    values: { title: 'Fit the heads', minutesGuess: 6000 },
  });
  await client().parts.add({
    ...act(),
    build,
    parts: [{ description: 'Head gaskets', needMilli: 2000, estimateEachE4: 60_000_000, job: job.made[0] ?? null }],
  });
});
afterAll(async () => {
  expect(shell.complaints).toEqual([]);
  await shell.close();
});
beforeEach(async () => {
  page = await shell.open({ width: 1280, height: 900 });
});
afterEach(async () => {
  await page.context().close();
});

async function tryChange(kind: string, fill: (form: ReturnType<Page['getByRole']>) => Promise<void>): Promise<void> {
  await main().getByRole('button', { name: 'Add a change…' }).click();
  const form = page.getByRole('dialog', { name: 'What would be otherwise' });
  await form.getByRole('combobox', { name: 'What changes' }).click();
  await page.getByRole('option', { name: kind }).click();
  await fill(form);
  expect(await violations(page)).toEqual([]);
  await form.getByRole('button', { name: 'Try it' }).click();
  await form.waitFor({ state: 'hidden' });
}

test('another hour a week is worked out beside the build, kept by name, and nothing else is written', async () => {
  const before = await acts();
  await show(page, '#/what-if');
  await tryChange('Hours of the week', async (form) => {
    await form.getByRole('button', { name: 'Add a free time' }).click();
    await form.getByRole('textbox', { name: 'From' }).last().fill('12:00');
    await form.getByRole('textbox', { name: 'From' }).last().blur();
    // Saturday is free from 9 to 15 already: a time that overlaps is refused at the form.
    await form.getByRole('button', { name: 'Try it' }).click();
    await form
      .getByText(/overlap/)
      .first()
      .waitFor();
    await form.getByRole('combobox', { name: 'Day' }).last().click();
    await page.getByRole('option', { name: 'Sunday' }).click();
    await form.getByRole('textbox', { name: 'From' }).last().fill('09:00');
    await form.getByRole('textbox', { name: 'To' }).last().fill('18:00');
    await form.getByRole('textbox', { name: 'To' }).last().blur();
  });
  await main().getByText('Hours of the week: 20 h a week').first().waitFor();
  await main().getByRole('button', { name: 'Work it out' }).click();
  await main().getByRole('heading', { name: 'Side by side' }).waitFor({ timeout: 60_000 });
  await main()
    .getByText(/^Tried: \d+ days earlier, .* as likely as not, for the same money\.$/)
    .waitFor();
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toEqual([]);
  await picture(page, 'what if beside');
  expect(await acts()).toBe(before);

  await main().getByRole('button', { name: 'Keep as a variant…' }).click();
  const keep = page.getByRole('dialog', { name: 'Keep as a variant' });
  await keep.getByRole('textbox', { name: 'Name' }).fill('Sundays too');
  await keep.getByRole('button', { name: 'Keep the variant' }).click();
  await keep.waitFor({ state: 'hidden' });
  await main().getByRole('checkbox', { name: 'Sundays too' }).waitFor();
  expect(await acts()).toBe(before + 1);
});

test('kept variants are compared, and a part is done without', async () => {
  await show(page, '#/what-if');
  await tryChange('Do without a part', async (form) => {
    await form.getByRole('combobox', { name: 'Part' }).click();
    await page.getByRole('option', { name: 'Head gaskets' }).click();
  });
  await main().getByRole('button', { name: 'Work it out' }).click();
  await main()
    .getByText(/for \$120\.00 less\.$/)
    .waitFor({ timeout: 60_000 });
  await main().getByRole('checkbox', { name: 'Sundays too' }).check();
  await main().getByRole('button', { name: 'Compare those ticked' }).click();
  await main()
    .getByText(/^Sundays too: \d+ days earlier/)
    .waitFor({ timeout: 60_000 });
  expect((await client().parts.rows({ build, from: 0, count: 10 })).total).toBe(1);
});
