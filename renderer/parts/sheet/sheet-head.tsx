// biome-ignore-all lint/a11y/useSemanticElements: table elements can't hold lines that are placed by hand
// biome-ignore-all lint/a11y/useFocusableInteractive: focus stays on the grid, which names its active cell
import { type MouseEvent, memo, type PointerEvent, useRef } from 'react';
import { alignOf, type SheetLayout } from './sheet-layout.ts';
import { cellId } from './sheet-row.tsx';
import type { SheetColumn, SheetSort, SheetView } from './sheet-types.ts';
import { clampWidth } from './sheet-view.ts';

interface SheetHeadProps<Row> {
  readonly layout: SheetLayout<Row>;
  readonly view: SheetView;
  readonly activeColumn: number;
  readonly idPrefix: string;
  readonly allSelected: 'all' | 'some' | 'none';
  readonly onSelectAll: () => void;
  readonly onSort: (column: SheetColumn<Row>, add: boolean) => void;
  readonly onPanel: (column: SheetColumn<Row>, anchor: HTMLElement) => void;
  /** While dragging: shows the width (at desk size) without storing it. */
  readonly onTryWidth: (column: number, width: number) => void;
  readonly onWidth: (column: SheetColumn<Row>, width: number) => void;
}

function SheetHeadPlain<Row>(props: SheetHeadProps<Row>) {
  const { layout, allSelected } = props;
  return (
    <div role="rowgroup" className="sheet-head">
      <div role="row" className="sheet-head-row" aria-rowindex={1}>
        <div role="columnheader" className="sheet-cell sheet-tick" aria-colindex={1}>
          {/* biome-ignore lint/a11y/useKeyWithClickEvents: Ctrl+A does the same by keyboard */}
          <span
            role="checkbox"
            className="sheet-box"
            aria-label="Select all rows shown"
            aria-checked={allSelected === 'some' ? 'mixed' : allSelected === 'all'}
            onClick={props.onSelectAll}
          />
        </div>
        {layout.columns.map((column, index) => (
          <HeadCell key={column.key} {...props} column={column} index={index} />
        ))}
      </div>
    </div>
  );
}

function HeadCell<Row>(props: SheetHeadProps<Row> & { readonly column: SheetColumn<Row>; readonly index: number }) {
  const { column, index, layout, view } = props;
  const rank = view.sort.findIndex(({ key }) => key === column.key);
  const sort = view.sort[rank];
  const active = props.activeColumn === index;
  const pinned = index < layout.pinned;
  const filtered = view.filters.some(({ key }) => key === column.key);
  const keepFocus = (event: MouseEvent) => event.preventDefault();
  return (
    <div
      role="columnheader"
      id={active ? cellId(props.idPrefix, -1, index) : undefined}
      className={`sheet-cell sheet-head-cell sheet-${alignOf(column)}${pinned ? ' sheet-pinned' : ''}${active ? ' sheet-active' : ''}`}
      data-column={index}
      aria-colindex={index + 2}
      aria-sort={rank === 0 ? sort?.dir : undefined}
    >
      <button
        type="button"
        tabIndex={-1}
        className="sheet-sort"
        onMouseDown={keepFocus}
        onClick={(event) => props.onSort(column, event.shiftKey)}
      >
        <span className="sheet-text">{column.title}</span>
        {sort !== undefined && <SortMark sort={sort} rank={view.sort.length > 1 ? rank + 1 : null} />}
      </button>
      <button
        type="button"
        tabIndex={-1}
        className="sheet-more"
        data-filtered={filtered}
        aria-label={filtered ? `${column.title}: column menu, filtered` : `${column.title}: column menu`}
        onMouseDown={keepFocus}
        onClick={(event) => props.onPanel(column, event.currentTarget)}
      >
        {filtered ? <FilterMark /> : <MoreMark />}
      </button>
      <Grip {...props} />
    </div>
  );
}

/** The edge that is dragged to widen a column; the column menu and Shift+arrows do the same without dragging. */
function Grip<Row>(props: SheetHeadProps<Row> & { readonly column: SheetColumn<Row>; readonly index: number }) {
  const start = useRef<{ x: number; width: number } | null>(null);
  const widthAt = (event: PointerEvent) =>
    start.current === null
      ? null
      : clampWidth((start.current.width + event.clientX - start.current.x) / props.layout.scale);
  return (
    <span
      className="sheet-grip"
      aria-hidden="true"
      onMouseDown={(event) => event.preventDefault()}
      onPointerDown={(event) => {
        start.current = { x: event.clientX, width: props.layout.widths[props.index] ?? 0 };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        const width = widthAt(event);
        if (width !== null) props.onTryWidth(props.index, width);
      }}
      onPointerUp={(event) => {
        const width = widthAt(event);
        start.current = null;
        if (width !== null) props.onWidth(props.column, width);
      }}
      onPointerCancel={() => {
        if (start.current !== null) props.onTryWidth(props.index, start.current.width / props.layout.scale);
        start.current = null;
      }}
    />
  );
}

function SortMark({ sort, rank }: { sort: SheetSort; rank: number | null }) {
  return (
    <span className="sheet-sort-mark">
      <svg width="10" height="10" viewBox="0 0 10 10" aria-hidden="true">
        <path d={sort.dir === 'ascending' ? 'M1 7.5 5 2.5 9 7.5z' : 'M1 2.5 5 7.5 9 2.5z'} fill="currentColor" />
      </svg>
      {rank !== null && <span>{rank}</span>}
    </span>
  );
}

function MoreMark() {
  return (
    <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      <path d="M2.5 4.5 6 8l3.5-3.5" fill="none" stroke="currentColor" strokeWidth="1.5" />
    </svg>
  );
}

function FilterMark() {
  return (
    <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      <path d="M1 2h10L7.2 6.6V10L4.8 8.8V6.6z" fill="currentColor" />
    </svg>
  );
}

export const SheetHead = memo(SheetHeadPlain) as typeof SheetHeadPlain;
