/** The cell the keyboard is on: a line of the display list, or -1 for the column heads, and a shown column. */
export interface CellPlace {
  readonly line: number;
  readonly column: number;
}

export interface SheetExtent {
  readonly lines: number;
  readonly columns: number;
  /** Lines that a page holds. */
  readonly page: number;
}

/**
 * Where a movement key leads, after the grid pattern of the WAI-ARIA Authoring Practices; null if the key isn't one.
 * `far` is Ctrl (or the command key).
 */
export function moveActive(from: CellPlace, key: string, far: boolean, extent: SheetExtent): CellPlace | null {
  const last = { line: extent.lines - 1, column: extent.columns - 1 };
  const to = (line: number, column: number): CellPlace => ({
    line: Math.min(last.line, Math.max(-1, line)),
    column: Math.min(last.column, Math.max(0, column)),
  });
  switch (key) {
    case 'ArrowUp':
      return far ? to(Math.min(0, from.line), from.column) : to(from.line - 1, from.column);
    case 'ArrowDown':
      return far ? to(last.line, from.column) : to(from.line + 1, from.column);
    case 'ArrowLeft':
      return to(from.line, far ? 0 : from.column - 1);
    case 'ArrowRight':
      return to(from.line, far ? last.column : from.column + 1);
    case 'Home':
      return far ? to(Math.min(0, last.line), 0) : to(from.line, 0);
    case 'End':
      return far ? to(last.line, last.column) : to(from.line, last.column);
    case 'PageUp':
      return to(from.line < 0 ? -1 : Math.max(0, from.line - extent.page), from.column);
    case 'PageDown':
      return to(from.line + extent.page, from.column);
    default:
      return null;
  }
}
