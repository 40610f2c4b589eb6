// biome-ignore-all lint/a11y/useSemanticElements: table elements can't hold lines that are placed by hand
// biome-ignore-all lint/a11y/noStaticElementInteractions: the role is grid or treegrid, chosen at run time
// biome-ignore-all lint/a11y/useAriaPropsSupportedByRole: as above
import {
  type ClipboardEvent,
  type CSSProperties,
  type KeyboardEvent,
  type MouseEvent,
  type UIEvent,
  useCallback,
  useEffect,
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { type AfterCommit, CellEditor } from './cell-editor.tsx';
import { ColumnPanel, widthStep } from './column-panel.tsx';
import { ColumnsPanel } from './columns-panel.tsx';
import { FilterLine } from './filter-line.tsx';
import { foldText } from './fold-text.ts';
import type { CellPlace } from './move-active.ts';
import { Panel } from './panel.tsx';
import { countUnseen } from './select-rows.ts';
import { SheetBody } from './sheet-body.tsx';
import { SelectionBar, TotalsRow } from './sheet-foot.tsx';
import { SheetHead } from './sheet-head.tsx';
import { pressKey, type SheetActs } from './sheet-keys.ts';
import { columnEdges, layOut, layoutStyle } from './sheet-layout.ts';
import { cellId } from './sheet-row.tsx';
import type { SheetColumn, SheetProps } from './sheet-types.ts';
import { clearFilters, columnWidth, foldGroup, moveColumn, resizeColumn, turnSort } from './sheet-view.ts';
import { parseTsv, toTsv } from './tsv.ts';
import { useActiveCell } from './use-active-cell.ts';
import { useAnnouncements } from './use-announcements.ts';
import { canEdit, useCellEditing } from './use-cell-editing.ts';
import { useRowIndex } from './use-row-index.ts';
import { useSelection } from './use-selection.ts';
import { useSurroundings } from './use-surroundings.ts';
import './sheet.css';

type OpenPanel<Row> = { readonly anchor: HTMLElement } & (
  | { readonly kind: 'columns' }
  | { readonly kind: 'column'; readonly column: SheetColumn<Row> }
);

const noun = ['row', 'rows'] as const;
/** Bench text is larger than desk text by about this much, and columns widen with it. */
const benchScale = 1.3;

/**
 * A table of up to 100,000 rows: find, filter, sort, group, select, edit in place, copy and paste, all by keyboard, all
 * with gloves. The view and the selection belong to the parent; the sheet keeps the active cell and what is being typed.
 */
export function Sheet<Row>(props: SheetProps<Row>) {
  const { columns, rows, rowId, view, onViewChange, selection, onOpenRow } = props;
  const [, many] = props.noun ?? noun;
  const idPrefix = useId();
  const root = useRef<HTMLElement>(null);
  const scroller = useRef<HTMLDivElement>(null);
  const search = useRef<HTMLInputElement>(null);
  const [panel, setPanel] = useState<OpenPanel<Row> | null>(null);
  const { rowHeight, bench, cards } = useSurroundings(root);
  const pinned = props.pinned ?? 1;
  const layout = useMemo(
    () => layOut(view, columns, { pinned, tickWidth: bench ? rowHeight : 34, cards, scale: bench ? benchScale : 1 }),
    [view, columns, pinned, bench, rowHeight, cards],
  );
  const lineHeight = cards ? Math.round(rowHeight * (bench ? 1.4 : 1.8)) : rowHeight;
  const headHeight = cards ? 0 : rowHeight + 4;
  const { vectors, display, matched } = useRowIndex(rows, columns, view);
  const lineCount = display.lines.length;
  const active = useActiveCell(display, rows, rowId, layout.columns);
  const { place } = active;
  const chosen = useSelection(display, rows, rowId, selection, props.onSelectionChange);
  const { editing, kept, ...edits } = useCellEditing<Row>();

  const focusGrid = useCallback(() => scroller.current?.focus({ preventScroll: true }), []);
  const lineRow = (line: number): Row | null => {
    const row = display.lines[line];
    return row === undefined || row < 0 ? null : (rows[row] as Row);
  };
  const groupAt = (line: number) => {
    const row = display.lines[line];
    return row !== undefined && row < 0 ? (display.groups[-row - 1] ?? null) : null;
  };
  const activeRow = lineRow(place.line);
  const activeColumn = layout.columns[place.column];

  // Lines are all of one height, so a place can be scrolled to before it is drawn.
  const reveal = (to: CellPlace) => {
    const box = scroller.current;
    if (box === null || to.line < 0) return;
    const foot = box.querySelector<HTMLElement>('.sheet-totals')?.offsetHeight ?? 0;
    const top = to.line * lineHeight;
    const room = box.clientHeight - headHeight - foot;
    if (top < box.scrollTop) box.scrollTop = top;
    else if (top + lineHeight > box.scrollTop + room) box.scrollTop = top + lineHeight - room;
    if (cards || to.column < layout.pinned) return;
    const { left, right, pinnedEnd } = columnEdges(layout, to.column);
    if (left - pinnedEnd < box.scrollLeft) box.scrollLeft = left - pinnedEnd;
    else if (right > box.scrollLeft + box.clientWidth) box.scrollLeft = right - box.clientWidth;
  };
  const goTo = (to: CellPlace) => {
    active.moveTo(to);
    reveal(to);
  };

  const startEdit = (at: CellPlace, typed?: string): boolean => {
    const row = lineRow(at.line);
    const column = layout.columns[at.column];
    if (row === null || column === undefined || cards || !canEdit(column, row)) return false;
    goTo(at);
    const choice = column.edit?.kind === 'choice' && typed !== undefined ? firstChoice(column, typed) : typed;
    edits.start(row, rowId(row), column, choice);
    return true;
  };
  const commitEdit = async (after: AfterCommit) => {
    const column = columns.find(({ key }) => key === editing?.columnKey);
    const row = activeRow;
    if (editing === null || column === undefined || row === null) return;
    // Where to go is settled before the row may move to another place in the order.
    const next = active.markAt(placeAfter(after, place, lineCount, layout.columns.length));
    if (!(await edits.commit(editing, row, column)) || after === 'leave') return;
    active.setMark(next);
    focusGrid();
  };
  const cancelEdit = () => {
    if (editing === null) return;
    edits.cancel(editing, titleOf(columns, editing.columnKey));
    focusGrid();
  };
  const editingGone = editing !== null && (activeRow === null || rowId(activeRow) !== editing.rowId);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only the moment when the row goes from sight matters
  useEffect(() => {
    if (editingGone) cancelEdit();
  }, [editingGone]);
  const bringBack = () => {
    if (kept === null) return false;
    const row = vectors.rows.find((each) => rowId(each) === kept.rowId);
    const column = layout.columns.findIndex(({ key }) => key === kept.columnKey);
    const source = row === undefined ? -1 : rows.indexOf(row);
    const line = display.lines.indexOf(source);
    if (source === -1 || line === -1 || column === -1) return false;
    return startEdit({ line, column }, kept.text);
  };

  const sortBy = useCallback(
    (column: SheetColumn<Row>, add: boolean) => onViewChange(turnSort(view, column.key, add)),
    [view, onViewChange],
  );
  const openPanel = useCallback((column: SheetColumn<Row>, anchor: HTMLElement) => {
    setPanel({ kind: 'column', column, anchor });
  }, []);
  const openColumns = useCallback((anchor: HTMLElement) => setPanel({ kind: 'columns', anchor }), []);
  const closePanel = useCallback(
    (returnFocus: boolean) => {
      if (returnFocus) {
        const anchor = panel?.anchor;
        if (anchor?.tabIndex === 0) anchor.focus();
        else focusGrid();
      }
      setPanel(null);
    },
    [panel, focusGrid],
  );
  const tryWidth = useCallback(
    (column: number, width: number) => {
      const style = layoutStyle(layout, layout.widths.with(column, width * layout.scale));
      for (const [name, value] of Object.entries(style)) scroller.current?.style.setProperty(name, value);
    },
    [layout],
  );
  const storeWidth = useCallback(
    (column: SheetColumn<Row>, width: number) => onViewChange(resizeColumn(view, column.key, width)),
    [view, onViewChange],
  );
  const leaveSearch = useCallback(() => focusGrid(), [focusGrid]);

  const acts: SheetActs = {
    place,
    extent: {
      lines: lineCount,
      columns: cards ? 1 : layout.columns.length,
      page: Math.max(1, Math.floor(((scroller.current?.clientHeight ?? 0) - headHeight) / lineHeight) - 1),
    },
    onGroupHead: groupAt(place.line) !== null,
    groupFolded: groupAt(place.line)?.collapsed ?? false,
    move: (to) => {
      goTo(to);
      chosen.anchorAt(to.line);
    },
    extend: (to) => {
      goTo(to);
      chosen.extendTo(to.line);
    },
    toggle: () => chosen.toggle(place.line),
    selectAll: chosen.selectAll,
    selectNone: () => {
      if (selection.size === 0) return false;
      chosen.clear();
      return true;
    },
    fold: (folded) => {
      const group = groupAt(place.line);
      if (group !== null) onViewChange(foldGroup(view, group.text, folded));
    },
    sort: (add) => activeColumn && sortBy(activeColumn, add),
    openPanel: () => {
      const anchor = root.current?.querySelector<HTMLElement>(
        cards ? '.sheet-filter-line button' : `.sheet-head [data-column="${place.column}"] .sheet-more`,
      );
      if (anchor && activeColumn) openPanel(activeColumn, anchor);
    },
    openRow: () => {
      if (activeRow === null || onOpenRow === undefined) return false;
      onOpenRow(activeRow);
      return true;
    },
    edit: (typed) => startEdit(place, typed),
    bringBack,
    search: () => search.current?.focus(),
    moveColumn: (by) => activeColumn && onViewChange(moveColumn(view, columns, activeColumn.key, by)),
    widen: (by) => activeColumn && storeWidth(activeColumn, columnWidth(view, activeColumn) + by * widthStep),
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.target !== event.currentTarget) return; // a field in a cell has keys of its own
    if (pressKey(event, acts)) {
      event.preventDefault();
      event.stopPropagation();
    }
  };

  const placeOf = (event: MouseEvent<HTMLElement>): CellPlace | null => {
    const target = event.target as HTMLElement;
    const line = target.closest<HTMLElement>('[data-line]')?.dataset['line'];
    const column = target.closest<HTMLElement>('[data-column]')?.dataset['column'];
    return line === undefined
      ? null
      : { line: Number(line), column: column === undefined ? place.column : Number(column) };
  };
  const onMouseDown = (event: MouseEvent<HTMLElement>) => {
    const target = event.target as HTMLElement;
    if (target.closest('.sheet-editor') !== null || event.button !== 0) return;
    if (target.closest('.sheet-body') === null) return;
    event.preventDefault(); // focus goes to the grid, not to what was pressed
    focusGrid();
  };
  const onClick = (event: MouseEvent<HTMLElement>) => {
    const target = event.target as HTMLElement;
    const to = placeOf(event);
    if (to === null || target.closest('.sheet-editor') !== null) return;
    const row = lineRow(to.line);
    const group = groupAt(to.line);
    if (group !== null) {
      active.moveTo(to);
      onViewChange(foldGroup(view, group.text, !group.collapsed));
      return;
    }
    const again = to.line === place.line && to.column === place.column;
    const tick = target.closest('.sheet-tick') !== null;
    active.moveTo(to);
    if (target.closest('.sheet-open') !== null && row !== null) onOpenRow?.(row);
    else if (event.shiftKey) chosen.extendTo(to.line);
    else if (tick || event.ctrlKey || event.metaKey) chosen.toggle(to.line);
    else if (target.closest('a, button, input, select') !== null) return;
    else {
      chosen.anchorAt(to.line);
      if (cards && row !== null) onOpenRow?.(row);
      else if (bench && again && !startEdit(to) && row !== null) onOpenRow?.(row);
    }
  };
  const onDoubleClick = (event: MouseEvent<HTMLElement>) => {
    const to = placeOf(event);
    const target = event.target as HTMLElement;
    if (to === null || bench || target.closest('a, button, input, select, .sheet-tick') !== null) return;
    const row = lineRow(to.line);
    if (!startEdit(to) && row !== null) onOpenRow?.(row);
  };

  const onCopy = (event: ClipboardEvent<HTMLElement>) => {
    if (event.target !== event.currentTarget) return;
    const lines: string[][] = [];
    if (selection.size > 0) {
      for (const row of display.rows) {
        const each = rows[row] as Row;
        if (selection.has(rowId(each))) lines.push(layout.columns.map((column) => column.text(each)));
      }
    } else if (activeRow !== null && activeColumn !== undefined) lines.push([activeColumn.text(activeRow)]);
    if (lines.length === 0) return;
    event.clipboardData.setData('text/plain', toTsv(lines));
    event.preventDefault();
    setCopied(lines.length === 1 ? 'Copied' : `${lines.length.toLocaleString()} ${many} copied`);
  };
  const [copied, setCopied] = useState('');
  const onPaste = (event: ClipboardEvent<HTMLElement>) => {
    if (event.target !== event.currentTarget || props.onPaste === undefined || activeColumn === undefined) return;
    event.preventDefault();
    const tsv = event.clipboardData.getData('text/plain');
    const cells = parseTsv(tsv);
    const below = place.line < 0 ? [] : Array.from(display.lines.subarray(place.line)).filter((row) => row >= 0);
    props.onPaste({
      tsv,
      cells,
      row: activeRow,
      rowId: activeRow === null ? null : rowId(activeRow),
      columnKey: activeColumn.key,
      columnKeys: layout.columns.slice(place.column).map(({ key }) => key),
      rowIds: below.slice(0, cells.length).map((row) => rowId(rows[row] as Row)),
    });
  };

  // A new order or a filter starts at the top; taking filters off keeps the row that was found, now among the others.
  const { sort, filters, group } = view;
  const arranged = useRef({ sort, group });
  const laidOut = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: these are the changes that reorder the lines
  useLayoutEffect(() => {
    const loosened =
      view.search === '' && filters.length === 0 && arranged.current.sort === sort && arranged.current.group === group;
    arranged.current = { sort, group };
    if (!laidOut.current) laidOut.current = true;
    else if (loosened || editing !== null) reveal(place);
    else {
      if (place.line > 0) active.moveTo({ line: 0, column: place.column });
      scroller.current?.scrollTo?.({ top: 0 });
    }
  }, [sort, filters, view.search, group]);

  const unseen = useMemo(() => countUnseen(selection, display, rows, rowId), [selection, display, rows, rowId]);
  const shownCount = display.rows.length;
  const allSelected = useMemo(() => {
    if (selection.size === 0 || selection.size === unseen) return 'none';
    return selection.size - unseen === shownCount ? 'all' : 'some';
  }, [selection, unseen, shownCount]);
  const counts = countWords(shownCount, rows.length, props.noun ?? noun);
  const sortWords = sort.map(({ key, dir }) => `${titleOf(columns, key)} ${dir}`).join(', then ');
  const announcement = useAnnouncements([
    counts,
    selection.size === 0 ? '' : `${selection.size.toLocaleString()} selected`,
    sortWords && `Sorted by ${sortWords}`,
    group === null ? '' : `Grouped by ${titleOf(columns, group)}`,
    copied,
  ]);

  const totals = useMemo(() => {
    if (typeof props.footer === 'object') return props.footer;
    if (props.footer !== true || shownCount === 0) return null;
    const shown = Array.from(matched, (row) => rows[row] as Row);
    return Object.fromEntries(columns.flatMap(({ key, subtotal }) => (subtotal ? [[key, subtotal(shown)]] : [])));
  }, [props.footer, matched, rows, columns, shownCount]);
  const hasTotals = totals !== null && !cards && shownCount > 0;

  const editor =
    editing !== null && !editingGone && activeColumn?.key === editing.columnKey ? (
      <CellEditor
        key={`${editing.rowId}-${editing.columnKey}`}
        column={activeColumn}
        editing={editing}
        kept={kept}
        upwards={isLow(scroller.current, place.line * lineHeight)}
        id={`${idPrefix}-editor`}
        onDraft={edits.setDraft}
        onCommit={(after) => void commitEdit(after)}
        onCancel={cancelEdit}
      />
    ) : null;
  const style = { ...layoutStyle(layout, layout.widths), '--sheet-line': `${lineHeight}px` } as CSSProperties;
  const activeExists = lineCount > 0 || !cards;

  return (
    <section ref={root} className="sheet" aria-label={props.label} data-bench={bench} data-cards={cards}>
      <FilterLine
        label={props.label}
        columns={columns}
        view={view}
        search={search}
        hint={!bench}
        onViewChange={onViewChange}
        onColumns={openColumns}
        onLeave={leaveSearch}
        showSort={cards}
        tools={props.tools}
      />
      <div
        ref={scroller}
        role={group === null ? 'grid' : 'treegrid'}
        className="sheet-grid"
        tabIndex={0}
        aria-label={props.label}
        aria-rowcount={lineCount + 1 + (hasTotals ? 1 : 0)}
        aria-colcount={(cards ? 1 : layout.columns.length) + 1}
        aria-multiselectable="true"
        aria-activedescendant={activeExists ? cellId(idPrefix, place.line, place.column) : undefined}
        style={style}
        onScroll={markSideways}
        onKeyDown={onKeyDown}
        onMouseDown={onMouseDown}
        onCopy={onCopy}
        onPaste={onPaste}
      >
        {!cards && (
          <SheetHead
            layout={layout}
            view={view}
            activeColumn={place.line === -1 ? place.column : -1}
            idPrefix={idPrefix}
            allSelected={allSelected}
            onSelectAll={chosen.toggleAll}
            onSort={sortBy}
            onPanel={openPanel}
            onTryWidth={tryWidth}
            onWidth={storeWidth}
          />
        )}
        <SheetBody
          scroller={scroller}
          display={display}
          rows={rows}
          rowId={rowId}
          layout={layout}
          lineHeight={lineHeight}
          headHeight={headHeight}
          selection={selection}
          active={place}
          openable={onOpenRow !== undefined}
          groupTitle={group === null ? null : titleOf(columns, group)}
          idPrefix={idPrefix}
          editor={editor}
          onClick={onClick}
          onDoubleClick={onDoubleClick}
        />
        {hasTotals && <TotalsRow layout={layout} cells={totals} rowIndex={lineCount + 2} />}
      </div>
      {shownCount === 0 && (
        <div className="sheet-empty">
          {rows.length === 0 ? (
            props.emptyText
          ) : (
            <>
              <p>No {many} match what is searched and filtered for.</p>
              <button type="button" className="sheet-plain-button" onClick={() => onViewChange(clearFilters(view))}>
                Show all {rows.length.toLocaleString()}
              </button>
            </>
          )}
        </div>
      )}
      <SelectionBar
        counts={counts}
        selection={selection}
        unseen={unseen}
        bulk={selection.size > 0 ? props.bulk?.(selection) : null}
        kept={editing === null ? kept : null}
        onBringBack={bringBack}
        onForget={() => {
          edits.forget();
          focusGrid();
        }}
        onClear={() => {
          chosen.clear();
          focusGrid();
        }}
      />
      <div role="status" className="sheet-spoken">
        {announcement}
      </div>
      {panel !== null && (
        <Panel
          label={panel.kind === 'columns' ? 'Columns' : `Column ${panel.column.title}`}
          anchor={panel.anchor}
          onClose={closePanel}
        >
          {panel.kind === 'columns' ? (
            <ColumnsPanel
              columns={columns}
              view={view}
              onViewChange={onViewChange}
              onColumn={(column) => openPanel(column, panel.anchor)}
            />
          ) : (
            <ColumnPanel
              column={panel.column}
              columns={columns}
              view={view}
              vectors={vectors}
              cards={cards}
              onViewChange={onViewChange}
              onClose={closePanel}
            />
          )}
        </Panel>
      )}
    </section>
  );
}

