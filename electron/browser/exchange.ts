import type { IncomingMessage, ServerResponse } from 'node:http';
import { Readable } from 'node:stream';
import type { ReadableStream as NodeReadableStream } from 'node:stream/web';

/** Headers that the host never needs to see: the connection's own, and the session that the shell has checked. */
const keptBack = new Set([
  'host',
  'connection',
  'keep-alive',
  'transfer-encoding',
  'cookie',
  'expect',
  'upgrade',
  'te',
]);

/** A web-standard request for the host, aborted when the client goes away. */
export function toWebRequest(
  incoming: IncomingMessage,
  origin: string,
  body: Uint8Array<ArrayBuffer> | null,
  signal: AbortSignal,
): Request {
  const headers = new Headers();
  for (const [name, value] of Object.entries(incoming.headers)) {
    if (value === undefined || keptBack.has(name)) continue;
    headers.set(name, Array.isArray(value) ? value.join(', ') : value);
  }
  return new Request(new URL(`${origin}${incoming.url ?? '/'}`), {
    // A HEAD is a GET whose body is not sent: the host need not know the difference.
    method: incoming.method === 'HEAD' ? 'GET' : (incoming.method ?? 'GET'),
    headers,
    signal,
    ...(body === null ? {} : { body }),
  });
}

/**
 * Sends the host's answer as it comes, so that a change feed arrives line by line. When the client goes away the
 * stream is cancelled, so that the host lets go of it.
 */
export async function sendWebResponse(answer: Response, outgoing: ServerResponse, head: boolean): Promise<void> {
  outgoing.statusCode = answer.status;
  for (const [name, value] of answer.headers) outgoing.setHeader(name, value);
  if (answer.body === null || head) {
    await answer.body?.cancel();
    outgoing.end();
    return;
  }
  outgoing.flushHeaders();
  const stream = Readable.fromWeb(answer.body as NodeReadableStream<Uint8Array>);
  await new Promise<void>((resolve) => {
    outgoing.once('close', () => {
      stream.destroy();
      resolve();
    });
    stream.once('error', () => outgoing.destroy());
    stream.pipe(outgoing);
  });
}
