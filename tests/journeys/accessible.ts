import axe from 'axe-core';
import type { Page } from 'playwright-core';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What the checker finds against the page as it stands: a line each, the rule, what it is about and where. */
export async function violations(page: Page): Promise<readonly string[]> {
  // Run by the test's remote control: a script of its own would be held back by the page's policy.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  return page.evaluate(async (values) => {
    const checker = (window as unknown as { readonly axe: typeof axe }).axe;
    const found = await checker.run(document, {
      runOnly: { type: 'tag', values },
      rules: { 'target-size': { enabled: true } },
      resultTypes: ['violations'],
    });
    if (found.passes.length < 10) return [`Only ${found.passes.length} rules found something to look at.`];
    return found.violations.flatMap(({ id, nodes }) =>
      nodes.slice(0, 4).map(({ target, html, any }) => {
        const why = any.map(({ message }) => message).join(' ');
        return `${id}: ${target.join(' ')} ${html.slice(0, 200)} ${why} (${nodes.length} in all)`;
      }),
    );
  }, tags);
}
