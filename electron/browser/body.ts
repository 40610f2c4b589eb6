import type { IncomingMessage } from 'node:http';
import type { Problem } from '../page/problem.ts';

const mebibyte = 1024 * 1024;

/** What a route takes as a body: how much, and of which kinds. */
export interface BodyRule {
  readonly most: number;
  readonly types: ReadonlySet<string>;
}

const json: BodyRule = { most: mebibyte, types: new Set(['application/json']) };
const file: BodyRule = {
  most: 100 * mebibyte,
  types: new Set(['application/json', 'multipart/form-data', 'application/octet-stream']),
};

/** Files come in through the exchange procedures only; everywhere else a body is JSON of at most 1 MiB. */
export function bodyRule(pathname: string): BodyRule {
  return /^\/api\/rpc\/exchange\//.test(pathname) ? file : json;
}

/** True if the request says that a body follows. */
export function hasBody(request: IncomingMessage): boolean {
  const length = request.headers['content-length'];
  return request.headers['transfer-encoding'] !== undefined || (length !== undefined && length !== '0');
}

/** What can be refused before a byte of the body is read: its kind, its packing and the length that it claims. */
export function refusedBody(request: IncomingMessage, rule: BodyRule): Problem | null {
  if (!hasBody(request)) return null;
  const accepted = [...rule.types].join(', ');
  const type = (request.headers['content-type'] ?? '').split(';')[0]?.trim().toLowerCase() ?? '';
  if (!rule.types.has(type)) {
    return { status: 415, code: 'bad-input', message: 'This kind of body is not taken here.', accepted };
  }
  const packing = request.headers['content-encoding'];
  if (packing !== undefined && packing.toLowerCase() !== 'identity') {
    return { status: 415, code: 'bad-input', message: 'A packed body is not taken.', accepted: 'no Content-Encoding' };
  }
  return Number(request.headers['content-length'] ?? 0) > rule.most ? tooLarge(rule) : null;
}

/** The refusal of a body that is larger than the route takes. */
export function tooLarge(rule: BodyRule): Problem {
  const most = `at most ${rule.most / mebibyte} MiB`;
  return {
    status: 413,
    code: 'bad-input',
    message: 'What was sent is too large. Nothing was changed.',
    accepted: most,
    headers: { Connection: 'close' },
  };
}

/** Thrown while reading, when more comes than the route takes. */
export class BodyTooLarge extends Error {
  override readonly name = 'BodyTooLarge';
  readonly rule: BodyRule;

  constructor(rule: BodyRule) {
    super('more came than the route takes');
    this.rule = rule;
  }
}

/**
 * Reads the whole body, however its length was given, and stops at the first byte too many: what is asked of the host
 * is always complete, so an oversized or broken-off request never reaches it. Throws `BodyTooLarge`.
 */
export async function readBody(request: IncomingMessage, rule: BodyRule): Promise<Uint8Array<ArrayBuffer>> {
  const claimed = request.headers['content-length'];
  let whole = new Uint8Array(claimed === undefined ? 64 * 1024 : Math.min(Number(claimed), rule.most));
  let size = 0;
  // Leaving the loop must not destroy the request: its refusal goes out on the same socket.
  for await (const piece of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    const end = size + piece.length;
    if (end > rule.most) throw new BodyTooLarge(rule);
    if (end > whole.length) whole = grown(whole, Math.min(rule.most, Math.max(end, whole.length * 2)));
    whole.set(piece, size);
    size = end;
  }
  return whole.subarray(0, size);
}

function grown(whole: Uint8Array<ArrayBuffer>, length: number): Uint8Array<ArrayBuffer> {
  const larger = new Uint8Array(length);
  larger.set(whole);
  return larger;
}
