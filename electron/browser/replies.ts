import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Duplex } from 'node:stream';
import type { PageFile } from '../page/bundle.ts';
import { securityHeaders } from '../page/headers.ts';
import { newProblemId, type Problem, problemText } from '../page/problem.ts';
import { hasBody } from './body.ts';

/** The refusal of every request for data without a session; the same text whatever was wrong with it. */
export const notSignedIn: Problem = {
  status: 401,
  code: 'not-signed-in',
  message: 'This page is not signed in. Open the link that Hoistday printed when it started. Nothing was changed.',
};

/** The refusal of requests that come faster than the allowance. */
export function slowDown(seconds: number): Problem {
  return {
    status: 429,
    code: 'too-many',
    message: 'Too many requests at once. Nothing was changed; try again shortly.',
    headers: { 'Retry-After': String(seconds) },
  };
}

/** Sends a file of the page. */
export function send(request: IncomingMessage, response: ServerResponse, file: PageFile, styleNonce?: string): void {
  response.writeHead(200, {
    ...securityHeaders(styleNonce),
    'Content-Type': file.type,
    'Content-Length': file.body.byteLength,
    'Cache-Control': file.cacheControl,
  });
  response.end(request.method === 'HEAD' ? undefined : file.body);
}

/** Sends a refusal. The unread rest of a refused body is not waited for: the connection ends with the answer. */
export function refuse(
  request: IncomingMessage,
  response: ServerResponse,
  problem: Problem,
  id = newProblemId(),
): void {
  const text = problemText(problem, id, request.url ?? '');
  const unread = hasBody(request) && !request.complete;
  response.writeHead(problem.status, {
    ...securityHeaders(),
    'Cache-Control': 'no-store',
    'Content-Type': 'application/json; charset=utf-8',
    'Content-Length': Buffer.byteLength(text),
    ...problem.headers,
    ...(unread ? { Connection: 'close' } : {}),
  });
  response.end(request.method === 'HEAD' ? undefined : text);
  if (unread) {
    request.resume();
    response.once('finish', () => setTimeout(() => request.socket.destroy(), 500).unref());
  }
}

/** What the parser can't read gets a plain status line and the end of the connection. */
export function refuseUnreadable(failure: NodeJS.ErrnoException, socket: Duplex): void {
  if (failure.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy();
    return;
  }
  const statusLines: Readonly<Record<string, string>> = {
    HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large',
    ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout',
  };
  const status = statusLines[failure.code ?? ''] ?? '400 Bad Request';
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\nX-Content-Type-Options: nosniff\r\n\r\n`);
}
