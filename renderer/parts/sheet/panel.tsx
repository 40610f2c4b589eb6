import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';

interface PanelProps {
  readonly label: string;
  /** What the panel hangs under. */
  readonly anchor: HTMLElement;
  /** Called with whether focus should go back to where the panel was opened from. */
  readonly onClose: (returnFocus: boolean) => void;
  readonly children: ReactNode;
}

const gap = 4;

/** A small sheet of controls under its button. Escape and going elsewhere close it; it never holds on to the focus. */
export function Panel({ label, anchor, onClose, children }: PanelProps) {
  const box = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<{ left: number; top: number; maxHeight: number } | null>(null);
  useLayoutEffect(() => {
    const panel = box.current;
    if (panel === null) return;
    const from = anchor.getBoundingClientRect();
    const { width } = panel.getBoundingClientRect();
    const left = Math.max(gap, Math.min(from.left, window.innerWidth - width - gap));
    const below = window.innerHeight - from.bottom - 2 * gap;
    const height = Math.min(panel.scrollHeight, 560);
    const top = height <= below ? from.bottom + gap : Math.max(gap, window.innerHeight - height - gap);
    setPlace({ left, top, maxHeight: window.innerHeight - top - gap });
    panel.querySelector<HTMLElement>('[data-first], input, select, button')?.focus({ preventScroll: true });
  }, [anchor]);
  useLayoutEffect(() => {
    const onPointerDown = (event: globalThis.PointerEvent) => {
      const target = event.target as Node;
      if (!box.current?.contains(target) && !anchor.contains(target)) onClose(false);
    };
    document.addEventListener('pointerdown', onPointerDown, true);
    return () => document.removeEventListener('pointerdown', onPointerDown, true);
  }, [anchor, onClose]);
  return (
    <div
      ref={box}
      role="dialog"
      aria-label={label}
      className="sheet-panel"
      style={place ?? { left: 0, top: 0, visibility: 'visible' }}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key === 'Escape') onClose(true);
      }}
      onBlur={(event) => {
        const next = event.relatedTarget;
        if (next !== null && !event.currentTarget.contains(next)) onClose(false);
      }}
    >
      {children}
    </div>
  );
}
