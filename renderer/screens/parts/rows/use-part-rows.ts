import { useEffect, useMemo, useSyncExternalStore } from 'react';
import { api, listenForChanges } from '../../../app/client.ts';
import { type LoadedRows, type PartRowsStore, partRowsStore, type Reading } from './part-rows.ts';

const none: LoadedRows = { rows: [], total: null, complete: false, error: null };

/** The part lines of the build shown, kept up to date by the change feed. */
export function usePartRows(reading: Reading | null): LoadedRows & { readonly store: PartRowsStore | null } {
  const { build, asOf } = reading ?? {};
  const store = useMemo(
    () => (build === undefined ? null : partRowsStore(api.parts, asOf === undefined ? { build } : { build, asOf })),
    [build, asOf],
  );
  useEffect(() => {
    if (store === null) return;
    const stop = listenForChanges(store.hear);
    return stop;
  }, [store]);
  const loaded = useSyncExternalStore(store?.subscribe ?? (() => () => undefined), store?.loaded ?? (() => none));
  return { ...loaded, store };
}
