import type { DisplayList } from './index-rows.ts';
import type { RowId } from './sheet-types.ts';

/** The ids of the rows between two lines, either way round; group heads in between are passed over. */
export function idsBetween<Row>(
  lines: Int32Array,
  rows: readonly Row[],
  rowId: (row: Row) => RowId,
  one: number,
  other: number,
): RowId[] {
  const ids: RowId[] = [];
  const end = Math.min(lines.length - 1, Math.max(one, other));
  for (let line = Math.max(0, Math.min(one, other)); line <= end; line += 1) {
    const row = lines[line] as number;
    if (row >= 0) ids.push(rowId(rows[row] as Row));
  }
  return ids;
}

/** The selection with one row put in or taken out. */
export function toggleRow(selection: ReadonlySet<RowId>, id: RowId): Set<RowId> {
  const next = new Set(selection);
  if (!next.delete(id)) next.add(id);
  return next;
}

/** The selection with these rows in it, or, if all of them are in already, without them. */
export function toggleRows(selection: ReadonlySet<RowId>, ids: readonly RowId[]): Set<RowId> {
  const next = new Set(selection);
  if (ids.every((id) => next.has(id))) for (const id of ids) next.delete(id);
  else for (const id of ids) next.add(id);
  return next;
}

/** How many selected rows the filters keep out of sight: those must never be acted on by surprise. */
export function countUnseen<Row>(
  selection: ReadonlySet<RowId>,
  display: DisplayList,
  rows: readonly Row[],
  rowId: (row: Row) => RowId,
): number {
  if (selection.size === 0 || display.rows.length === rows.length) return 0;
  let seen = 0;
  for (const row of display.rows) if (selection.has(rowId(rows[row] as Row))) seen += 1;
  return selection.size - seen;
}
