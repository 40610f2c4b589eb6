import type { Query, QueryClient } from '@tanstack/react-query';

/** How long the change feed is listened to before it reads again, so that acts in quick succession are read once. */
const gatherMs = 60;

interface Reading {
  readonly done: Promise<void>;
  /** What was asked for while this one was on its way: read once more, however often it was asked. */
  next: Promise<void> | null;
}

const readings = new WeakMap<QueryClient, Map<string, Reading>>();
const gathering = new WeakMap<QueryClient, ReturnType<typeof setTimeout>>();

function begin(queries: QueryClient, running: Map<string, Reading>, query: Query): Promise<void> {
  const { queryHash, queryKey } = query;
  const done = queries.invalidateQueries({ queryKey, exact: true }).finally(() => {
    if (running.get(queryHash)?.next === null) running.delete(queryHash);
  });
  running.set(queryHash, { done, next: null });
  return done;
}

function refreshOne(queries: QueryClient, running: Map<string, Reading>, query: Query): Promise<void> {
  const now = running.get(query.queryHash);
  if (now === undefined) return begin(queries, running, query);
  now.next ??= now.done.then(() => begin(queries, running, query));
  return now.next;
}

/**
 * Reads again what is shown, and lets go of what was read before; answers when all of it is there. A read that is on its
 * way is not sent a second time beside it: it is sent once more when it has come back, however many acts there were
 * meanwhile. A browser has only so many connections, and one request an act for everything shown runs it out of them.
 */
export async function refresh(queries: QueryClient): Promise<void> {
  clearTimeout(gathering.get(queries));
  gathering.delete(queries);
  const running = readings.get(queries) ?? new Map<string, Reading>();
  readings.set(queries, running);
  await Promise.all(
    queries
      .getQueryCache()
      .getAll()
      .map((query) => refreshOne(queries, running, query)),
  );
}

/** Reads again soon, once for all the changes that are heard of until then. */
export function refreshSoon(queries: QueryClient): void {
  if (gathering.has(queries)) return;
  gathering.set(
    queries,
    setTimeout(() => void refresh(queries), gatherMs),
  );
}
