import { useCallback, useState } from 'react';
import type { SheetView } from '../../../parts/sheet/sheet-types.ts';
import type { PartColumn } from '../columns/column-tools.ts';
import { firstView } from './built-in-views.ts';
import { readView } from './read-view.ts';

const place = 'hoistday.parts.view';

function stored(columns: readonly PartColumn[]): SheetView {
  try {
    return readView(localStorage.getItem(place) ?? '', columns) ?? firstView;
  } catch {
    return firstView;
  }
}

/** How the sheet is arranged, kept on this machine from one visit to the next; a search is not. */
export function useKeptView(columns: readonly PartColumn[]): readonly [SheetView, (view: SheetView) => void] {
  const [view, setView] = useState(() => stored(columns));
  const keep = useCallback((next: SheetView) => {
    setView(next);
    try {
      localStorage.setItem(place, JSON.stringify({ ...next, search: '' }));
    } catch {
      // Without storage the arrangement lasts until the page is left.
    }
  }, []);
  return [view, keep];
}
