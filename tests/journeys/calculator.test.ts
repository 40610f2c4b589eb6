import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, type PageOptions, picture } from './open-shell.ts';
import { settled, show, sideways } from './screens.ts';

/** An evening with the calculators: found, worked, drawn, kept, and compared with. */
let shell: OpenShell;
let page: Page;
let build = 0;

const main = () => page.getByRole('main');
const field = (name: string | RegExp) => main().getByRole('textbox', { name });

beforeAll(async () => {
  shell = await openShell();
  await shell.host.makeDemo(join(shell.folder, 'Demo.hoistday'));
  build = (await shell.host.client.builds.list())[0]?.id ?? 0;
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

/** Four injectors for 500 hp on E85: the first check case of D3, 1274.6 cc/min, derived by hand. */
const fourOnE85 =
  '#/calculators?id=D3&i.power=500&u.power=hp&i.injectors=4&i.bsfc=0.9&u.bsfc=lb/hp/h&i.duty=85&i.density=785' +
  '&i.rated_dp=3&i.actual_dp=3';

describe('a calculator', () => {
  test('is found by the search, answers as one types, is drawn and kept, and says what changed since', async () => {
    await page.keyboard.press('ControlOrMeta+k');
    await page.getByRole('combobox', { name: 'Search the workbook' }).fill('injector size');
    const hit = page.getByRole('option', { name: /D3 Injector size/ });
    await hit.waitFor();
    await hit.click();
    await main().getByRole('heading', { level: 2, name: 'Injector size' }).waitFor();

    await main().getByRole('combobox', { name: 'Power: unit' }).selectOption('hp');
    await field(/^Power/).fill('500');
    await field(/^Injectors/).fill('4');
    await field(/fuel consumption/i).fill('0.9 lb/hp/h');
    await field(/^Duty/).fill('85');
    await field(/^Fuel density/).fill('785');
    await field(/^Rated pressure/).fill('3 bar');
    await field(/^Actual pressure/).fill('3 bar');
    const result = main().getByRole('region', { name: 'Result' });
    const flow = result.locator('data.figure').last();
    await flow.waitFor();
    await main().getByRole('combobox', { name: 'Injector, at rated pressure: unit' }).selectOption('cc/min');
    await expect.poll(async () => Number(await flow.getAttribute('value'))).toBeCloseTo(1274.61325, 4);

    const plot = main().getByRole('region', { name: 'Over a range' });
    await plot.getByRole('combobox', { name: 'Draw' }).selectOption({ label: 'Injector, at rated pressure' });
    await plot.getByRole('combobox', { name: 'Against' }).selectOption({ label: 'Power' });
    await plot.getByRole('textbox', { name: /^From/ }).fill('250');
    await plot.getByRole('textbox', { name: /^To/ }).fill('750');
    // In proportion to the power: half of 1274.6 at 250 hp.
    await plot
      .locator('figcaption')
      .getByText(/goes from 637\.3 cc\/min to 1,?912 cc\/min/)
      .waitFor();
    await plot.locator('.recharts-line-curve').waitFor();
    await picture(page, 'calculator plot');
    await plot.getByRole('button', { name: 'Show the table' }).click();
    await plot.getByRole('rowheader', { name: /^250/ }).waitFor();

    await main().getByRole('button', { name: 'Save to the build' }).click();
    const form = page.getByRole('dialog');
    await form.getByRole('textbox', { name: /^Title/ }).fill('E85, four injectors');
    await form.getByRole('button', { name: 'Save the case' }).click();
    await main().getByText('Nothing: inputs and results are as they were saved.').waitFor();
    const [kept] = await shell.host.client.records.list({ kind: 'savedCase', build });
    expect(kept?.values).toMatchObject({
      title: 'E85, four injectors',
      calculator: 'D3',
      inputs: { power: { value: '500', unit: 'hp' }, bsfc: { value: '0.9 lb/hp/h' } },
    });

    await field(/^Power/).fill('600');
    const changed = main().getByRole('table', { name: /^What changed since/ });
    await changed.getByRole('row', { name: /^Power 500 hp 600 hp \+100 hp \+20/ }).waitFor();
    await main()
      .getByText(/^1 input and 3 results differ\.$/)
      .waitFor();
    await picture(page, 'calculator what changed');

    await main().getByRole('button', { name: 'Open E85, four injectors' }).click();
    await expect.poll(() => field(/^Power/).inputValue()).toBe('500');
    await page.goBack();
    await expect.poll(() => field(/^Power/).inputValue()).toBe('600');
  });

  test('prints one sheet with inputs, results, formula, source and caution', async () => {
    await show(page, fourOnE85);
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-printed', 'yes');
    });
    await main().getByRole('button', { name: 'Print' }).click();
    expect(await page.locator('body').getAttribute('data-printed')).toBe('yes');
    await page.emulateMedia({ media: 'print' });
    await picture(page, 'calculator on paper');
    const paper = main().locator('.calculators-paper');
    for (const words of ['D3 Injector size', '500 hp', 'Formula', 'Source', 'Caution.', 'that value governs']) {
      expect(await paper.getByText(words).first().isVisible(), words).toBe(true);
    }
    for (const away of [main().getByRole('textbox'), page.getByRole('navigation'), main().getByText('Over a range')]) {
      expect(await away.first().isVisible()).toBe(false);
    }
    const sheet = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect(sheet.match(/\/Type\s*\/Page\b/g)?.length).toBe(1);
  });

  const looks: readonly (readonly [string, PageOptions])[] = [
    ['day at the desk', {}],
    ['night at the desk', { night: true }],
    ['night at the bench', { night: true, bench: true, width: 1024, height: 768 }],
    ['a narrow window', { width: 360, height: 740 }],
  ];
  test.each(looks)('reads well: %s', async (name, options) => {
    await page.context().close();
    page = await shell.open(options);
    await show(
      page,
      `${fourOnE85}&case=${(await shell.host.client.records.list({ kind: 'savedCase', build }))[0]?.id ?? ''}`,
    );
    await main().locator('.recharts-line-curve').waitFor();
    await settled(page);
    await picture(page, `calculator ${name}`);
    await main().getByRole('heading', { name: 'Over a range' }).scrollIntoViewIfNeeded();
    await main().getByRole('heading', { name: 'Saved cases' }).scrollIntoViewIfNeeded();
    await picture(page, `calculator ${name}, below`);
    expect(await sideways(page)).toEqual([]);
    expect(await violations(page)).toEqual([]);
  });
});

test('nothing was complained about in the console but a chart that has no place on paper', () => {
  expect(shell.complaints.filter((text) => !/width\(0\) and height\(0\) of chart/.test(text))).toEqual([]);
});
