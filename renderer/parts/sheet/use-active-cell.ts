import { useCallback, useMemo, useRef, useState } from 'react';
import type { DisplayList } from './index-rows.ts';
import type { CellPlace } from './move-active.ts';
import type { RowId, SheetColumn } from './sheet-types.ts';

/** What the keyboard is on, by name, so that it stays on the same part when rows are sorted, filtered or added. */
interface ActiveMark {
  readonly on: { readonly head: true } | { readonly row: RowId } | { readonly group: string };
  readonly columnKey: string;
  /** The line where it was last seen. */
  readonly line: number;
}

interface ActiveCell {
  readonly place: CellPlace;
  readonly markAt: (place: CellPlace) => ActiveMark | null;
  readonly setMark: (mark: ActiveMark | null) => void;
  readonly moveTo: (place: CellPlace) => void;
}

export function useActiveCell<Row>(
  display: DisplayList,
  rows: readonly Row[],
  rowId: (row: Row) => RowId,
  columns: readonly SheetColumn<Row>[],
): ActiveCell {
  const [mark, setMark] = useState<ActiveMark | null>(null);
  const place = useMemo<CellPlace>(() => {
    const column = Math.max(
      0,
      columns.findIndex(({ key }) => key === mark?.columnKey),
    );
    if (mark === null) return { line: display.lines.length > 0 ? 0 : -1, column };
    return { line: findLine(mark, display, rows, rowId), column };
  }, [mark, display, rows, rowId, columns]);

  const latest = useRef({ display, rows, rowId, columns });
  latest.current = { display, rows, rowId, columns };
  const markAt = useCallback((at: CellPlace): ActiveMark | null => {
    const now = latest.current;
    const columnKey = now.columns[at.column]?.key ?? '';
    const line = now.display.lines[at.line];
    if (line === undefined) return { on: { head: true }, columnKey, line: -1 };
    if (line < 0) return { on: { group: now.display.groups[-line - 1]?.text ?? '' }, columnKey, line: at.line };
    return { on: { row: now.rowId(now.rows[line] as Row) }, columnKey, line: at.line };
  }, []);
  const moveTo = useCallback((at: CellPlace) => setMark(markAt(at)), [markAt]);
  return useMemo(() => ({ place, markAt, setMark, moveTo }), [place, markAt, moveTo]);
}

/** The line that holds what is marked; if it is gone, the line that took its place. */
function findLine<Row>(
  mark: ActiveMark,
  display: DisplayList,
  rows: readonly Row[],
  rowId: (row: Row) => RowId,
): number {
  const { on } = mark;
  const { lines, groups } = display;
  if ('head' in on) return -1;
  const holds = (line: number) => {
    const row = lines[line];
    if (row === undefined) return false;
    if ('group' in on) return row < 0 && groups[-row - 1]?.text === on.group;
    return row >= 0 && rowId(rows[row] as Row) === on.row;
  };
  if (holds(mark.line)) return mark.line;
  for (let line = 0; line < lines.length; line += 1) if (holds(line)) return line;
  return Math.min(mark.line, lines.length - 1);
}
