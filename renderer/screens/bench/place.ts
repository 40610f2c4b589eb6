import { useCallback, useState } from 'react';

const kept = 'hoistday.place';

/** Storage may be switched off: then the place lasts until the window is closed. */
function readKept(): string {
  try {
    return (localStorage.getItem(kept) ?? '').slice(0, 80);
  } catch {
    return '';
  }
}

/** Where this machine's user works tonight, remembered for the next time; empty = anywhere. */
export function usePlace(): readonly [string, (place: string) => void] {
  const [place, setPlace] = useState(readKept);
  const choose = useCallback((next: string) => {
    setPlace(next);
    try {
      localStorage.setItem(kept, next);
    } catch {
      // Said above.
    }
  }, []);
  return [place, choose];
}
