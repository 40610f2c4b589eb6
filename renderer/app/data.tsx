import { Button } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { isDefinedError } from '@orpc/client';
import { type QueryKey, useQuery, useQueryClient } from '@tanstack/react-query';
import { useCallback, useRef, useState } from 'react';
import type { ActResult } from '../../core/contract/common.ts';
import { type RefusalWords, refusalWords } from '../parts/refusal-note.tsx';
import { actKey, api } from './client.ts';
import { acting, refresh } from './refresh.ts';

/** A read as a screen shows it: on its way, refused, or there. `retry` asks again. */
export type Read<Value> =
  | { readonly state: 'loading' }
  | { readonly state: 'refused'; readonly refusal: RefusalWords; readonly retry: () => void }
  | { readonly state: 'ready'; readonly value: Value; readonly stale: boolean };

/**
 * Reads from the workbook and reads again after every act: `useRead(['gate.review', reading], () => api.gate.review(reading))`.
 * Give `null` instead of a function while there is nothing to ask yet. The former answer stays until the next is there.
 */
export function useRead<Value>(key: QueryKey, read: (() => Promise<Value>) | null): Read<Value> {
  const query = useQuery<Value>({
    queryKey: key,
    queryFn: () => (read === null ? Promise.reject(new Error('nothing to read')) : read()),
    enabled: read !== null,
    placeholderData: (before) => before,
  });
  if (query.data !== undefined) return { state: 'ready', value: query.data, stale: query.isPlaceholderData };
  if (query.isError) return { state: 'refused', refusal: refusalWords(query.error), retry: () => void query.refetch() };
  return { state: 'loading' };
}

/** Something that the user does. */
export interface Act<Input> {
  readonly busy: boolean;
  /** What the workbook said when it refused the last attempt. */
  readonly refusal: RefusalWords | null;
  readonly forget: () => void;
  /** Does it; the answer is null when it was refused. */
  readonly run: (input: Input) => Promise<ActResult | null>;
}

/**
 * An act with its idempotency key: `useAct((key, input) => api.orders.receive({ key, ...input }))`. The key stays the
 * same while an attempt failed without an answer, so that sending again can't do it twice. Once done, everything shown is read
 * again and a message offers to take it back; `quiet` leaves that to the screen, where acts follow one another quickly.
 */
export function useAct<Input>(
  send: (key: string, input: Input) => Promise<ActResult>,
  { quiet = false }: { readonly quiet?: boolean } = {},
): Act<Input> {
  const queries = useQueryClient();
  const key = useRef<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [refusal, setRefusal] = useState<RefusalWords | null>(null);
  const run = useCallback(
    async (input: Input) => {
      setBusy(true);
      setRefusal(null);
      key.current ??= actKey();
      try {
        const attempt = key.current;
        const result = await acting(queries, () => send(attempt, input));
        key.current = null;
        if (!quiet) sayDone(result, () => void refresh(queries));
        await refresh(queries);
        return result;
      } catch (error) {
        // A refusal means that nothing was done; without an answer it may have been, so the key is kept.
        if (error instanceof Error && isDefinedError(error)) key.current = null;
        setRefusal(refusalWords(error));
        return null;
      } finally {
        setBusy(false);
      }
    },
    [send, queries, quiet],
  );
  const forget = useCallback(() => setRefusal(null), []);
  return { busy, refusal, forget, run };
}

/** The message after an act: its name, its notices, and the way to take it back for ten seconds. */
function sayDone(result: ActResult, readAgain: () => void): void {
  const id = `act-${result.act}`;
  const takeBack = async () => {
    notifications.hide(id);
    try {
      await api.journal.undo({ key: actKey(), act: result.act });
      notifications.show({ message: `Taken back: ${result.label}` });
    } catch (error) {
      notifications.show({ message: refusalWords(error).message, autoClose: false });
    }
    readAgain();
  };
  notifications.show({
    id,
    autoClose: 10_000,
    message: (
      <span className="said">
        <span>
          {result.label}
          {result.notices.map((notice) => (
            <span key={notice} className="said-notice">
              {notice}
            </span>
          ))}
        </span>
        <Button onClick={() => void takeBack()}>Undo</Button>
      </span>
    ),
  });
}
