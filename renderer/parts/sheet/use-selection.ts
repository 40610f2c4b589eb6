import { useCallback, useRef } from 'react';
import type { DisplayList } from './index-rows.ts';
import { idsBetween, toggleRow, toggleRows } from './select-rows.ts';
import type { RowId } from './sheet-types.ts';

interface SelectionActs {
  /** From here on Shift reaches; what is selected now stays in. */
  readonly anchorAt: (line: number) => void;
  readonly extendTo: (line: number) => void;
  readonly toggle: (line: number) => void;
  /** All rows shown, or, when they all are selected, none of them. */
  readonly toggleAll: () => void;
  readonly selectAll: () => void;
  readonly clear: () => void;
}

/** Selecting rows by line, with the reach of Shift from the line last gone to or ticked. */
export function useSelection<Row>(
  display: DisplayList,
  rows: readonly Row[],
  rowId: (row: Row) => RowId,
  selection: ReadonlySet<RowId>,
  onSelectionChange: (selection: ReadonlySet<RowId>) => void,
): SelectionActs {
  const latest = useRef({ display, rows, rowId, selection });
  latest.current = { display, rows, rowId, selection };
  const anchor = useRef<{ line: number; base: ReadonlySet<RowId> } | null>(null);

  const shownIds = () => {
    const now = latest.current;
    return Array.from(now.display.rows, (row) => now.rowId(now.rows[row] as Row));
  };
  const anchorAt = useCallback((line: number) => {
    anchor.current = { line, base: latest.current.selection };
  }, []);
  return {
    anchorAt,
    extendTo: (line) => {
      const now = latest.current;
      anchor.current ??= { line, base: now.selection };
      const { line: from, base } = anchor.current;
      const ids = idsBetween(now.display.lines, now.rows, now.rowId, from, line);
      onSelectionChange(new Set([...base, ...ids]));
    },
    toggle: (line) => {
      const now = latest.current;
      const row = now.display.lines[line];
      if (row === undefined || row < 0) return;
      const next = toggleRow(now.selection, now.rowId(now.rows[row] as Row));
      anchor.current = { line, base: next };
      onSelectionChange(next);
    },
    toggleAll: () => onSelectionChange(toggleRows(latest.current.selection, shownIds())),
    selectAll: () => onSelectionChange(new Set([...latest.current.selection, ...shownIds()])),
    clear: () => {
      anchor.current = null;
      onSelectionChange(new Set());
    },
  };
}
