import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type OpenShell, openShell, picture } from './open-shell.ts';
import { settled, show } from './screens.ts';

/** Evenings with the demo workbook: each starts on a page of its own. */
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

async function clutch() {
  const due = (await client().orders.due({ build })).find(({ orderNumber }) => orderNumber === 'D-7015');
  return { part: due?.part ?? 0, order: due?.order ?? 0 };
}

/** "$1,234.50" or "-$18.00" as a count of cents. */
function cents(text: string): number {
  const digits = Number(text.replace(/[^\d]/g, ''));
  return /[-−]/.test(text) ? -digits : digits;
}

describe('a past day', () => {
  test('shows the figures of that day and lets nothing be entered', async () => {
    const asOf = '2026-07-31';
    const [then, now] = [await client().gate.review({ build, asOf }), await client().gate.review({ build })];
    expect(then.answer).not.toBe(now.answer);
    await show(page, '#/hoist-check');
    await main().getByText(now.answer).waitFor();
    expect(
      await main()
        .getByRole('button', { name: /^Waive…/ })
        .count(),
    ).toBeGreaterThan(0);

    await page.getByRole('button', { name: 'Shown as of Today' }).click();
    await page.getByRole('dialog').getByRole('textbox', { name: 'Day' }).fill('31 Jul 2026');
    await page.keyboard.press('ControlOrMeta+Enter');
    await main().getByText('Shown as of').waitFor();
    await main().getByText(then.answer).waitFor();
    expect(
      await main()
        .getByRole('button', { name: /^Waive…/ })
        .count(),
    ).toBe(0);
    await picture(page, 'past day hoist check');

    const money = await client().money.summary({ build, asOf });
    await show(page, '#/money');
    await main().getByText(money.answer).waitFor();
    await show(page, '#/orders');
    await main()
      .getByText(/past day is shown/)
      .first()
      .waitFor();
    const order = main().getByRole('button', { name: 'New order' });
    expect((await order.count()) === 0 || (await order.isDisabled())).toBe(true);

    await page.getByRole('button', { name: 'Back to today' }).click();
    await show(page, '#/hoist-check');
    await main().getByText(now.answer).waitFor();
  });
});

describe('a figure asked why', () => {
  test('lists entries that come to the figure', async () => {
    const { part } = await clutch();
    const derivation = await client().why.ask({ build, figure: 'paid', part });
    await show(page, `#/parts?part=${part}`);
    await page.getByRole('button', { name: 'Why? paid' }).click();
    const panel = page.getByRole('dialog', { name: derivation.title });
    const entries = panel.getByRole('table', { name: 'Entries behind it' });
    await entries.waitFor();
    const amounts = await entries.getByRole('row').locator('td:last-child').allTextContents();
    expect(amounts).toHaveLength(derivation.entries.length);
    const figure = cents((await panel.locator('.why-result').textContent()) ?? '');
    expect(figure).toBe(derivation.amountMinor);
    expect(amounts.map(cents).reduce((sum, amount) => sum + amount, 0)).toBe(figure);
  });
});

describe('the look', () => {
  test('night and bench stay chosen after a new start of the page', async () => {
    const look = () => page.evaluate(() => ({ ...document.documentElement.dataset }));
    expect(await look()).toMatchObject({ theme: 'day', density: 'desk' });
    const head = page.getByRole('banner');
    await head.getByRole('button', { name: 'Night' }).click();
    await head.getByRole('button', { name: 'Bench' }).click();
    expect(await look()).toMatchObject({ theme: 'night', density: 'bench' });
    await page.reload();
    await settled(page);
    expect(await look()).toMatchObject({ theme: 'night', density: 'bench' });
    await head.getByRole('button', { name: 'Day', exact: true }).waitFor();
  });
});

describe('two pages on one workbook', () => {
  test('what is entered on one is seen on the other at once', async () => {
    const other = await shell.beside(page);
    await show(page, '#/parts');
    await show(other, '#/parts');
    const total = (await client().parts.rows({ build, from: 0, count: 1 })).total;
    await main().getByText(`Of ${total} lines`).waitFor();
    await other.getByRole('textbox', { name: 'Add a line' }).fill('2 hose clamps for the heater, 3.20 each');
    await other.keyboard.press('Enter');
    await main()
      .getByText(`Of ${total + 1} lines`)
      .waitFor();
    await page
      .getByRole('banner')
      .getByRole('button', { name: /^Undo .*hose clamps/i })
      .click();
    await other.getByRole('main').getByText(`Of ${total} lines`).waitFor();
  });
});

describe('an act that the workbook refuses', () => {
  test('keeps what was typed, says why at the field and changes nothing', async () => {
    const { order } = await clutch();
    const entries = (await client().journal.list({ limit: 1 })).total;
    await show(page, `#/orders?order=${order}&do=receive`);
    const good = main().getByRole('textbox', { name: /^Good, Clutch kit/ });
    await good.fill('5');
    await main().getByRole('textbox', { name: 'Note' }).fill('two boxes, one torn');
    await main()
      .getByRole('button', { name: /^Receive 1 line/ })
      .click();
    await main()
      .getByText(/Nothing was changed/)
      .first()
      .waitFor();
    await picture(page, 'refused');
    expect(await good.inputValue()).toBe('5');
    expect(await main().getByRole('textbox', { name: 'Note' }).inputValue()).toBe('two boxes, one torn');
    expect((await client().journal.list({ limit: 1 })).total).toBe(entries);
  });
});

describe('the hoist check on paper', () => {
  test('is the whole list without the screen around it', async () => {
    const { blockers } = await client().gate.review({ build });
    await show(page, '#/hoist-check');
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-printed', 'yes');
    });
    await main().getByRole('button', { name: 'Print the list' }).click();
    expect(await page.locator('body').getAttribute('data-printed')).toBe('yes');
    await page.emulateMedia({ media: 'print' });
    await picture(page, 'hoist check on paper');
    const lines = main().locator('.gate-lists tbody tr');
    expect(await lines.count()).toBe(blockers.length);
    for (const { title } of blockers.slice(0, 5)) expect(await main().getByText(title).first().isVisible()).toBe(true);
    expect(await lines.last().isVisible()).toBe(true);
    for (const away of [page.getByRole('navigation'), page.getByRole('banner'), page.getByText('Print the list')]) {
      expect(await away.first().isVisible()).toBe(false);
    }
    expect((await page.pdf({ format: 'A4' })).byteLength).toBeGreaterThan(10_000);
  });
});

test('nothing was complained about in the console but the refusal, and charts that have no place on paper', () => {
  const expected = /status of 409|width\(0\) and height\(0\) of chart/;
  expect(shell.complaints.filter((text) => !expected.test(text))).toEqual([]);
});
