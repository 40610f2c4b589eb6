import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cookieOf, type Running, raw, request, start } from './stand-in.ts';

let running: Running;
let cookie: string;

beforeAll(async () => {
  running = await start({ limits: { rate: { perSecond: 10_000, burst: 10_000 } } });
  cookie = await cookieOf(running);
});
afterAll(() => running.shell.close());

describe('H1: only the exact hosts are answered', () => {
  const variants = (port: number): Record<string, string[]> => ({
    'a name that resolves here': [`rebind.example:${port}`],
    'trailing dot': [`localhost.:${port}`, `127.0.0.1.:${port}`],
    'upper case': [`LOCALHOST:${port}`, `LocalHost:${port}`],
    userinfo: [`someone@127.0.0.1:${port}`, `a:b@localhost:${port}`],
    'wrong port': [`127.0.0.1:${port + 1}`, '127.0.0.1:80', `127.0.0.1:0${port}`, `127.0.0.1:${port}0`],
    'no port': ['127.0.0.1', 'localhost', '127.0.0.1:'],
    'other spellings of the address': [
      `2130706433:${port}`,
      `0x7f000001:${port}`,
      `0x7f.0.0.1:${port}`,
      `0177.0.0.1:${port}`,
      `127.1:${port}`,
      `127.0.1:${port}`,
      `127.000.000.001:${port}`,
      `0.0.0.0:${port}`,
      `0:${port}`,
    ],
    'version 6': [
      `[::1]:${port}`,
      `[::ffff:127.0.0.1]:${port}`,
      `[::ffff:7f00:1]:${port}`,
      `[::]:${port}`,
      `::1:${port}`,
    ],
    'near names': [
      `127.0.0.1.rebind.example:${port}`,
      `localhost.rebind.example:${port}`,
      `xlocalhost:${port}`,
      `127.0.0.2:${port}`,
      `127.0.0.1:${port}.rebind.example`,
      `127.0.0.1:${port}, rebind.example`,
      `127.0.0.1:${port}/`,
      `http://127.0.0.1:${port}`,
      `127.0.0.1%00:${port}`,
    ],
    nothing: [''],
  });

  it('refuses 40 variants before the host is asked', async () => {
    const hosts = Object.values(variants(running.port)).flat();
    expect(hosts.length).toBeGreaterThanOrEqual(38);
    running.host.calls = 0;
    for (const host of hosts) {
      const { status } = await raw(running.port, request('GET', '/api/x', { Host: host, Cookie: cookie }));
      expect([400, 403, 421], `Host: ${host}`).toContain(status);
    }
    const own = `127.0.0.1:${running.port}`;
    for (const [first, second] of [
      [own, 'rebind.example'],
      ['rebind.example', own],
      [own, own],
    ]) {
      const twice = `GET /api/x HTTP/1.1\r\nHost: ${first}\r\nHost: ${second}\r\nCookie: ${cookie}\r\nConnection: close\r\n\r\n`;
      expect([400, 421], `${first} ${second}`).toContain((await raw(running.port, twice)).status);
    }
    const absolute = request('GET', `http://${own}/api/x`, { Host: own, Cookie: cookie });
    expect((await raw(running.port, absolute)).status).toBe(421);
    const none = `GET /api/x HTTP/1.0\r\nCookie: ${cookie}\r\n\r\n`;
    expect((await raw(running.port, none)).status).toBe(421);
    expect(running.host.calls).toBe(0);
  });

  it('answers 127.0.0.1 and localhost at the port', async () => {
    for (const host of [`127.0.0.1:${running.port}`, `localhost:${running.port}`]) {
      const { status } = await raw(running.port, request('GET', '/api/x', { Host: host, Cookie: cookie }));
      expect(status, host).toBe(200);
    }
  });
});

