import { type RefObject, useLayoutEffect, useState } from 'react';

/** From this row height on (pixels) the sheet is worked with gloves: see the bench density of the theme. */
const benchHeight = 44;
/** Below this width (pixels) columns don't fit and rows become cards. */
const cardWidth = 640;

interface Surroundings {
  /** The theme's row height in pixels. */
  readonly rowHeight: number;
  readonly bench: boolean;
  /** True where rows are shown as cards of two lines. */
  readonly cards: boolean;
}

/** Reads the theme's row height and the room at hand, and follows both as they change. */
export function useSurroundings(element: RefObject<HTMLElement | null>): Surroundings {
  const [rowHeight, setRowHeight] = useState(30);
  const [cards, setCards] = useState(false);
  useLayoutEffect(() => {
    const own = element.current;
    if (own === null) return;
    const readTheme = () => {
      const height = pixels(getComputedStyle(own).getPropertyValue('--row-height'));
      if (height > 0) setRowHeight(height);
    };
    const readWidth = () => setCards(own.clientWidth > 0 && own.clientWidth < cardWidth);
    readTheme();
    readWidth();
    const theme = new MutationObserver(readTheme);
    theme.observe(document.documentElement, { attributes: true });
    theme.observe(document.body, { attributes: true });
    const size = new ResizeObserver(readWidth);
    size.observe(own);
    return () => {
      theme.disconnect();
      size.disconnect();
    };
  }, [element]);
  return { rowHeight, bench: rowHeight >= benchHeight, cards };
}

/** A length in px or rem as pixels; 0 for anything else. */
function pixels(length: string): number {
  const number = Number.parseFloat(length);
  if (!Number.isFinite(number)) return 0;
  if (!length.trim().endsWith('rem')) return number;
  return number * (Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16);
}
