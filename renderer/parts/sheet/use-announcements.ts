import { useEffect, useRef, useState } from 'react';

/** A pause long enough not to read out every key of a search, in milliseconds. */
const settle = 350;

/**
 * Text for a live region: whatever of `parts` changed since it was last read out. The first values are not announced,
 * since the screen reader meets them on the page.
 */
export function useAnnouncements(parts: readonly string[]): string {
  const [text, setText] = useState('');
  const told = useRef(parts);
  const line = parts.join('\n');
  useEffect(() => {
    const timer = setTimeout(() => {
      const now = line.split('\n');
      const changed = now.filter((part, index) => part !== '' && part !== told.current[index]);
      told.current = now;
      if (changed.length > 0) setText(changed.join('. '));
    }, settle);
    return () => clearTimeout(timer);
  }, [line]);
  return text;
}
