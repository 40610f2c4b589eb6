import { existsSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Running, start } from './stand-in.ts';

const program = [process.env['HOISTDAY_CHROMIUM'], '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
  (file): file is string => file !== undefined && existsSync(file),
);
const quiet = '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-sync';

// Without a Chromium on the machine these are left out, and the run says so.
describe.skipIf(program === undefined)('in a real browser', () => {
  let running: Running;
  let browser: Browser;
  const foreign = createServer((_request, response) =>
    response.setHeader('content-type', 'text/html').end('<p>other</p>'),
  );

  beforeAll(async () => {
    running = await start();
    browser = await chromium.launch({ executablePath: program ?? '', args: quiet.split(' ') });
    await new Promise<void>((resolve) => foreign.listen(0, '127.0.0.1', resolve));
  });
  afterAll(async () => {
    await browser.close();
    foreign.close();
    await running.shell.close();
  });

  it('H4: another site’s page writes nothing and shows nothing of ours, even for a signed-in browser', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(`${running.origin}/`);
    const token = new URL(running.shell.url).hash.slice(3);
    const signedIn = await page.evaluate(async (secret) => {
      const headers = { 'content-type': 'application/json' };
      const session = await fetch('/session', { method: 'POST', headers, body: JSON.stringify({ token: secret }) });
      const read = await fetch('/api/x');
      const write = await fetch('/api/parts/add', { method: 'POST', headers, body: '{"own":1}' });
      return [session.status, read.status, write.status, document.cookie];
    }, token);
    expect(signedIn).toEqual([204, 200, 200, '']);
    expect(running.host.written).toEqual(['{"own":1}']);
    running.host.calls = 0;

    for (const other of [`http://127.0.0.1:${portOf(foreign)}/`, `http://localhost:${portOf(foreign)}/`]) {
      await page.goto(other);
      const seen = await page.evaluate(async (origin) => {
        const tries = [
          fetch(`${origin}/api/parts/add`, { method: 'POST', mode: 'no-cors', credentials: 'include', body: '{}' }),
          fetch(`${origin}/api/x`, { credentials: 'include' }),
          fetch(`${origin}/api/x`, { method: 'DELETE', credentials: 'include' }),
          fetch(`${origin}/session`, { method: 'POST', credentials: 'include', body: '{}' }),
        ];
        const answers = await Promise.allSettled(tries);
        const image = new Image();
        const shown = await new Promise((resolve) => {
          image.onload = () => resolve('shown');
          image.onerror = () => resolve('refused');
          image.src = `${origin}/mark.svg`;
        });
        const socket = await new Promise((resolve) => {
          const opened = new WebSocket(`${origin.replace('http', 'ws')}/api/changes`);
          opened.onopen = () => resolve('open');
          opened.onerror = () => resolve('refused');
        });
        const form = document.createElement('form');
        form.method = 'post';
        form.action = `${origin}/api/parts/add`;
        form.target = 'inner';
        const frame = document.createElement('iframe');
        frame.name = 'inner';
        document.body.append(frame, form);
        form.submit();
        await new Promise((resolve) => setTimeout(resolve, 300));
        frame.src = `${origin}/`;
        await new Promise((resolve) => setTimeout(resolve, 300));
        return [
          ...answers.map((answer) => (answer.status === 'fulfilled' ? answer.value.type : 'refused')),
          shown,
          socket,
        ];
      }, running.origin);
      // Whether the browser hides a refused answer or lets it through as opaque is its affair; none was readable.
      expect(seen).not.toContain('cors');
      expect(seen.slice(-2)).toEqual(['refused', 'refused']);
      const ours = page.frames().filter((frame) => frame.url().startsWith(running.origin));
      for (const frame of ours) expect(await frame.content()).not.toContain('page</body>');
    }
    expect(running.host.written).toEqual(['{"own":1}']);
    expect(running.host.calls).toBe(0);
    await context.close();
  });

  it('item 7: the page policy stops inline scripts, text run as code and other addresses, and lets styles in', async () => {
    const page = await browser.newPage();
    await page.goto(`${running.origin}/`);
    const seen = await page.evaluate(async () => {
      const violated: string[] = [];
      addEventListener('securitypolicyviolation', (event) => violated.push(event.effectiveDirective));
      const script = document.createElement('script');
      script.textContent = 'document.title = "ran"';
      document.body.append(script);
      // A file of the page's own, because text run by the test's remote control is not held by the policy.
      const probe = document.createElement('script');
      probe.src = '/probe.js';
      document.body.append(probe);
      await new Promise((resolve) => probe.addEventListener('load', resolve));
      await fetch('https://other.example/').catch(() => undefined);
      const nonce = document.querySelector<HTMLMetaElement>('meta[name="style-nonce"]')?.content ?? '';
      const style = document.createElement('style');
      style.nonce = nonce;
      style.textContent = 'body { color: rgb(1, 2, 3) }';
      const bare = document.createElement('style');
      bare.textContent = 'body { color: rgb(9, 9, 9) }';
      document.head.append(style, bare);
      await new Promise((resolve) => setTimeout(resolve, 100));
      return {
        title: document.title,
        code: document.body.dataset['code'],
        violated,
        colour: getComputedStyle(document.body).color,
      };
    });
    expect(seen).toEqual({
      title: '',
      code: 'refused',
      violated: expect.arrayContaining(['script-src-elem', 'script-src', 'connect-src', 'style-src-elem']),
      colour: 'rgb(1, 2, 3)',
    });
    await page.close();
  });
});

function portOf(server: ReturnType<typeof createServer>): number {
  return (server.address() as AddressInfo).port;
}
