import type { KeyboardEvent } from 'react';
import { type CellPlace, moveActive, type SheetExtent } from './move-active.ts';

/** What the keys of the grid can bring about; the sheet does it. */
export interface SheetActs {
  readonly place: CellPlace;
  readonly extent: SheetExtent;
  readonly onGroupHead: boolean;
  readonly groupFolded: boolean;
  readonly move: (place: CellPlace) => void;
  readonly extend: (place: CellPlace) => void;
  readonly toggle: () => void;
  readonly selectAll: () => void;
  readonly selectNone: () => boolean;
  readonly fold: (folded: boolean) => void;
  readonly sort: (add: boolean) => void;
  readonly openPanel: () => void;
  readonly openRow: () => boolean;
  /** Starts editing, or returns false where the cell can't be edited. */
  readonly edit: (typed?: string) => boolean;
  readonly bringBack: () => boolean;
  readonly search: () => void;
  readonly moveColumn: (by: -1 | 1) => void;
  readonly widen: (by: -1 | 1) => void;
}

/**
 * The keyboard of the grid, after the grid pattern of the WAI-ARIA Authoring Practices. Tab is never touched here: it
 * leaves the sheet. True when the key was used.
 */
export function pressKey(event: KeyboardEvent, acts: SheetActs): boolean {
  const { key, shiftKey, altKey } = event;
  const far = event.ctrlKey || event.metaKey;
  if (event.nativeEvent.isComposing) return false;
  if (altKey) return pressWithAlt(key, acts);
  if (acts.place.line === -1) {
    const used = pressOnHead(key, shiftKey, acts);
    if (used) return true;
  }
  if (acts.onGroupHead && !far) {
    if (key === 'Enter' || key === ' ') return done(acts.fold(!acts.groupFolded));
    if (key === 'ArrowRight' && acts.groupFolded) return done(acts.fold(false));
    if (key === 'ArrowLeft' && acts.place.column === 0 && !acts.groupFolded) return done(acts.fold(true));
  }
  const to = moveActive(acts.place, key, far, acts.extent);
  if (to !== null) {
    const vertical = to.line !== acts.place.line || /^(Arrow(Up|Down)|Page)/.test(key);
    return done(shiftKey && vertical ? acts.extend(to) : acts.move(to));
  }
  if (far && key.toLowerCase() === 'a') return done(acts.selectAll());
  if (far && key === 'Enter') return acts.openRow();
  if (far) return false;
  switch (key) {
    case ' ':
      return done(shiftKey ? acts.extend(acts.place) : acts.toggle());
    case 'Enter':
      return acts.edit() || acts.openRow();
    case 'F2':
      return acts.edit() || acts.openRow();
    case 'Delete':
    case 'Backspace':
      return acts.edit('');
    case 'Escape':
      return acts.selectNone();
    case '/':
      return done(acts.search());
    default:
      return key.length === 1 && acts.edit(key);
  }
}

function pressOnHead(key: string, shift: boolean, acts: SheetActs): boolean {
  if (key === 'Enter' || key === ' ') return done(acts.sort(shift));
  if (shift && key === 'ArrowLeft') return done(acts.widen(-1));
  if (shift && key === 'ArrowRight') return done(acts.widen(1));
  return false;
}

function pressWithAlt(key: string, acts: SheetActs): boolean {
  if (key === 'ArrowDown') return done(acts.openPanel());
  if (key === 'ArrowLeft') return done(acts.moveColumn(-1));
  if (key === 'ArrowRight') return done(acts.moveColumn(1));
  return key === 'Enter' && acts.bringBack();
}

function done(_act: unknown): true {
  return true;
}
