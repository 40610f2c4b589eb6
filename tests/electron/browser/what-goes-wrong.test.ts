import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { Sessions } from '../../../electron/browser/sessions.ts';
import { cookieOf, pageFolder, type Running, raw, request, start } from './stand-in.ts';

let running: Running;
let cookie: string;

beforeAll(async () => {
  running = await start({ limits: { rate: { perSecond: 100_000, burst: 100_000 } } });
  cookie = await cookieOf(running);
});
afterAll(() => running.shell.close());

const inside = /\bat .*:\d|SELECT|SQLITE|\/home\/|node_modules|\.ts\b/;

describe('H12: comparing secrets', () => {
  it('takes as long for a first wrong character as for a last one (loosely: the machine is shared)', () => {
    const sessions = new Sessions(1);
    const secret = sessions.newLink();
    const firstWrong = `${secret[0] === 'a' ? 'b' : 'a'}${secret.slice(1)}`;
    const lastWrong = `${secret.slice(0, -1)}${secret.endsWith('A') ? 'E' : 'A'}`;
    const median = (guess: string) => {
      const times = Array.from({ length: 10_000 }, () => {
        const began = process.hrtime.bigint();
        sessions.exchange(guess);
        return Number(process.hrtime.bigint() - began);
      });
      return times.toSorted((a, b) => a - b)[5_000] ?? 0;
    };
    median(firstWrong);
    const ratios = Array.from({ length: 5 }, () => median(firstWrong) / median(lastWrong)).toSorted((a, b) => a - b);
    expect(ratios[2]).toBeGreaterThan(0.8);
    expect(ratios[2]).toBeLessThan(1.25);
  });

  it('forgets a link for another program after a minute, and knows no session of before', () => {
    let now = 0;
    const sessions = new Sessions(1, () => now);
    const link = sessions.newOpeningLink();
    now = 60_001;
    expect(sessions.exchange(link)).toBeNull();
    const value = sessions.exchange(sessions.newLink())?.split(';')[0];
    expect(sessions.signedIn(value)).toMatch(/^[0-9a-f]{64}$/);
    expect(new Sessions(1).signedIn(value)).toBeNull();
  });
});

describe('H13: what an error says', () => {
  it('has an id that the log has too, and nothing of the inside', async () => {
    for (const target of ['/api/throws', '/api/fails']) {
      const answer = await fetch(running.origin + target, { headers: { cookie } });
      const text = await answer.text();
      expect(answer.status).toBe(500);
      expect(text).not.toMatch(inside);
      const body = JSON.parse(text) as { code: string; detail: { id: string } };
      expect(body.code).toBe('unexpected');
      const logged = running.log.find((line) => line.includes(body.detail.id));
      expect(logged).toMatch(/SELECT/);
    }
  });

  it('says nothing of the inside in any other refusal', async () => {
    const own = { Host: `127.0.0.1:${running.port}`, Origin: running.origin, Cookie: cookie };
    const json = { ...own, 'Content-Type': 'application/json' };
    const answers = await Promise.all([
      raw(running.port, request('GET', '/no/such', own)),
      raw(running.port, request('GET', '/api/x', { ...own, Host: 'other.example' })),
      raw(running.port, request('POST', '/api/x', { ...own, Origin: 'null' })),
      raw(running.port, request('POST', '/session', { ...json, 'Content-Length': '1' }, '{')),
      raw(running.port, request('POST', '/session', { ...json, 'Content-Length': '2000' }, 'a'.repeat(2000))),
      raw(running.port, request('BREW', '/api/x', own)),
      raw(running.port, request('GET', '/api/x', { ...own, 'X-Long': 'a'.repeat(20_000) })),
    ]);
    expect(answers.map((answer) => answer.status)).toEqual([404, 421, 403, 401, 413, 400, 431]);
    for (const { text } of answers) expect(text).not.toMatch(inside);
  });
});

describe('H15: malformed requests', () => {
  it('answers a thousand of them and then an honest one', async () => {
    let seed = 12_345;
    const random = (below: number) => {
      seed = (Math.imul(seed, 1_103_515_245) + 12_345) >>> 0;
      return (seed >>> 8) % below;
    };
    const own = `Host: 127.0.0.1:${running.port}\r\nOrigin: ${running.origin}\r\nCookie: ${cookie}\r\n`;
    const body = '{"quantity":"1","note":"été 🚗"}';
    const whole = Buffer.from(
      `POST /api/parts/add?x=%E2%9C%93 HTTP/1.1\r\n${own}Content-Type: application/json\r\nConnection: close\r\n` +
        `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
    );
    const mutated = () => {
      const bytes = Buffer.from(whole);
      for (let times = 1 + random(4); times > 0; times -= 1) {
        const at = random(bytes.length);
        const kind = random(4);
        if (kind === 0) bytes[at] = random(256);
        if (kind === 1) bytes.fill(random(256), at, Math.min(bytes.length, at + random(12)));
        if (kind === 2) bytes.copyWithin(at, random(bytes.length));
        if (kind === 3) return bytes.subarray(0, at);
      }
      return bytes;
    };
    const exits = vi.fn();
    process.on('uncaughtException', exits);
    process.on('unhandledRejection', exits);
    const unexplained: string[] = [];
    for (let batch = 0; batch < 40; batch += 1) {
      const answers = await Promise.all(Array.from({ length: 25 }, () => raw(running.port, mutated(), 150)));
      for (const { status, text } of answers) {
        if (status >= 500 && !/"id":"[0-9a-f-]{36}"/.test(text)) unexplained.push(text);
        expect(text).not.toMatch(inside);
      }
    }
    process.off('uncaughtException', exits);
    process.off('unhandledRejection', exits);
    expect(unexplained).toEqual([]);
    expect(exits).not.toHaveBeenCalled();
    expect((await fetch(`${running.origin}/api/x`, { headers: { cookie } })).status).toBe(200);
  });
});

describe('the connection', () => {
  it('sends a change feed as it comes and tells the host when the page is gone', async () => {
    const stop = new AbortController();
    const answer = await fetch(`${running.origin}/api/changes`, { headers: { cookie }, signal: stop.signal });
    expect(answer.headers.get('content-type')).toBe('text/event-stream');
    const first = await answer.body?.getReader().read();
    expect(new TextDecoder().decode(first?.value)).toBe('data: one\n\n');
    stop.abort();
    await vi.waitFor(() => expect(running.host.aborted).toBe(1));
  });

  it('H16: says plainly that a port is taken, and does not move elsewhere', async () => {
    const again = start({ port: running.port, rendererFolder: pageFolder() });
    await expect(again).rejects.toThrow(`Port ${running.port} is used by another program. Nothing was changed.`);
  });

  it('listens on this machine’s own address only', async () => {
    const { networkInterfaces } = await import('node:os');
    const others = Object.values(networkInterfaces())
      .flat()
      .flatMap((found) => (found && !found.internal && found.family === 'IPv4' ? [found.address] : []));
    for (const address of others) {
      await expect(
        fetch(`http://${address}:${running.port}/`, { signal: AbortSignal.timeout(1000) }),
      ).rejects.toThrow();
    }
  });

  it('closes with a change feed open', async () => {
    const closing = await start();
    const session = await cookieOf(closing);
    const feed = await fetch(`${closing.origin}/api/changes`, { headers: { cookie: session } });
    const ended = feed.text().catch(() => 'cut');
    const began = performance.now();
    await closing.shell.close();
    expect(performance.now() - began).toBeLessThan(20_000);
    expect(await Promise.race([ended, sleep(1000, 'still open')])).not.toBe('still open');
  });
});
