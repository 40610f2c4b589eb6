// biome-ignore-all lint/a11y/useSemanticElements: table elements can't hold lines that are placed by hand
// biome-ignore-all lint/a11y/useFocusableInteractive: focus stays on the grid, which names its active cell
import { type Range, useVirtualizer, type VirtualItem } from '@tanstack/react-virtual';
import { type MouseEvent, type ReactNode, type RefObject, useCallback, useLayoutEffect, useMemo, useRef } from 'react';
import { GroupRow } from './group-row.tsx';
import type { DisplayList, GroupHead } from './index-rows.ts';
import type { CellPlace } from './move-active.ts';
import type { SheetLayout } from './sheet-layout.ts';
import { SheetRow } from './sheet-row.tsx';
import type { RowId } from './sheet-types.ts';

/** Lines drawn beyond each edge, so that the next turn of the wheel finds them ready. */
const overscan = 6;

interface SheetBodyProps<Row> {
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
  const pool = useRef(0);
  const rangeExtractor = useCallback(
    ({ startIndex, endIndex, count }: Range) => {
      // Always the same even number of lines: no element comes or goes, and each keeps its stripe.
      const wanted = 2 * Math.ceil((endIndex - startIndex + 2 + 2 * overscan) / 2);
      if (wanted > pool.current) pool.current = wanted;
      const first = Math.max(0, Math.min(startIndex - overscan, count - pool.current));
      const lines = Array.from({ length: Math.min(pool.current, count) }, (_, at) => first + at);
      if (activeLine < 0 || activeLine >= count) return lines;
      if (activeLine < first) lines.unshift(activeLine);
      else if (activeLine >= first + lines.length) lines.push(activeLine);
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

  const drawn = useStandingOrder(virtual.getVirtualItems(), pool.current, virtual.isScrolling, activeLine);
  const members = useMemo(
    () => (group: GroupHead) => Array.from(display.rows.subarray(group.start, group.end), (row) => rows[row] as Row),
    [display, rows],
  );
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the grid around it takes the keys
    // biome-ignore lint/a11y/useKeyWithMouseEvents: a reader of the screen is given the whole text anyway
    <div
      role="rowgroup"
      className="sheet-body"
      style={{ height: display.lines.length * lineHeight }}
      onClick={props.onClick}
      onDoubleClick={props.onDoubleClick}
      onMouseOver={showCutText}
    >
      {drawn.map(({ line: index, slot }) => {
        const line = display.lines[index];
        if (line === undefined) return null;
        const isActive = index === activeLine;
        const editing = isActive && editor !== null;
        const key = editing ? 'editing' : slot;
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

interface DrawnLine {
  readonly line: number;
  readonly slot: number | 'active';
}

/**
 * Gives every line the element that it is drawn with. While scrolling, elements keep their order in the document, since
 * moving one costs as much as making it; when scrolling ends they are put in the order in which a screen reader should
 * meet them.
 */
function useStandingOrder(
  items: readonly VirtualItem[],
  pool: number,
  scrolling: boolean,
  activeLine: number,
): readonly DrawnLine[] {
  const order = useRef(new Map<DrawnLine['slot'], number>());
  const drawn = items.map(({ index }, at): DrawnLine => {
    // The active line may stand apart from the lines in sight, and then has an element of its own.
    const neighbour = items[at === 0 ? 1 : at - 1]?.index;
    const apart = index === activeLine && neighbour !== undefined && Math.abs(neighbour - index) > 1;
    return { line: index, slot: apart ? 'active' : index % pool };
  });
  const standing = order.current;
  if (scrolling) {
    for (const { slot } of drawn) if (!standing.has(slot)) standing.set(slot, standing.size);
    return drawn.sort((a, b) => (standing.get(a.slot) ?? 0) - (standing.get(b.slot) ?? 0));
  }
  standing.clear();
  for (const { slot } of drawn) standing.set(slot, standing.size);
  return drawn;
}

/** Text that doesn't fit its cell is shown whole while the pointer rests on it. */
function showCutText(event: MouseEvent<HTMLElement>) {
  const text = (event.target as HTMLElement).closest<HTMLElement>('.sheet-cell, .sheet-text');
  if (text === null) return;
  if (text.scrollWidth > text.clientWidth) text.title = text.textContent;
  else text.removeAttribute('title');
}
