import type { IncomingMessage } from 'node:http';
import type { Problem } from '../page/problem.ts';

const reading = new Set(['GET', 'HEAD']);
const changing = new Set(['POST', 'PUT', 'PATCH', 'DELETE']);
const longestTarget = 8 * 1024;

/** True for the methods that may change something, which must prove where they come from. */
export function changes(method: string): boolean {
  return !reading.has(method);
}

/** The hosts that a request may name. A page of another name that resolves to this machine names itself here. */
export function allowedHosts(port: number): ReadonlySet<string> {
  return new Set([`127.0.0.1:${port}`, `localhost:${port}`]);
}

/**
 * The checks that come before anything of a request is looked at: one exact Host line, a plain path, a known method,
 * and for methods that change something the exact Origin of our own page. Answers the refusal, or null to let it pass.
 *
 * A browser that sends Sec-Fetch-Site says itself when another site is behind the request; one that doesn't is held by
 * the Origin alone.
 */
export function gate(request: IncomingMessage, hosts: ReadonlySet<string>): Problem | null {
  const target = request.url ?? '';
  const host = onlyHost(request);
  if (host === null || !hosts.has(host)) {
    return { status: 421, code: 'wrong-host', message: 'This workbook answers only at the address that it printed.' };
  }
  if (!target.startsWith('/')) {
    return { status: 421, code: 'wrong-host', message: 'Only a path of this workbook can be asked for.' };
  }
  if (target.length > longestTarget) {
    return { status: 414, code: 'bad-input', message: 'The address is too long.', accepted: 'at most 8 KiB' };
  }
  const method = request.method ?? '';
  if (!reading.has(method) && !changing.has(method)) {
    return {
      status: 405,
      code: 'bad-input',
      message: 'This method is not answered here.',
      headers: { Allow: 'GET, HEAD, POST, PUT, PATCH, DELETE' },
    };
  }
  return changing.has(method) ? foreign(request, `http://${host}`, true) : null;
}

/** The same question for a read of data: another site's page may not have its answer, whatever cookie came along. */
export function foreignRead(request: IncomingMessage): Problem | null {
  return foreign(request, `http://${request.headers.host}`, false);
}

function foreign(request: IncomingMessage, own: string, originNeeded: boolean): Problem | null {
  const { origin } = request.headers;
  const site = request.headers['sec-fetch-site'];
  const originFits = origin === undefined ? !originNeeded : origin === own;
  const siteFits = site === undefined || site === 'same-origin' || (site === 'none' && !originNeeded);
  if (originFits && siteFits) return null;
  return {
    status: 403,
    code: 'not-signed-in',
    message: 'The request does not come from the workbook’s own page. Nothing was changed.',
  };
}

function onlyHost(request: IncomingMessage): string | null {
  let found: string | null = null;
  for (let at = 0; at < request.rawHeaders.length; at += 2) {
    if (request.rawHeaders[at]?.toLowerCase() !== 'host') continue;
    if (found !== null) return null;
    found = request.rawHeaders[at + 1] ?? '';
  }
  return found;
}
