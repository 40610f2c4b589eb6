import type { IncomingMessage, ServerResponse } from 'node:http';
import type { HostLike } from '../host-like.ts';
import type { Bundle } from '../page/bundle.ts';
import { guardedAnswer } from '../page/guarded-answer.ts';
import { securityHeaders } from '../page/headers.ts';
import { newProblemId, type Problem } from '../page/problem.ts';
import { type BodyRule, BodyTooLarge, bodyRule, hasBody, readBody, refusedBody, tooLarge } from './body.ts';
import { sendWebResponse, toWebRequest } from './exchange.ts';
import { changes, foreignRead, gate } from './gate.ts';
import { type Rate, RateLimit } from './rate.ts';
import { notSignedIn, refuse, send, slowDown } from './replies.ts';
import type { Sessions } from './sessions.ts';

/** What a desk answers from. */
export interface DeskParts {
  readonly host: HostLike;
  readonly bundle: Bundle;
  readonly sessions: Sessions;
  readonly rate: Rate;
  readonly origin: string;
  readonly hosts: ReadonlySet<string>;
  readonly log: (line: string) => void;
}

const wrongLinksPerMinute = 20;

/** Answers one request after another: gate, then page or session or host. */
export class Desk {
  readonly #parts: DeskParts;
  readonly #requests: RateLimit;
  readonly #wrongLinks = new RateLimit({ perSecond: wrongLinksPerMinute / 60, burst: wrongLinksPerMinute });

  constructor(parts: DeskParts) {
    this.#parts = parts;
    this.#requests = new RateLimit(parts.rate);
  }

  /** Answers a request, whatever it is. Never rejects. */
  async answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      const problem = gate(request, this.#parts.hosts) ?? (await this.#route(request, response));
      if (problem !== null) refuse(request, response, problem);
    } catch (failure) {
      if (response.headersSent || request.destroyed) {
        response.destroy();
        return;
      }
      if (failure instanceof BodyTooLarge) {
        refuse(request, response, tooLarge(failure.rule));
        return;
      }
      const id = newProblemId();
      this.#parts.log(`[${id}] ${failure instanceof Error ? (failure.stack ?? failure.message) : String(failure)}`);
      refuse(request, response, { status: 500, code: 'unexpected', message: 'The request was not answered.' }, id);
    }
  }

  async #route(request: IncomingMessage, response: ServerResponse): Promise<Problem | null> {
    const pathname = (request.url ?? '').split('?')[0] ?? '';
    if (pathname === '/session') return this.#signIn(request, response);
    if (pathname.startsWith('/api/')) return this.#ask(request, response, pathname);
    return this.#page(request, response, pathname);
  }

  #page(request: IncomingMessage, response: ServerResponse, pathname: string): Problem | null {
    if (changes(request.method ?? '')) {
      const message = 'A page can only be read.';
      return { status: 405, code: 'bad-input', message, headers: { Allow: 'GET, HEAD' } };
    }
    if (pathname === '/' || pathname === '/index.html') {
      const { file, styleNonce } = this.#parts.bundle.startPage();
      send(request, response, file, styleNonce);
      return null;
    }
    const file = this.#parts.bundle.find(pathname);
    if (file === null) return { status: 404, code: 'not-found', message: 'There is no such page here.' };
    send(request, response, file);
    return null;
  }

  async #signIn(request: IncomingMessage, response: ServerResponse): Promise<Problem | null> {
    if (request.method !== 'POST') {
      const message = 'Signing in is a POST.';
      return { status: 405, code: 'bad-input', message, headers: { Allow: 'POST' } };
    }
    const rule = { ...bodyRule('/session'), most: 1024 };
    const refused = refusedBody(request, rule);
    if (refused !== null) return refused;
    const secret = secretIn(await this.#body(request, response, rule));
    const cookie = secret === null ? null : this.#parts.sessions.exchange(secret);
    if (cookie === null) {
      const wait = this.#wrongLinks.wait('all');
      return wait > 0 ? slowDown(wait) : notSignedIn;
    }
    response.writeHead(204, { ...securityHeaders(), 'Cache-Control': 'no-store', 'Set-Cookie': cookie });
    response.end();
    return null;
  }

  async #ask(request: IncomingMessage, response: ServerResponse, pathname: string): Promise<Problem | null> {
    const session = this.#parts.sessions.signedIn(request.headers.cookie);
    if (session === null) return notSignedIn;
    const foreign = foreignRead(request);
    if (foreign !== null) return foreign;
    const wait = this.#requests.wait(session);
    if (wait > 0) return slowDown(wait);
    const rule = bodyRule(pathname);
    const refused = refusedBody(request, rule);
    if (refused !== null) return refused;
    let body: Uint8Array<ArrayBuffer> | null = null;
    if (hasBody(request)) {
      if (!changes(request.method ?? '')) {
        return { status: 400, code: 'bad-input', message: 'A read takes no body.', headers: { Connection: 'close' } };
      }
      body = await this.#body(request, response, rule);
    }
    const gone = new AbortController();
    response.once('close', () => gone.abort());
    let asked: Request;
    try {
      asked = toWebRequest(request, this.#parts.origin, body, gone.signal);
    } catch {
      return { status: 400, code: 'bad-input', message: 'The request can’t be read. Nothing was changed.' };
    }
    const answer = await guardedAnswer(this.#parts.host, asked, this.#parts.log);
    if (response.destroyed) await answer.body?.cancel();
    else await sendWebResponse(answer, response, request.method === 'HEAD');
    return null;
  }

  #body(request: IncomingMessage, response: ServerResponse, rule: BodyRule) {
    if (request.headers.expect !== undefined) response.writeContinue();
    return readBody(request, rule);
  }
}

function secretIn(body: Uint8Array): string | null {
  try {
    const read: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body));
    const token = typeof read === 'object' && read !== null && 'token' in read ? read.token : null;
    return typeof token === 'string' ? token : null;
  } catch {
    return null;
  }
}
