import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadBundle } from '../../../electron/page/bundle.ts';
import { cookieOf, outside, type Running, raw, request, start } from './stand-in.ts';

let running: Running;
let cookie: string;

beforeAll(async () => {
  running = await start({ limits: { rate: { perSecond: 10_000, burst: 10_000 } } });
  cookie = await cookieOf(running);
});
afterAll(() => running.shell.close());

describe('the page', () => {
  it('is sent with its type and how long it may be kept', async () => {
    const expected = {
      '/': ['text/html; charset=utf-8', 'no-store'],
      '/assets/index-AbCd1234.js': ['text/javascript; charset=utf-8', 'public, max-age=31536000, immutable'],
      '/mark.svg': ['image/svg+xml', 'no-cache'],
    };
    for (const [target, [type, cache]] of Object.entries(expected)) {
      const answer = await fetch(running.origin + target);
      expect(answer.status, target).toBe(200);
      expect(answer.headers.get('content-type')).toBe(type);
      expect(answer.headers.get('cache-control')).toBe(cache);
    }
  });

  it('gives styles a nonce of their own at each load, and scripts none', async () => {
    const nonces = new Set<string>();
    for (let load = 0; load < 3; load += 1) {
      const answer = await fetch(`${running.origin}/`);
      const policy = answer.headers.get('content-security-policy') ?? '';
      const nonce = /name="style-nonce" content="([^"]+)"/.exec(await answer.text())?.[1] ?? '';
      expect(policy).toContain(`style-src 'self' 'nonce-${nonce}'`);
      expect(policy).toContain("script-src 'self';");
      expect(policy).not.toMatch(/unsafe/);
      nonces.add(nonce);
    }
    expect(nonces.size).toBe(3);
  });

  it('is refused in one plain line when it was not built', () => {
    expect(() => loadBundle('/nowhere/at/all')).toThrow('The page has not been built');
  });

  it('carries the safe headers on every kind of answer', async () => {
    const answers = await Promise.all([
      fetch(`${running.origin}/`),
      fetch(`${running.origin}/nothing`),
      fetch(`${running.origin}/api/x`),
      fetch(`${running.origin}/api/x`, { headers: { cookie } }),
      fetch(`${running.origin}/api/throws`, { headers: { cookie } }),
    ]);
    expect(answers.map((answer) => answer.status)).toEqual([200, 404, 401, 200, 500]);
    for (const { headers } of answers) {
      expect(headers.get('content-security-policy')).toContain("default-src 'none'");
      expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
      expect(headers.get('vary')).toBe('Origin, Sec-Fetch-Site');
    }
    for (const { headers } of answers.slice(1)) expect(headers.get('cache-control')).toBe('no-store');
  });
});

describe('H5: reading changes nothing', () => {
  it('hands GET and HEAD to the host as reads only, whatever the address says', async () => {
    running.host.written.length = 0;
    for (const target of [
      '/',
      '/session',
      '/api/x',
      '/api/parts/add?quantity=1',
      '/api/rpc/exchange/start',
      '/api/throws',
    ]) {
      for (const method of ['GET', 'HEAD']) {
        const answer = await fetch(running.origin + target, { method, headers: { cookie } });
        expect(answer.headers.get('set-cookie')).toBeNull();
        if (method === 'HEAD') expect(await answer.text()).toBe('');
      }
    }
    const body = {
      Host: `127.0.0.1:${running.port}`,
      Cookie: cookie,
      'Content-Type': 'application/json',
      'Content-Length': '2',
    };
    expect((await raw(running.port, request('GET', '/api/x', body, '{}'))).status).toBe(400);
    expect(running.host.written).toEqual([]);
  });

  it('refuses to change a page', async () => {
    for (const method of ['POST', 'PUT', 'DELETE']) {
      const answer = await fetch(`${running.origin}/mark.svg`, { method, headers: { origin: running.origin, cookie } });
      expect(answer.status).toBe(405);
    }
  });
});

describe('H6: nothing from outside the page folder', () => {
  const climbs = ['..', '%2e%2e', '%252e%252e', '.%2e', '%c0%ae%c0%ae', '..%00', '....', '..;', '%uff0e%uff0e', '․․'];
  const slashes = ['/', '%2f', '%252f', '\\', '%5c', '//', '/./', '%c0%af'];
  const names = [
    'leak.txt',
    'up/secret.txt',
    'up/renderer/index.html',
    '.hidden',
    'assets/index-AbCd1234.js.map',
    'assets',
    'assets/',
    'index.html%00.js',
    'index.html::$DATA',
    'index.html/',
    'C:/secret.txt',
    'C:%5csecret.txt',
    '//server/share/secret.txt',
    '%5c%5cserver%5cshare%5csecret.txt',
    'CON',
    'NUL',
    'aux.txt',
    'COM1',
    'file:///etc/passwd',
    '%',
    '%zz',
    '%ff%fe',
    'a'.repeat(8 * 1024),
    '~/secret.txt',
    '$HOME/secret.txt',
    'constructor',
    '__proto__',
  ];

  it('answers 250 hostile paths with a refusal', async () => {
    const paths = [...names];
    for (const climb of climbs) {
      for (const slash of slashes) {
        paths.push(`${climb}${slash}secret.txt`, `assets${slash}${climb}${slash}${climb}${slash}secret.txt`);
        paths.push(`${climb}${slash}${climb}${slash}${climb}${slash}${climb}${slash}etc${slash}passwd`);
      }
    }
    expect(paths.length).toBeGreaterThanOrEqual(250);
    for (const hostile of paths) {
      const bytes = Buffer.from(request('GET', `/${hostile}`, { Host: `127.0.0.1:${running.port}` }), 'utf8');
      const { status, text } = await raw(running.port, bytes);
      expect([400, 403, 404, 414], hostile.slice(0, 80)).toContain(status);
      expect(text).not.toContain(outside);
      expect(text).not.toContain('root:');
    }
  });
});
