import { Agent, get } from 'node:http';
import { connect } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RateLimit } from '../../../electron/browser/rate.ts';
import { cookieOf, type Running, raw, request, start } from './stand-in.ts';

const mebibyte = 1024 * 1024;
let running: Running;
let cookie: string;
const headers = (more: Record<string, string>) => ({
  Host: `127.0.0.1:${running.port}`,
  Origin: running.origin,
  Cookie: cookie,
  ...more,
});

beforeAll(async () => {
  running = await start({ limits: { rate: { perSecond: 10_000, burst: 10_000 } } });
  cookie = await cookieOf(running);
});
afterAll(() => running.shell.close());

describe('H7: bodies are limited', () => {
  const json = { 'Content-Type': 'application/json' };

  it('takes JSON of exactly 1 MiB and refuses a byte more', async () => {
    const post = (length: number) =>
      fetch(`${running.origin}/api/x`, {
        method: 'POST',
        headers: { cookie, origin: running.origin, 'content-type': 'application/json' },
        body: 'a'.repeat(length),
      }).then((answer) => answer.status);
    expect(await post(mebibyte)).toBe(200);
    running.host.calls = 0;
    await expect(post(mebibyte + 1)).resolves.toBe(413);
    expect(running.host.calls).toBe(0);
  });

  it('refuses a length that is claimed too large before the body comes', async () => {
    const began = performance.now();
    const bytes = request('POST', '/api/x', headers({ ...json, 'Content-Length': String(2 * mebibyte) }));
    expect((await raw(running.port, bytes)).status).toBe(413);
    expect(performance.now() - began).toBeLessThan(20_000);
  });

  it('stops a body without a length at the limit, within a second, and the host never hears of it', async () => {
    running.host.calls = 0;
    const before = process.memoryUsage().rss;
    const socket = connect(running.port, '127.0.0.1');
    socket.on('error', () => undefined);
    socket.write(request('POST', '/api/x', headers({ ...json, 'Transfer-Encoding': 'chunked' })));
    const piece = 'a'.repeat(64 * 1024);
    const answer = new Promise<string>((resolve) => socket.once('data', (data) => resolve(data.toString('latin1'))));
    for (let sent = 0; sent <= mebibyte; sent += piece.length) socket.write(`10000\r\n${piece}\r\n`);
    const crossed = performance.now();
    expect(await answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(performance.now() - crossed).toBeLessThan(20_000);
    socket.destroy();
    expect(running.host.calls).toBe(0);
    expect(process.memoryUsage().rss - before).toBeLessThan(64 * mebibyte);
  });

  it('refuses packed bodies, kinds that a route does not take and lengths that lie', async () => {
    running.host.calls = 0;
    const bomb = gzipSync(Buffer.alloc(8 * mebibyte)).toString('latin1');
    const length = { 'Content-Length': '2' };
    const packed = headers({ ...json, 'Content-Encoding': 'gzip', 'Content-Length': String(bomb.length) });
    const both = { ...json, 'Transfer-Encoding': 'chunked', 'Content-Length': '2' };
    const answers = await Promise.all([
      raw(running.port, Buffer.from(request('POST', '/api/x', packed, bomb), 'latin1')),
      raw(running.port, request('POST', '/api/x', headers({ 'Content-Type': 'text/plain', ...length }), '{}')),
      raw(running.port, request('POST', '/api/x', headers({ 'Content-Type': 'multipart/form-data', ...length }), '{}')),
      raw(running.port, request('POST', '/api/x', headers(length), '{}')),
      raw(running.port, request('POST', '/api/x', headers({ ...json, 'Content-Length': '-1' }), '{}')),
      raw(running.port, request('POST', '/api/x', headers({ ...json, 'Content-Length': '2, 3' }), '{}')),
      raw(running.port, request('POST', '/api/x', headers(both), '0\r\n\r\n')),
    ]);
    expect(answers.map((answer) => answer.status)).toEqual([415, 415, 415, 415, 400, 400, 400]);
    const short = raw(running.port, request('POST', '/api/x', headers({ ...json, 'Content-Length': '9' }), '{}'), 300);
    expect((await short).status).toBe(0);
    expect(running.host.calls).toBe(0);
  });

  it('takes a file of several megabytes on an importing route only', async () => {
    const form = () => {
      const data = new FormData();
      data.set('file', new Blob([new Uint8Array(4 * mebibyte)]), 'parts.csv');
      return { method: 'POST', headers: { cookie, origin: running.origin }, body: data };
    };
    expect((await fetch(`${running.origin}/api/rpc/exchange/read`, form())).status).toBe(200);
    await expect(fetch(`${running.origin}/api/parts/add`, form()).then((answer) => answer.status)).resolves.toBe(415);
  });

  it('waits to be told before it reads when the client asks first', async () => {
    const sent = headers({ ...json, 'Content-Length': '2', Expect: '100-continue' });
    const { text } = await raw(running.port, request('POST', '/api/x', sent, '{}'));
    expect(text).toMatch(/^HTTP\/1\.1 100 Continue\r\n\r\nHTTP\/1\.1 200 /);
    const large = headers({ ...json, 'Content-Length': String(2 * mebibyte), Expect: '100-continue' });
    expect((await raw(running.port, request('POST', '/api/x', large))).text).toMatch(/^HTTP\/1\.1 413 /);
  });
});

describe('H8: slow clients', () => {
  /** Opens sockets that send a byte every 300 ms and answers how long each lived, in milliseconds. */
  async function slowly(port: number, count: number, first: string, until: number): Promise<number[]> {
    return Promise.all(
      Array.from({ length: count }, async () => {
        const began = performance.now();
        const socket = connect(port, '127.0.0.1');
        let open = true;
        socket.on('error', () => undefined);
        socket.on('data', () => undefined);
        socket.on('close', () => {
          open = false;
        });
        socket.write(first);
        while (open && performance.now() - began < until) {
          await sleep(300);
          if (open) socket.write('a');
        }
        const lived = performance.now() - began;
        socket.destroy();
        return lived;
      }),
    );
  }

  // The bounds are wide, for a busy machine: what counts is that the server ends it, and not the sender.
  it('closes 200 slow headers, and answers an honest page meanwhile', async () => {
    const agent = new Agent({ keepAlive: true, maxSockets: 1 });
    const honest = () =>
      new Promise<number>((resolve, reject) => {
        const began = performance.now();
        const options = { host: '127.0.0.1', port: running.port, path: '/api/x', agent, headers: { cookie } };
        get(options, (answer) => {
          answer.resume();
          answer.on('end', () => resolve(answer.statusCode === 200 ? performance.now() - began : Number.NaN));
        }).on('error', reject);
      });
    await honest();
    let attacking = true;
    const attack = slowly(running.port, 200, 'GET /api/x HTTP/1.1\r\nX-Slow: ', 20_000).finally(() => {
      attacking = false;
    });
    const times: number[] = [];
    while (attacking) {
      times.push(await honest());
      await sleep(50);
    }
    agent.destroy();
    for (const lived of await attack) expect(lived).toBeLessThan(15_000);
    const sorted = times.toSorted((a, b) => a - b);
    expect(sorted.some(Number.isNaN)).toBe(false);
    expect(sorted[Math.floor(sorted.length * 0.95)]).toBeLessThan(5_000);
  }, 60_000);

  it('closes a slow body too (with the time cut from 30 s to 2 s for the test)', async () => {
    const quick = await start({ limits: { headersTimeout: 1_000, requestTimeout: 2_000, checkingInterval: 250 } });
    const session = await cookieOf(quick);
    const first = request('POST', '/api/x', {
      Host: `127.0.0.1:${quick.port}`,
      Origin: quick.origin,
      Cookie: session,
      'Content-Type': 'application/json',
      'Content-Length': '1000',
    });
    for (const lived of await slowly(quick.port, 20, first, 15_000)) expect(lived).toBeLessThan(10_000);
    expect(quick.host.calls).toBe(0);
    await quick.shell.close();
  });
});

describe('H10: requests are counted by session', () => {
  it('refuses what goes beyond the allowance, says when to come back, and leaves other sessions alone', async () => {
    const limited = await start({ limits: { rate: { perSecond: 1, burst: 20 } } });
    const one = await cookieOf(limited);
    const other = await cookieOf(limited);
    const ask = (session: string) => fetch(`${limited.origin}/api/x`, { headers: { cookie: session } });
    const statuses = await Promise.all(Array.from({ length: 40 }, () => ask(one).then((answer) => answer.status)));
    expect(statuses.filter((status) => status === 200).length).toBeGreaterThanOrEqual(20);
    expect(statuses.filter((status) => status === 200).length).toBeLessThanOrEqual(22);
    const refused = await ask(one);
    expect([refused.status, refused.headers.get('retry-after')]).toEqual([429, '1']);
    expect((await ask(other)).status).toBe(200);
    await limited.shell.close();
  });

  it('gives the allowance back with time', () => {
    let now = 0;
    const limit = new RateLimit({ perSecond: 2, burst: 2 }, () => now);
    expect([limit.wait('a'), limit.wait('a'), limit.wait('a')]).toEqual([0, 0, 1]);
    now = 500;
    expect([limit.wait('a'), limit.wait('a')]).toEqual([0, 1]);
    now = 60_000;
    expect([limit.wait('a'), limit.wait('a'), limit.wait('a')]).toEqual([0, 0, 1]);
  });
});
