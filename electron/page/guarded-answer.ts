import type { HostLike } from '../host-like.ts';
import { securityHeaders } from './headers.ts';
import { newProblemId, problemText } from './problem.ts';

/** Headers that only the shell decides, and those that belong to one hop of the connection. */
const shellsOwn =
  /^(access-control-.*|set-cookie|connection|keep-alive|transfer-encoding|upgrade|content-security-policy|server)$/;

/**
 * Asks the host and makes its answer safe to send: the shell's headers on it, no caching, and in place of a failure
 * that nobody expected (an exception, or a plain 500) a text with an id and no inside of the program. The detail goes
 * to the log.
 */
export async function guardedAnswer(host: HostLike, request: Request, log: (line: string) => void): Promise<Response> {
  let answer: Response;
  try {
    answer = await host.handle(request);
  } catch (failure) {
    if (request.signal.aborted) return new Response(null, { status: 499, headers: securityHeaders() });
    return unexpected(log, request, failure instanceof Error ? (failure.stack ?? failure.message) : String(failure));
  }
  if (answer.status === 500) {
    return unexpected(log, request, await answer.text().catch(() => 'no text'));
  }
  const headers = new Headers();
  for (const [name, value] of answer.headers) if (!shellsOwn.test(name)) headers.append(name, value);
  for (const [name, value] of Object.entries(securityHeaders())) headers.set(name, value);
  headers.set('Cache-Control', 'no-store');
  return new Response(answer.body, { status: answer.status, headers });
}

function unexpected(log: (line: string) => void, request: Request, detail: string): Response {
  const id = newProblemId();
  const { pathname } = new URL(request.url);
  log(`[${id}] ${request.method} ${pathname}: ${detail}`);
  const problem = {
    status: 500,
    code: 'unexpected',
    message: `Something in the program went wrong (${id}), and the request was not answered. What was saved before is safe.`,
  };
  return new Response(problemText(problem, id, pathname), {
    status: 500,
    headers: { ...securityHeaders(), 'Cache-Control': 'no-store', 'Content-Type': 'application/json; charset=utf-8' },
  });
}
