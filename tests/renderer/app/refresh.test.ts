import { QueryClient, QueryObserver } from '@tanstack/react-query';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { acting, hearOf, refresh } from '../../../renderer/app/refresh.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A workbook whose reads take 100 ms, and something on the page that shows one of them. */
function shownRead() {
  const queries = new QueryClient({ defaultOptions: { queries: { staleTime: Number.POSITIVE_INFINITY } } });
  const seen = { sent: 0, onItsWay: 0, most: 0, acts: 0 };
  const read = async () => {
    seen.sent += 1;
    seen.onItsWay += 1;
    seen.most = Math.max(seen.most, seen.onItsWay);
    const { acts } = seen;
    await new Promise((resolve) => setTimeout(resolve, 100));
    seen.onItsWay -= 1;
    return acts;
  };
  const observer = new QueryObserver(queries, { queryKey: ['parts'], queryFn: read });
  const leave = observer.subscribe(() => undefined);
  return { queries, seen, observer, leave };
}

it('240 acts in quick succession send a few reads, one at a time, and the last shows them all', async () => {
  const { queries, seen, observer } = shownRead();
  await vi.advanceTimersByTimeAsync(150);
  for (let at = 0; at < 240; at += 1) {
    seen.acts += 1;
    hearOf(queries, at);
    void refresh(queries);
    await vi.advanceTimersByTimeAsync(2);
  }
  await vi.advanceTimersByTimeAsync(1000);
  expect(seen.most).toBe(1);
  expect(seen.sent).toBeLessThan(10);
  expect(observer.getCurrentResult().data).toBe(240);
});

it('waits until what was changed before it was asked is there', async () => {
  const { queries, seen, observer } = shownRead();
  await vi.advanceTimersByTimeAsync(150);
  void refresh(queries);
  await vi.advanceTimersByTimeAsync(50);
  seen.acts = 1;
  let there = false;
  const waiting = refresh(queries).then(() => {
    there = true;
  });
  await vi.advanceTimersByTimeAsync(60);
  expect(there).toBe(false);
  await vi.advanceTimersByTimeAsync(100);
  await waiting;
  expect(observer.getCurrentResult().data).toBe(1);
});

it('hears of many changes and reads once; what is not shown any more is read when it is shown again', async () => {
  const { queries, seen, observer, leave } = shownRead();
  await vi.advanceTimersByTimeAsync(150);
  for (let at = 0; at < 20; at += 1) hearOf(queries, at);
  await vi.advanceTimersByTimeAsync(300);
  expect(seen.sent).toBe(2);
  leave();
  seen.acts = 1;
  hearOf(queries, 20);
  await vi.advanceTimersByTimeAsync(300);
  expect(seen.sent).toBe(2);
  observer.subscribe(() => undefined);
  await vi.advanceTimersByTimeAsync(150);
  expect(observer.getCurrentResult().data).toBe(1);
});

it.each([1, 60])(
  'reads once after an act of this window, whether the feed tells of it first or last (%d ms)',
  async (after) => {
    const { queries, seen, observer } = shownRead();
    await vi.advanceTimersByTimeAsync(150);
    const send = async () => {
      await new Promise((resolve) => setTimeout(resolve, 30));
      seen.acts = 1;
      return { act: 7 };
    };
    setTimeout(() => hearOf(queries, 7), after);
    const done = acting(queries, send).then(() => refresh(queries));
    await vi.advanceTimersByTimeAsync(1000);
    await done;
    expect(seen.sent).toBe(2);
    expect(observer.getCurrentResult().data).toBe(1);
    // What another window does is read, also when it was heard of while an act of this one was on its way.
    setTimeout(() => hearOf(queries, 8), 1);
    const refused = acting(queries, () => Promise.reject(new Error('refused'))).catch(() => 'refused');
    hearOf(queries, 9);
    await vi.advanceTimersByTimeAsync(1000);
    expect(await refused).toBe('refused');
    expect(seen.sent).toBe(3);
  },
);
