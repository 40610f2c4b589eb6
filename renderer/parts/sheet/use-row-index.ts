import { useEffect, useMemo, useRef } from 'react';
import { type ColumnVectors, columnVectors, type FoldedRows } from './column-vectors.ts';
import { type DisplayList, groupRows, matchRows, sortRows } from './index-rows.ts';
import type { SheetColumn, SheetView } from './sheet-types.ts';

interface RowIndex<Row> {
  readonly vectors: ColumnVectors<Row>;
  readonly display: DisplayList;
  /** The rows that passed the filters, in their own order: sorting leaves this array alone. */
  readonly matched: Int32Array;
}

/** Filters, sorts and groups in steps that are each redone only when what they depend on changed. */
export function useRowIndex<Row>(
  rows: readonly Row[],
  columns: readonly SheetColumn<Row>[],
  view: SheetView,
): RowIndex<Row> {
  const lender = useRef<FoldedRows<Row> | undefined>(undefined);
  const vectors = useMemo(() => columnVectors(rows, columns, lender.current), [rows, columns]);
  useEffect(() => {
    lender.current = vectors;
    return warmInIdleTime(vectors.warm);
  }, [vectors]);
  const matched = useMemo(() => matchRows(vectors, view.search, view.filters), [vectors, view.search, view.filters]);
  const sorted = useMemo(() => sortRows(vectors, matched, view.sort), [vectors, matched, view.sort]);
  const display = useMemo(
    () => groupRows(vectors, sorted, view.group, view.collapsed, view.sort),
    [vectors, sorted, view.group, view.collapsed, view.sort],
  );
  return { vectors, display, matched };
}

const rowsInOneBreath = 2_000;

/** Folds the rows' text for searching a little at a time while nothing else is going on; returns the way to stop. */
function warmInIdleTime(warm: (count: number) => boolean): () => void {
  if (typeof requestIdleCallback !== 'function') return () => undefined;
  let waiting = requestIdleCallback(function work(deadline) {
    while (deadline.timeRemaining() > 4) if (!warm(rowsInOneBreath)) return;
    waiting = requestIdleCallback(work);
  });
  return () => cancelIdleCallback(waiting);
}
