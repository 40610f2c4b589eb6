import { readFileSync, renameSync, writeFileSync } from 'node:fs';

/** A rectangle on the desktop, in the operating system's own pixels. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where the window was and whether it filled the screen. */
export interface WindowState extends Rectangle {
  readonly maximized: boolean;
}

export const smallest = { width: 480, height: 400 } as const;
const first = { width: 1280, height: 840 } as const;
const grip = { width: 120, height: 40 } as const;

/** What to open the window with. Without `x` and `y` it is put in the middle of the main screen. */
export type OpeningState = { readonly width: number; readonly height: number; readonly maximized: boolean } & (
  | { readonly x: number; readonly y: number }
  | { readonly x?: never; readonly y?: never }
);

/**
 * Where the window opens: where it was, if enough of its upper edge to take hold of still lies on a screen, else in
 * the middle with the size that it had, cut to the screen. `screens` are the work areas, the main one first.
 */
export function openingState(saved: WindowState | null, screens: readonly Rectangle[]): OpeningState {
  const main = screens[0];
  const cut = (wish: { width: number; height: number }) => ({
    width: Math.max(smallest.width, Math.min(wish.width, main?.width ?? wish.width)),
    height: Math.max(smallest.height, Math.min(wish.height, main?.height ?? wish.height)),
  });
  if (saved === null) return { ...cut(first), maximized: false };
  const { x, y, maximized } = saved;
  const width = Math.max(smallest.width, saved.width);
  const height = Math.max(smallest.height, saved.height);
  const held = screens.some((screen) => {
    const across = Math.min(x + width, screen.x + screen.width) - Math.max(x, screen.x);
    return across >= grip.width && y >= screen.y && y + grip.height <= screen.y + screen.height;
  });
  if (!held) return { ...cut(saved), maximized };
  return { x, y, width, height, maximized };
}

/** Reads the state kept in a file; null if there is none or it isn't what we wrote. */
export function readWindowState(file: string): WindowState | null {
  try {
    const read: unknown = JSON.parse(readFileSync(file, 'utf8'));
    if (typeof read !== 'object' || read === null) return null;
    const { x, y, width, height, maximized } = read as Partial<Record<keyof WindowState, unknown>>;
    const whole = (value: unknown): value is number => Number.isSafeInteger(value);
    if (!whole(x) || !whole(y) || !whole(width) || !whole(height) || typeof maximized !== 'boolean') return null;
    return { x, y, width, height, maximized };
  } catch {
    return null;
  }
}

/** Keeps the state. A window that opens in the middle next time is no reason to stop, so a failure is ignored. */
export function keepWindowState(file: string, state: WindowState): void {
  try {
    writeFileSync(`${file}.new`, JSON.stringify(state));
    renameSync(`${file}.new`, file);
  } catch {
    // Nothing is lost but the window's place.
  }
}
