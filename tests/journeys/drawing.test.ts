import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { type OpenShell, openShell, picture } from './open-shell.ts';
import { show } from './screens.ts';

/** The demo's 25 lines as a drawing: nothing hides anything, a component is moved and kept, one sheet is printed. */
let shell: OpenShell;
let page: Page;
let build = 0;

const drawing = () => page.getByRole('application', { name: 'Drawing of the lines' });
const places = async () => Object.keys((await shell.host.client.plumbing.schematic({ build })).places);

async function open(bench: boolean): Promise<void> {
  page = await shell.open({ bench });
  await show(page, '#/plumbing?view=drawing');
  await drawing().getByRole('link').first().waitFor();
}

beforeAll(async () => {
  shell = await openShell();
  await shell.host.makeDemo(join(shell.folder, 'Demo.hoistday'));
  build = (await shell.host.client.builds.list())[0]?.id ?? 0;
});
afterAll(async () => {
  await shell.close();
});

/** Boxes that lie on one another, words that lie on one another, and words outside their box, as the window shows them. */
const collisions = (): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const near = 1;
    const meet = (a: DOMRect, b: DOMRect) =>
      a.left < b.right - near && b.left < a.right - near && a.top < b.bottom - near && b.top < a.bottom - near;
    const pairs = (things: readonly Element[], inset: number) => {
      const boxes = things.map((thing) => {
        const { x, y, width, height } = thing.getBoundingClientRect();
        return new DOMRect(x, y + inset, width, height - 2 * inset);
      });
      for (const [at, a] of boxes.entries()) {
        for (const [more, b] of boxes.slice(at + 1).entries()) {
          if (meet(a, b)) found.push(`${things[at]?.textContent} / ${things[at + 1 + more]?.textContent}`);
        }
      }
    };
    const boxes = [...document.querySelectorAll('.drawing-canvas :is(.drawing-label, .drawing-box)')];
    pairs(boxes, 0);
    // A row of text has room above and below its letters.
    pairs([...document.querySelectorAll('.drawing-canvas text')], 2);
    for (const box of boxes) {
      const outer = box.getBoundingClientRect();
      for (const text of box.parentElement?.querySelectorAll('text') ?? []) {
        const { left, right } = text.getBoundingClientRect();
        if (left < outer.left - near || right > outer.right + near) found.push(`out of its box: ${text.textContent}`);
      }
    }
    return found;
  });

test.each([
  ['desk', false],
  ['bench', true],
])('no word and no box lies on another (%s)', async (name, bench) => {
  await open(bench);
  const { edges } = await shell.host.client.plumbing.schematic({ build });
  expect(edges.length).toBeGreaterThanOrEqual(25);
  expect(
    await drawing()
      .getByRole('link', { name: /^Line / })
      .count(),
  ).toBe(edges.length);
  expect(await collisions()).toEqual([]);
  expect(await violations(page)).toEqual([]);
  await picture(page, `drawing-${name}`);
  await page.context().close();
});

test('a component is moved by the keyboard and by the mouse, kept, and laid out again', async () => {
  await open(false);
  const component = drawing().getByRole('link', { name: /^Surge pot, / });
  await component.focus();
  const before = await component.boundingBox();
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(async () => ((await component.boundingBox())?.y ?? 0) > (before?.y ?? 0)).toBe(true);
  const { x = 0, y = 0 } = (await component.boundingBox()) ?? {};
  await page.mouse.move(x + 8, y + 8);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 60, { steps: 6 });
  await page.mouse.up();
  await expect.poll(async () => ((await component.boundingBox())?.x ?? 0) > x).toBe(true);
  expect(await collisions()).toEqual([]);
  await page.getByRole('button', { name: 'Keep these places' }).click();
  await expect.poll(async () => (await places()).length).toBeGreaterThan(10);
  await page.getByRole('button', { name: 'Lay out again' }).click();
  await expect.poll(places).toEqual([]);
  await page.context().close();
});

test('it prints on one sheet, and a line leads to its page', async () => {
  await open(false);
  for (const format of ['A4', 'Letter']) {
    const pdf = (await page.pdf({ format, preferCSSPageSize: false, landscape: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(1);
  }
  const { edges } = await shell.host.client.plumbing.schematic({ build });
  await page.getByRole('button', { name: 'Show all of it' }).click();
  await drawing()
    .getByRole('link', { name: `Line ${edges[0]?.name}` })
    .first()
    .click();
  await expect.poll(() => page.url()).toContain(`line=${edges[0]?.line}`);
  expect(shell.complaints).toEqual([]);
});
