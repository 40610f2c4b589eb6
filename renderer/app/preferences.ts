import { useSyncExternalStore } from 'react';

/** Day or night, or whatever the operating system says. */
export type ThemeChoice = 'system' | 'day' | 'night';
/** Desk is mouse and keyboard; bench is a tablet and gloves. */
export type Density = 'desk' | 'bench';

export interface Preferences {
  readonly theme: ThemeChoice;
  readonly density: Density;
}

const place = 'hoistday.look';
const standard: Preferences = { theme: 'system', density: 'desk' };
const listeners = new Set<() => void>();

/** Storage may be switched off or hold something else's text: then the standard look is used, silently. */
function readStored(): Preferences {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(place) ?? 'null');
    if (typeof stored !== 'object' || stored === null) return standard;
    const { theme, density } = stored as Partial<Record<keyof Preferences, unknown>>;
    return {
      theme: theme === 'day' || theme === 'night' ? theme : 'system',
      density: density === 'bench' ? 'bench' : 'desk',
    };
  } catch {
    return standard;
  }
}

let current = readStored();

function systemPrefersNight(): boolean {
  return typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
}

/** Day or night as shown now, with the system's wish worked in. */
export const shownTheme = (preferences: Preferences): 'day' | 'night' =>
  preferences.theme === 'system' ? (systemPrefersNight() ? 'night' : 'day') : preferences.theme;

/** Write the look to <html>, where theme.css reads it. Called once before the first paint and on every change. */
export function applyPreferences(): void {
  document.documentElement.dataset['theme'] = shownTheme(current);
  document.documentElement.dataset['density'] = current.density;
}

/** Change part of the look, keep it for the next start, and redraw whoever uses it. */
export function setPreferences(change: Partial<Preferences>): void {
  current = { ...current, ...change };
  try {
    localStorage.setItem(place, JSON.stringify(current));
  } catch {
    // Without storage the choice lasts until the window is closed.
  }
  applyPreferences();
  for (const listener of listeners) listener();
}

/** Follow the operating system while the choice is left to it; returns the way to stop. */
export function followSystemTheme(): () => void {
  const query = matchMedia('(prefers-color-scheme: dark)');
  const changed = () => {
    applyPreferences();
    current = { ...current };
    for (const listener of listeners) listener();
  };
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The look in use; the component is drawn again when it changes. */
export const usePreferences = (): Preferences => useSyncExternalStore(subscribe, () => current);
