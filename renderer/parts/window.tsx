import { Drawer, Modal } from '@mantine/core';
import { type ReactNode, useEffect, useEffectEvent, useMemo } from 'react';
import './window.css';

export interface WindowProps {
  readonly opened: boolean;
  readonly onClose: () => void;
  readonly title: string;
  readonly children: ReactNode;
  /** A drawer at the right leaves the table beside it in view; a dialog is for a few fields. */
  readonly as?: 'dialog' | 'drawer';
  /** Whether a press beside the window closes it; not where something is typed. */
  readonly closesBeside?: boolean;
}

const openWindows: (() => void)[] = [];

/** The library's own level of windows; its lists and calendars stand a hundred higher. */
const lowestLevel = 200;

/** A window that is opened out of another stands above it, wherever on the page either was drawn. */
const useLevel = (opened: boolean): number =>
  useMemo(() => (opened ? lowestLevel + openWindows.length : lowestLevel), [opened]);

/**
 * Esc closes the topmost window only, and not when something inside it took the key to close itself (a list, a
 * calendar): such parts prevent the key's default or carry the library's mark.
 */
function useEscape(opened: boolean, onClose: () => void): void {
  const close = useEffectEvent(onClose);
  useEffect(() => {
    if (!opened) return;
    const mine = () => close();
    openWindows.push(mine);
    // Looked at on the way down: by the time the key comes back up, the list that took it may be closed.
    let taken = false;
    const coming = ({ target }: KeyboardEvent) => {
      taken = target instanceof Element && target.getAttribute('data-mantine-stop-propagation') === 'true';
    };
    const pressed = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || taken || event.defaultPrevented || event.isComposing) return;
      if (openWindows.at(-1) === mine) mine();
    };
    window.addEventListener('keydown', coming, true);
    window.addEventListener('keydown', pressed);
    return () => {
      window.removeEventListener('keydown', coming, true);
      window.removeEventListener('keydown', pressed);
      openWindows.splice(openWindows.indexOf(mine), 1);
    };
  }, [opened]);
}

/** A dialog or drawer: its title, a way to close it, and what it is for. Esc closes it and the focus goes back. */
export function Window({ opened, onClose, title, children, as = 'dialog', closesBeside = true }: WindowProps) {
  const Kind = as === 'drawer' ? Drawer : Modal;
  useEscape(opened, onClose);
  const zIndex = useLevel(opened);
  const root = { opened, onClose, zIndex, closeOnClickOutside: closesBeside, closeOnEscape: false };
  const inside = (
    <>
      <Kind.Overlay backgroundOpacity={0.4} />
      <Kind.Content>
        <div className="window-head">
          <Kind.Title>{title}</Kind.Title>
          <Kind.CloseButton aria-label="Close" className="not-printed" />
        </div>
        <Kind.Body>{children}</Kind.Body>
      </Kind.Content>
    </>
  );
  return as === 'drawer' ? (
    <Drawer.Root {...root} position="right" size="36rem">
      {inside}
    </Drawer.Root>
  ) : (
    <Modal.Root {...root} size="34rem">
      {inside}
    </Modal.Root>
  );
}
