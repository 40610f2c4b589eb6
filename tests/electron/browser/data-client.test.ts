import { createORPCClient, isDefinedError } from '@orpc/client';
import { RPCLink } from '@orpc/client/fetch';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { cookieOf, type Running, start } from './stand-in.ts';

let running: Running;
beforeAll(async () => {
  running = await start();
});
afterAll(() => running.shell.close());

type Anything = { parts: { list(input: object): Promise<unknown> } };

/** The page's data client, asking the shell as the page does. */
async function failureOf(headers: Record<string, string>, input: object): Promise<unknown> {
  const link = new RPCLink({ url: `${running.origin}/api/rpc`, headers: { origin: running.origin, ...headers } });
  const client = createORPCClient(link) as unknown as Anything;
  return client.parts.list(input).then(
    () => null,
    (failure: unknown) => failure,
  );
}

it('hears the shell’s own refusals as refusals, with words for the person', async () => {
  const failure = await failureOf({}, {});
  expect(failure instanceof Error && isDefinedError(failure)).toBe(true);
  expect(failure).toMatchObject({
    status: 401,
    data: { code: 'not-signed-in', message: expect.stringContaining('Nothing was changed.') },
  });
  const cookie = await cookieOf(running);
  expect(await failureOf({ cookie }, { note: 'a'.repeat(1024 * 1024) })).toMatchObject({
    status: 413,
    data: { code: 'bad-input', accepted: 'at most 1 MiB' },
  });
});
