import { afterEach, describe, expect, it, vi } from 'vitest';
import { signIn } from '../../../renderer/app/session.ts';
import { cookieOf, start } from './stand-in.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

function page(url: string, answer = new Response(null, { status: 204 })) {
  const { protocol, hash, pathname, search } = new URL(url);
  const replaceState = vi.fn();
  const fetched = vi.fn(async (_address: string, _init: RequestInit) => answer);
  vi.stubGlobal('location', { protocol, hash, pathname, search });
  vi.stubGlobal('history', { replaceState });
  vi.stubGlobal('fetch', fetched);
  return { replaceState, fetched };
}

describe('signing in', () => {
  it('sends the link’s secret once and takes it out of the address', async () => {
    const { replaceState, fetched } = page('http://127.0.0.1:8000/?a=1#t=Se_cr-et1');
    await signIn();
    expect(replaceState).toHaveBeenCalledWith(null, '', '/?a=1');
    expect(fetched.mock.calls[0]?.[0]).toBe('/session');
    expect(fetched.mock.calls[0]?.[1].body).toBe('{"token":"Se_cr-et1"}');
  });

  it('does nothing in the desktop window or without a secret', async () => {
    for (const url of ['hoistday://workbook/#t=abc', 'http://127.0.0.1:8000/', 'http://127.0.0.1:8000/#/parts']) {
      const { fetched } = page(url);
      await signIn();
      expect(fetched).not.toHaveBeenCalled();
    }
  });

  it('says what to do when the link is no longer good', async () => {
    page('http://127.0.0.1:8000/#t=old', new Response(null, { status: 401 }));
    await expect(signIn()).rejects.toThrow('Start Hoistday again and open the new link');
  });

  it('leaves a signed-in page signed in when the link is opened again', async () => {
    const running = await start();
    const first = await cookieOf(running);
    await cookieOf(running);
    const answer = await fetch(`${running.origin}/api/x`, { headers: { cookie: first } });
    expect(answer.status).toBe(200);
    await running.shell.close();
  });
});
