import { useInfiniteQuery } from '@tanstack/react-query';
import type { JournalFilter, JournalRow } from '../../../core/contract/journal.ts';
import { api } from '../../app/client.ts';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';

/** Entries of one reading from the workbook. */
export const pageSize = 100;

export interface Entries {
  readonly state: 'loading' | 'refused' | 'ready';
  readonly refusal: RefusalWords | null;
  readonly retry: () => void;
  readonly rows: readonly JournalRow[];
  readonly total: number;
  /** Reads older ones; null when all are here. */
  readonly older: (() => void) | null;
  readonly busy: boolean;
}

/** The journal's entries by a filter, newest first, read on as they are asked for. */
export function useEntries(build: number | null, asOf: string | null, filter: JournalFilter): Entries {
  const query = useInfiniteQuery({
    queryKey: ['journal', build, asOf, filter],
    queryFn: ({ pageParam }) =>
      api.journal.list({ ...filter, limit: pageSize, ...(pageParam === null ? {} : { before: pageParam }) }),
    initialPageParam: null as number | null,
    getNextPageParam: (last) => last.next,
    placeholderData: (before) => before,
  });
  const pages = query.data?.pages ?? [];
  return {
    state: query.data !== undefined ? 'ready' : query.isError ? 'refused' : 'loading',
    refusal: query.isError ? refusalWords(query.error) : null,
    retry: () => void query.refetch(),
    rows: pages.flatMap(({ rows }) => rows),
    total: pages.at(-1)?.total ?? 0,
    older: query.hasNextPage ? () => void query.fetchNextPage() : null,
    busy: query.isFetchingNextPage,
  };
}
