// biome-ignore-all lint/a11y/useSemanticElements: table elements can't hold lines that are placed by hand
// biome-ignore-all lint/a11y/useFocusableInteractive: focus stays on the grid, which names its active cell
import { memo, type ReactNode } from 'react';
import { alignOf, cardColumns, type SheetLayout } from './sheet-layout.ts';
import type { SheetColumn } from './sheet-types.ts';

interface SheetRowProps<Row> {
  readonly row: Row;
  readonly line: number;
  /** Distance from the first line, in pixels. */
  readonly top: number;
  readonly layout: SheetLayout<Row>;
  readonly selected: boolean;
  /** The shown column that the keyboard is on, or -1. */
  readonly activeColumn: number;
  readonly openable: boolean;
  readonly level: number | undefined;
  /** Prefix for the id of the active cell. */
  readonly idPrefix: string;
  /** The editor, in the place of the active cell's content. */
  readonly editor: ReactNode;
}

/** The id by which the sheet names its active cell to a screen reader. */
export function cellId(idPrefix: string, line: number, column: number): string {
  return `${idPrefix}-${line}-${column}`;
}

/** How a row is called in labels: by its first shown column. */
function rowName<Row>(layout: SheetLayout<Row>, row: Row): string {
  return layout.columns[0]?.text(row) || 'this row';
}

function SheetRowPlain<Row>(props: SheetRowProps<Row>) {
  const { row, line, layout, selected, editor } = props;
  const name = rowName(layout, row);
  return (
    <div
      role="row"
      className={line % 2 === 1 ? 'sheet-row sheet-row-odd' : 'sheet-row'}
      data-line={line}
      data-editing={editor === null ? undefined : true}
      aria-rowindex={line + 2}
      aria-selected={selected}
      aria-level={props.level}
      style={{ transform: `translateY(${props.top}px)` }}
    >
      <div role="gridcell" className="sheet-cell sheet-tick" aria-colindex={1}>
        {/* Not an input: React touches several of its attributes at every turn, and a reused row turns often. */}
        <span role="checkbox" className="sheet-box" aria-checked={selected} aria-label={`Select ${name}`} />
      </div>
      {layout.cards ? (
        <Card {...props} name={name} />
      ) : (
        layout.columns.map((column, index) => cell(props, column, index))
      )}
    </div>
  );
}

function cell<Row>(props: SheetRowProps<Row>, column: SheetColumn<Row>, index: number) {
  const { row, line, layout } = props;
  const active = props.activeColumn === index;
  const pinned = index < layout.pinned;
  return (
    <div
      role="gridcell"
      key={column.key}
      id={active ? cellId(props.idPrefix, line, index) : undefined}
      className={cellClass(alignOf(column), active, pinned, index === 0 && props.openable)}
      data-column={index}
      aria-colindex={index + 2}
    >
      {active && props.editor !== null ? props.editor : content(column, row)}
      {index === 0 && props.openable && !(active && props.editor !== null) && (
        <button type="button" className="sheet-open" tabIndex={-1} aria-label={`Open ${rowName(layout, row)}`} />
      )}
    </div>
  );
}

function content<Row>(column: SheetColumn<Row>, row: Row): ReactNode {
  return column.render === undefined ? column.text(row) : column.render(row);
}

function cellClass(align: string, active: boolean, pinned: boolean, openable: boolean): string {
  let name = 'sheet-cell';
  if (align !== 'start') name += ` sheet-${align}`;
  if (pinned) name += ' sheet-pinned';
  if (openable) name += ' sheet-openable';
  return active ? `${name} sheet-active` : name;
}

function Card<Row>(props: SheetRowProps<Row> & { readonly name: string }) {
  const { row, line, layout } = props;
  const { primary, secondary, aside } = cardColumns(layout.columns);
  const active = props.activeColumn !== -1;
  return (
    <div
      role="gridcell"
      id={active ? cellId(props.idPrefix, line, props.activeColumn) : undefined}
      className={cellClass('card', active, false, props.openable)}
      data-column={0}
      aria-colindex={2}
    >
      <div className="sheet-card-words">
        <div className="sheet-card-primary">{primary?.text(row)}</div>
        <div className="sheet-card-secondary">
          {secondary
            .map((column) => column.text(row))
            .filter((text) => text !== '')
            .join(' · ')}
        </div>
      </div>
      {aside !== undefined && <div className="sheet-card-aside">{aside.render?.(row) ?? aside.text(row)}</div>}
      {props.openable && (
        <button type="button" className="sheet-open" tabIndex={-1} aria-label={`Open ${props.name}`} />
      )}
    </div>
  );
}

/** Drawn anew only when something of its own changed: scrolling past leaves it alone. */
export const SheetRow = memo(SheetRowPlain) as typeof SheetRowPlain;
