import { useSyncExternalStore } from 'react';
import { usePreferences } from '../app/preferences.ts';

const narrow = '(max-width: 64rem)';

function subscribe(listener: () => void): () => void {
  const query = matchMedia(narrow);
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
}

/** Whether rows of a table with sentences in it are set as blocks, one under the other: at the bench, and in a narrow window. */
export function useStacked(): boolean {
  const { density } = usePreferences();
  const isNarrow = useSyncExternalStore(subscribe, () => matchMedia(narrow).matches);
  return density === 'bench' || isNarrow;
}
