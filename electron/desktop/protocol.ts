import { type Protocol, protocol } from 'electron';
import type { HostLike } from '../host-like.ts';
import type { Bundle, PageFile } from '../page/bundle.ts';
import { guardedAnswer } from '../page/guarded-answer.ts';
import { securityHeaders } from '../page/headers.ts';
import { newProblemId, problemText } from '../page/problem.ts';
import { isOwnPage, ownHost, scheme } from './own-page.ts';

/** Makes our scheme a secure origin like https. Must be called once, before the program is ready. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ]);
}

/** What answers the scheme, and who wants to know that the host may have changed something. */
export interface SchemeParts {
  readonly bundle: Bundle;
  readonly host: HostLike;
  readonly log: (line: string) => void;
  readonly afterChange: () => void;
}

/** Answers every request of our scheme: the built page, and /api by the host. */
export function answerScheme(on: Protocol, parts: SchemeParts): void {
  on.handle(scheme, (request) => answer(request, parts));
}

async function answer(request: Request, parts: SchemeParts): Promise<Response> {
  const origin = request.headers.get('origin');
  if (!isOwnPage(request.url) || (origin !== null && origin !== `${scheme}://${ownHost}`)) {
    return refused(403, 'not-allowed-from-here', 'The request does not come from the workbook’s own page.');
  }
  const { pathname } = new URL(request.url);
  if (pathname.startsWith('/api/')) {
    const response = await guardedAnswer(parts.host, request, parts.log);
    if (request.method !== 'GET') parts.afterChange();
    return response;
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return refused(405, 'bad-input', 'A page can only be read.');
  }
  if (pathname === '/' || pathname === '/index.html') {
    const { file, styleNonce } = parts.bundle.startPage();
    return page(file, styleNonce);
  }
  const file = parts.bundle.find(pathname);
  return file === null ? refused(404, 'not-found', 'There is no such page here.') : page(file);
}

function page(file: PageFile, styleNonce?: string): Response {
  const headers = { ...securityHeaders(styleNonce), 'Content-Type': file.type, 'Cache-Control': file.cacheControl };
  return new Response(file.body, { headers });
}

function refused(status: number, code: string, message: string): Response {
  const headers = {
    ...securityHeaders(),
    'Cache-Control': 'no-store',
    'Content-Type': 'application/json; charset=utf-8',
  };
  return new Response(problemText({ status, code, message }, newProblemId(), ''), { status, headers });
}