function titleOf<Row>(columns: readonly SheetColumn<Row>[], key: string): string {
  return columns.find((column) => column.key === key)?.title ?? key;
}

function countWords(shown: number, all: number, [one, many]: readonly [string, string]): string {
  const word = all === 1 ? one : many;
  return shown === all
    ? `${all.toLocaleString()} ${word}`
    : `${shown.toLocaleString()} of ${all.toLocaleString()} ${word}`;
}

/** The place that a commit leads to; at the grid's edges it stays, so that the next Tab leaves the grid. */
function placeAfter(after: AfterCommit, from: CellPlace, lines: number, columns: number): CellPlace {
  const { line, column } = from;
  if (after === 'down') return { line: Math.min(lines - 1, line + 1), column };
  if (after === 'up') return { line: Math.max(0, line - 1), column };
  if (after === 'next') return { line, column: Math.min(columns - 1, column + 1) };
  if (after === 'previous') return { line, column: Math.max(0, column - 1) };
  return from;
}

/** The first choice that begins with what was typed; undefined keeps the cell's own. */
function firstChoice<Row>(column: SheetColumn<Row>, typed: string): string | undefined {
  if (typed === '') return undefined;
  return column.edit?.choices?.find((choice) => foldText(choice).startsWith(foldText(typed)));
}

/** Says to the style sheet whether the first columns have to stick; see there. */
function markSideways(event: UIEvent<HTMLElement>) {
  const box = event.currentTarget;
  const sideways = String(box.scrollLeft > 0);
  if (box.dataset['sideways'] !== sideways) box.dataset['sideways'] = sideways;
}

/** Whether a line stands in the lower half of what is in sight. */
function isLow(box: HTMLElement | null, top: number): boolean {
  return box !== null && top - box.scrollTop > box.clientHeight * 0.6;
}
