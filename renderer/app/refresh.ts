import type { Query, QueryClient } from '@tanstack/react-query';

/** How long the change feed is listened to before it reads again, so that acts in quick succession are read once. */
const gatherMs = 60;

interface Reading {
  readonly done: Promise<void>;
  /** What was asked for while this one was on its way: read once more, however often it was asked. */
  next: Promise<void> | null;
}

interface Refreshing {
  readonly running: Map<string, Reading>;
  gathering: ReturnType<typeof setTimeout> | null;
  /** Acts of this window that are on their way: what they change is read when they are back. */
  acting: number;
  /** Acts heard of while one of this window was on its way, and acts of this window not heard of yet. */
  readonly heard: Set<number>;
  readonly own: Set<number>;
}

const all = new WeakMap<QueryClient, Refreshing>();

function refreshingOf(queries: QueryClient): Refreshing {
  const found = all.get(queries);
  if (found !== undefined) return found;
  const made: Refreshing = { running: new Map(), gathering: null, acting: 0, heard: new Set(), own: new Set() };
  all.set(queries, made);
  return made;
}

function begin(queries: QueryClient, running: Refreshing['running'], query: Query): Promise<void> {
  const { queryHash, queryKey } = query;
  const done = queries.invalidateQueries({ queryKey, exact: true }).finally(() => {
    if (running.get(queryHash)?.next === null) running.delete(queryHash);
  });
  running.set(queryHash, { done, next: null });
  return done;
}

function refreshOne(queries: QueryClient, running: Refreshing['running'], query: Query): Promise<void> {
  const now = running.get(query.queryHash);
  if (now === undefined) return begin(queries, running, query);
  now.next ??= now.done.then(() => begin(queries, running, query));
  return now.next;
}

function stopGathering(refreshing: Refreshing): void {
  if (refreshing.gathering !== null) clearTimeout(refreshing.gathering);
  refreshing.gathering = null;
}

/**
 * Reads again what is shown, and lets go of what was read before; answers when all of it is there. A read that is on its
 * way is not sent a second time beside it: it is sent once more when it has come back, however many acts there were
 * meanwhile. A browser has only so many connections, and one request an act for everything shown runs it out of them.
 */
export async function refresh(queries: QueryClient): Promise<void> {
  const refreshing = refreshingOf(queries);
  stopGathering(refreshing);
  const shown = queries.getQueryCache().getAll();
  await Promise.all(shown.map((query) => refreshOne(queries, refreshing.running, query)));
}

function gather(queries: QueryClient, refreshing: Refreshing): void {
  refreshing.gathering ??= setTimeout(() => void refresh(queries), gatherMs);
}

/** Reads again soon, once for all the acts that are heard of until then; what this window did is read already. */
export function hearOf(queries: QueryClient, act: number): void {
  const refreshing = refreshingOf(queries);
  if (refreshing.own.delete(act)) return;
  if (refreshing.acting > 0) refreshing.heard.add(act);
  else gather(queries, refreshing);
}

/** Does an act of this window; what it changed is left for `refresh`, which comes next. */
export async function acting<Result extends { readonly act: number }>(
  queries: QueryClient,
  send: () => Promise<Result>,
): Promise<Result> {
  const refreshing = refreshingOf(queries);
  refreshing.acting += 1;
  try {
    const result = await send();
    if (!refreshing.heard.delete(result.act)) refreshing.own.add(result.act);
    return result;
  } finally {
    refreshing.acting -= 1;
    // Acts of another window that were heard of meanwhile; a refresh that follows now takes them along.
    if (refreshing.acting === 0 && refreshing.heard.size > 0) {
      refreshing.heard.clear();
      gather(queries, refreshing);
    }
  }
}
