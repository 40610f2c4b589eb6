/** "Harbour Hose", "HARBOUR HOSE" and "harbour  hose" are one name; one spelling is kept for all of them. */
import { oneLine, plainWords } from './clean-text.ts';

/**
 * The spelling kept for each name, by its plain words.
 * @param prefer first: the one that comes first. no capitals: the first that is not all capitals, because headings of
 * sections are often shouted.
 */
export function oneSpelling(names: readonly string[], prefer: 'first' | 'no capitals'): ReadonlyMap<string, string> {
  const kept = new Map<string, string>();
  for (const name of names) {
    const key = plainWords(name);
    if (key === '') continue;
    const known = kept.get(key);
    const shouted = known !== undefined && known === known.toUpperCase();
    if (known === undefined || (prefer === 'no capitals' && shouted && name !== name.toUpperCase())) {
      kept.set(key, oneLine(name));
    }
  }
  return kept;
}
