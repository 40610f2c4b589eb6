import { ORPCError } from '@orpc/client';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { act, renderHook, waitFor } from '@testing-library/react';
import type { ReactNode } from 'react';
import { expect, it, vi } from 'vitest';
import type { ActResult } from '../../../core/contract/common.ts';
import { useAct, useRead } from '../../../renderer/app/data.tsx';

const done: ActResult = { act: 7, label: 'Receipt of 12 lines', entries: 12, parts: [], made: [], notices: [] };
const refused = new ORPCError('REFUSED', {
  defined: true,
  data: { code: 'bad-input', message: 'The quantity is above what is outstanding. Nothing was changed.', detail: {} },
});

function around({ children }: { readonly children: ReactNode }) {
  const queries = new QueryClient({ defaultOptions: { queries: { retry: false } } });
  return <QueryClientProvider client={queries}>{children}</QueryClientProvider>;
}

it('sends an act again with the same key while no answer came, and with a new one after a refusal or when it is done', async () => {
  const keys: string[] = [];
  const answers = [new TypeError('no answer'), refused, done, done];
  const send = vi.fn(async (key: string, _input: string) => {
    keys.push(key);
    const answer = answers.shift();
    if (answer === undefined || answer instanceof Error) throw answer ?? new Error('nothing left');
    return answer;
  });
  const { result } = renderHook(() => useAct(send), { wrapper: around });
  for (const expected of [null, null, done, done]) {
    await act(async () => expect(await result.current.run('12')).toEqual(expected));
  }
  const [first, second, third, fourth] = keys;
  expect(second).toBe(first);
  expect(third).not.toBe(second);
  expect(fourth).not.toBe(third);
});

it('keeps the words of a refusal until the next attempt', async () => {
  const send = vi.fn(async () => Promise.reject(refused));
  const { result } = renderHook(() => useAct(send), { wrapper: around });
  await act(async () => void (await result.current.run(undefined)));
  expect(result.current.refusal?.message).toContain('above what is outstanding');
  act(() => result.current.forget());
  expect(result.current.refusal).toBeNull();
});

it('shows a read as on its way, refused, and there after a retry', async () => {
  let fail = true;
  const read = async () => {
    if (fail) throw refused;
    return 14;
  };
  const { result } = renderHook(() => useRead(['count'], read), { wrapper: around });
  expect(result.current.state).toBe('loading');
  await waitFor(() => expect(result.current.state).toBe('refused'));
  fail = false;
  act(() => {
    if (result.current.state === 'refused') result.current.retry();
  });
  await waitFor(() => expect(result.current).toMatchObject({ state: 'ready', value: 14 }));
});
