import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type BrowserShell, type BrowserShellOptions, startBrowserShell } from '../../../electron/browser/shell.ts';
import type { HostLike } from '../../../electron/host-like.ts';

export const outside = 'this file lies outside the page folder';

/** A small built page, with a secret beside it and links that lead to it. */
export function pageFolder(): string {
  const root = mkdtempSync(path.join(tmpdir(), 'hoistday-page-'));
  const folder = path.join(root, 'renderer');
  mkdirSync(path.join(folder, 'assets'), { recursive: true });
  writeFileSync(path.join(root, 'secret.txt'), outside);
  writeFileSync(path.join(folder, 'index.html'), '<!doctype html><html><head></head><body>page</body></html>');
  writeFileSync(path.join(folder, 'assets', 'index-AbCd1234.js'), 'export {};');
  writeFileSync(path.join(folder, 'assets', 'index-AbCd1234.js.map'), outside);
  const probe =
    'let code = "refused"; try { code = new Function("return `ran`")(); } catch {} document.body.dataset.code = code;';
  writeFileSync(path.join(folder, 'probe.js'), probe);
  writeFileSync(path.join(folder, 'mark.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(path.join(folder, '.hidden'), outside);
  symlinkSync(path.join(root, 'secret.txt'), path.join(folder, 'leak.txt'));
  symlinkSync(root, path.join(folder, 'up'));
  return folder;
}

/** A host that counts what reaches it, keeps what is written to it, and has a change feed. */
interface StandIn extends HostLike {
  calls: number;
  readonly written: string[];
  aborted: number;
}

function standInHost(): StandIn {
  const host: StandIn = {
    calls: 0,
    written: [],
    aborted: 0,
    openFile: () => undefined,
    current: () => null,
    close: () => undefined,
    async handle(request) {
      host.calls += 1;
      const { pathname } = new URL(request.url);
      if (pathname === '/api/changes') return changeFeed(request, host);
      if (pathname === '/api/throws') throw new Error('SQLITE_ERROR: near "SELECT" at /home/someone/file.ts:1');
      if (pathname === '/api/fails')
        return Response.json({ stack: 'SELECT * FROM entry at /home/x.ts' }, { status: 500 });
      if (request.method === 'GET')
        return Response.json({ pathname }, { headers: { 'access-control-allow-origin': '*' } });
      const body = await request.text();
      host.written.push(body.length > 100 ? `${body.length} characters` : body);
      return Response.json({ length: body.length });
    },
  };
  return host;
}

function changeFeed(request: Request, host: StandIn): Response {
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => controller.enqueue(new TextEncoder().encode('data: one\n\n')),
  });
  request.signal.addEventListener('abort', () => {
    host.aborted += 1;
  });
  return new Response(body, { headers: { 'content-type': 'text/event-stream' } });
}

export interface Running {
  readonly shell: BrowserShell;
  readonly host: StandIn;
  readonly port: number;
  readonly origin: string;
  readonly log: string[];
}

export async function start(more: Partial<BrowserShellOptions> = {}): Promise<Running> {
  const host = standInHost();
  const log: string[] = [];
  const rendererFolder = more.rendererFolder ?? pageFolder();
  const shell = await startBrowserShell({ host, rendererFolder, log: (line) => log.push(line), ...more });
  return { shell, host, port: shell.port, origin: `http://127.0.0.1:${shell.port}`, log };
}

/** Trades the link for a cookie, as the page does. */
export async function cookieOf(running: Running, url = running.shell.url): Promise<string> {
  const answer = await fetch(`${running.origin}/session`, {
    method: 'POST',
    headers: { origin: running.origin, 'content-type': 'application/json' },
    body: JSON.stringify({ token: new URL(url).hash.slice(3) }),
  });
  if (answer.status !== 204) throw new Error(`signing in answered ${answer.status}`);
  return (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
}

export interface RawAnswer {
  readonly status: number;
  readonly text: string;
}

/** Sends bytes as they are (clients tidy up paths and headers) and reads until the server closes or `patience` ends. */
export function raw(port: number, bytes: string | Uint8Array, patience = 2000): Promise<RawAnswer> {
  return new Promise((resolve) => {
    const socket: Socket = connect(port, '127.0.0.1');
    let text = '';
    let timer: NodeJS.Timeout | undefined;
    const done = () => {
      clearTimeout(timer);
      socket.destroy();
      resolve({ status: Number(/^HTTP\/1\.1 (\d{3})/.exec(text)?.[1] ?? 0), text });
    };
    timer = setTimeout(done, patience);
    socket.on('connect', () => socket.write(bytes));
    socket.on('data', (piece) => {
      text += piece.toString('latin1');
    });
    socket.on('close', done);
    socket.on('error', done);
  });
}

/** A plain request in bytes; `Connection: close` so that the answer's end is the connection's end. */
export function request(method: string, target: string, headers: Record<string, string>, body = ''): string {
  const lines = Object.entries({ Connection: 'close', ...headers }).map(([name, value]) => `${name}: ${value}\r\n`);
  return `${method} ${target} HTTP/1.1\r\n${lines.join('')}\r\n${body}`;
}