describe('H2: nothing without a session', () => {
  it('answers every route and method the same way, with no data', async () => {
    running.host.calls = 0;
    const own = { Host: `127.0.0.1:${running.port}`, Origin: running.origin };
    const wrong = cookie.replace(/=.*/, `=${createHash('sha256').update('other').digest('base64url')}`);
    const bodies = new Set<string>();
    for (const method of ['GET', 'POST', 'PUT', 'PATCH', 'DELETE']) {
      for (const target of ['/api/', '/api/x', '/api/changes', '/api/exchange/start', '/api/throws', '/api/x?y=1']) {
        for (const sent of [
          undefined,
          wrong,
          cookie.slice(0, -1),
          cookie.toUpperCase(),
          `x${cookie}`,
          'hoistday-1=a',
        ]) {
          const headers = sent === undefined ? own : { ...own, Cookie: sent };
          const { status, text } = await raw(running.port, request(method, target, headers));
          expect(status, `${method} ${target} ${sent}`).toBe(401);
          bodies.add(text.slice(text.indexOf('\r\n\r\n')).replace(/"id":"[^"]+"/, ''));
        }
      }
    }
    expect(bodies.size).toBe(1);
    expect(running.host.calls).toBe(0);
  });

  it('trades a link for an HttpOnly, strict cookie and refuses every other secret alike', async () => {
    const post = (body: string) =>
      fetch(`${running.origin}/session`, {
        method: 'POST',
        headers: { origin: running.origin, 'content-type': 'application/json' },
        body,
      });
    const token = new URL(running.shell.url).hash.slice(3);
    expect(Buffer.from(token, 'base64url').length).toBe(32);
    const good = await post(JSON.stringify({ token }));
    expect(good.status).toBe(204);
    expect(good.headers.get('set-cookie')).toMatch(
      new RegExp(`^hoistday-${running.port}=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict$`),
    );
    for (const body of [
      '{}',
      '[]',
      'null',
      '{"token":1}',
      '{"token":""}',
      'not json',
      JSON.stringify({ token: `${token}a` }),
    ]) {
      const answer = await post(body);
      expect(answer.status, body).toBe(401);
      expect(answer.headers.get('set-cookie')).toBeNull();
    }
  });

  it('makes a link for another program that works once', async () => {
    const url = running.shell.openingUrl();
    await expect(cookieOf(running, url)).resolves.toMatch(/^hoistday-/);
    await expect(cookieOf(running, url)).rejects.toThrow('401');
  });

  it('holds back a run of wrong secrets', async () => {
    const other = await start();
    const statuses: number[] = [];
    for (let guess = 0; guess < 30; guess += 1) {
      const answer = await fetch(`${other.origin}/session`, {
        method: 'POST',
        headers: { origin: other.origin, 'content-type': 'application/json' },
        body: JSON.stringify({ token: `guess-${guess}` }),
      });
      statuses.push(answer.status);
    }
    expect(new Set(statuses)).toEqual(new Set([401, 429]));
    await expect(cookieOf(other)).resolves.toMatch(/^hoistday-/);
    await other.shell.close();
  });
});

describe('H3: only the page itself may change something', () => {
  it('refuses 156 of 160 combinations of method, Origin and Sec-Fetch-Site, and writes nothing for them', async () => {
    const { port, origin } = running;
    const origins = [
      undefined,
      'null',
      'http://other.example',
      `http://127.0.0.1:${port + 1}`,
      `https://127.0.0.1:${port}`,
      `${origin}.other.example`,
      `http://127.0.0.1.:${port}`,
      origin,
    ];
    const sites = [undefined, 'same-origin', 'same-site', 'cross-site', 'none'];
    running.host.written.length = 0;
    let passed = 0;
    let tried = 0;
    for (const method of ['POST', 'PUT', 'PATCH', 'DELETE']) {
      for (const from of origins) {
        for (const site of sites) {
          tried += 1;
          const headers: Record<string, string> = {
            Host: `127.0.0.1:${port}`,
            Cookie: cookie,
            'Content-Type': 'application/json',
            'Content-Length': '2',
            ...(from === undefined ? {} : { Origin: from }),
            ...(site === undefined ? {} : { 'Sec-Fetch-Site': site }),
          };
          const { status } = await raw(port, request(method, '/api/parts/add', headers, '{}'));
          const mayPass = from === origin && (site === undefined || site === 'same-origin');
          expect(status, `${method} ${from} ${site}`).toBe(mayPass ? 200 : 403);
          passed += mayPass ? 1 : 0;
        }
      }
    }
    expect(tried).toBe(160);
    expect(running.host.written).toHaveLength(passed);
    expect(passed).toBe(8);
  });

  it('refuses a read that another site is behind, and sends no sharing headers', async () => {
    for (const headers of [
      { 'sec-fetch-site': 'cross-site' },
      { origin: 'http://other.example' },
      { origin: 'null' },
    ]) {
      const answer = await raw(
        running.port,
        request('GET', '/api/x', { Host: `127.0.0.1:${running.port}`, Cookie: cookie, ...headers }),
      );
      expect(answer.status).toBe(403);
    }
    const answer = await fetch(`${running.origin}/api/x`, { headers: { cookie } });
    expect(answer.status).toBe(200);
    expect([...answer.headers.keys()].filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  it('takes no other method', async () => {
    for (const method of ['OPTIONS', 'TRACE', 'PROPFIND']) {
      const headers = { Host: `127.0.0.1:${running.port}`, Cookie: cookie, Origin: running.origin };
      expect((await raw(running.port, request(method, '/api/x', headers))).status, method).toBe(405);
    }
    const connect = request('CONNECT', '/api/x', { Host: `127.0.0.1:${running.port}` });
    expect((await raw(running.port, connect)).status).toBe(0);
  });
});
