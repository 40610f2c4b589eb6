// biome-ignore-all lint/a11y/useSemanticElements: table elements can't hold lines that are placed by hand
// biome-ignore-all lint/a11y/useFocusableInteractive: focus stays on the grid, which names its active cell
import { defaultRangeExtractor, type Range, useVirtualizer } from '@tanstack/react-virtual';
import { type MouseEvent, type ReactNode, type RefObject, useCallback, useLayoutEffect, useMemo, useRef } from 'react';
import { GroupRow } from './group-row.tsx';
import type { DisplayList, GroupHead } from './index-rows.ts';
import type { CellPlace } from './move-active.ts';
import type { SheetLayout } from './sheet-layout.ts';
import { SheetRow } from './sheet-row.tsx';
import type { RowId } from './sheet-types.ts';

/** Lines drawn beyond each edge, so that the next turn of the wheel finds them ready. */
const overscan = 8;

export interface SheetBodyProps<Row> {
  readonly scroller: RefObject<HTMLDivElement | null>;
  readonly display: DisplayList;
  readonly rows: readonly Row[];
  readonly rowId: (row: Row) => RowId;
  readonly layout: SheetLayout<Row>;
  readonly lineHeight: number;
  readonly headHeight: number;
  readonly selection: ReadonlySet<RowId>;
  readonly active: CellPlace;
  readonly openable: boolean;
  readonly groupTitle: string | null;
  readonly idPrefix: string;
  readonly editor: ReactNode;
  readonly onClick: (event: MouseEvent<HTMLElement>) => void;
  readonly onDoubleClick: (event: MouseEvent<HTMLElement>) => void;
}

/**
 * The lines in sight. Elements are reused in turn (line number modulo the number of elements), so scrolling changes
 * text in place and makes nothing new. The active line is drawn even when out of sight: the grid has to point at it.
 */
export function SheetBody<Row>(props: SheetBodyProps<Row>) {
  const { display, rows, rowId, layout, lineHeight, headHeight, active, editor, idPrefix } = props;
  const activeLine = active.line;
  const rangeExtractor = useCallback(
    (range: Range) => {
      const lines = defaultRangeExtractor(range);
      if (activeLine < 0 || activeLine >= range.count) return lines;
      if (activeLine < (lines[0] ?? 0)) lines.unshift(activeLine);
      else if (activeLine > (lines.at(-1) ?? -1)) lines.push(activeLine);
      return lines;
    },
    [activeLine],
  );
  const virtual = useVirtualizer({
    count: display.lines.length,
    getScrollElement: () => props.scroller.current,
    estimateSize: () => lineHeight,
    overscan,
    scrollMargin: headHeight,
    rangeExtractor,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the height is what makes the old measures wrong
  useLayoutEffect(() => virtual.measure(), [virtual, lineHeight]);

  const items = virtual.getVirtualItems();
  const pool = useRef(0);
  if (items.length > pool.current) pool.current = items.length + overscan;
  const apart = (at: number, line: number) =>
    (at === 0 && items.length > 1 && items[1]?.index !== line + 1) ||
    (at > 0 && at === items.length - 1 && items[at - 1]?.index !== line - 1);
  const members = useMemo(
    () => (group: GroupHead) => Array.from(display.rows.subarray(group.start, group.end), (row) => rows[row] as Row),
    [display, rows],
  );
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the grid around it takes the keys
    <div
      role="rowgroup"
      className="sheet-body"
      style={{ height: display.lines.length * lineHeight }}
      onClick={props.onClick}
      onDoubleClick={props.onDoubleClick}
    >
      {items.map(({ index }, at) => {
        const line = display.lines[index];
        if (line === undefined) return null;
        const isActive = index === activeLine;
        const editing = isActive && editor !== null;
        const key = editing ? 'editing' : isActive && apart(at, index) ? 'active' : index % pool.current;
        const shared = {
          line: index,
          top: index * lineHeight,
          layout,
          activeColumn: isActive ? active.column : -1,
          idPrefix,
        };
        const group = line < 0 ? display.groups[-line - 1] : undefined;
        if (group !== undefined) {
          const title = props.groupTitle ?? '';
          return <GroupRow key={`group-${key}`} {...shared} group={group} title={title} members={members} />;
        }
        const row = rows[line] as Row;
        return (
          <SheetRow
            key={key}
            {...shared}
            row={row}
            selected={props.selection.has(rowId(row))}
            openable={props.openable}
            level={props.groupTitle === null ? undefined : 2}
            editor={editing ? editor : null}
          />
        );
      })}
    </div>
  );
}
