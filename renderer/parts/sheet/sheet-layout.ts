import type { SheetColumn, SheetView } from './sheet-types.ts';
import { columnWidth, shownColumns } from './sheet-view.ts';

/** Where the shown columns stand, in pixels. */
export interface SheetLayout<Row> {
  readonly columns: readonly SheetColumn<Row>[];
  readonly widths: readonly number[];
  /** Columns that stay in sight when scrolling sideways, from the left. */
  readonly pinned: number;
  /** Width of the column of tick boxes. */
  readonly tickWidth: number;
  readonly cards: boolean;
  /** How much wider columns are than at the desk, where a view's widths are kept. */
  readonly scale: number;
}

export function layOut<Row>(
  view: SheetView,
  columns: readonly SheetColumn<Row>[],
  options: { readonly pinned: number; readonly tickWidth: number; readonly cards: boolean; readonly scale: number },
): SheetLayout<Row> {
  const shown = shownColumns(view, columns);
  return { columns: shown, widths: shown.map((column) => columnWidth(view, column) * options.scale), ...options };
}

/** The custom properties that place every cell; changing them moves columns without drawing any row anew. */
export function layoutStyle<Row>(layout: SheetLayout<Row>, widths: readonly number[]): Record<string, string> {
  const style: Record<string, string> = {
    '--sheet-columns': layout.cards
      ? `${layout.tickWidth}px minmax(0, 1fr)`
      : `${layout.tickWidth}px ${widths.map((width) => `${width}px`).join(' ')}`,
    '--sheet-width': layout.cards ? '100%' : `${widths.reduce((sum, width) => sum + width, layout.tickWidth)}px`,
  };
  let left = 0; // tick boxes scroll away; a name at the edge is worth more than they are
  for (let index = 0; index < layout.pinned; index += 1) {
    style[`--sheet-pin-${index}`] = `${left}px`;
    left += widths[index] ?? 0;
  }
  return style;
}

/** Left edge and right edge of a column within the sheet, and where the pinned columns end. */
export function columnEdges<Row>(layout: SheetLayout<Row>, column: number) {
  const sum = (count: number) =>
    layout.widths.slice(0, count).reduce((total, width) => total + width, layout.tickWidth);
  return { left: sum(column), right: sum(column + 1), pinnedEnd: sum(layout.pinned) - layout.tickWidth };
}

/** The columns of a narrow screen's card: a headline, a line beneath and a word or figure at the right end. */
export function cardColumns<Row>(columns: readonly SheetColumn<Row>[]) {
  const primary = columns.find(({ card }) => card === 'primary') ?? columns[0];
  const rest = columns.filter((column) => column !== primary && column.card !== 'none');
  const aside = rest.find(({ card }) => card === 'aside') ?? rest.find(({ kind }) => kind === 'state');
  const chosen = rest.filter((column) => column.card === 'secondary');
  const secondary = (chosen.length > 0 ? chosen : rest.filter((column) => column !== aside)).slice(0, 4);
  return { primary, secondary, aside };
}

/** How a column's cells are aligned: figures at the end so that their digits stand under each other. */
export function alignOf<Row>(column: SheetColumn<Row>): 'start' | 'end' | 'center' {
  if (column.align !== undefined) return column.align;
  return column.kind === 'number' || column.kind === 'money' || column.kind === 'quantity' ? 'end' : 'start';
}
