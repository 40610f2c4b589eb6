// biome-ignore-all lint/a11y/useSemanticElements: table elements can't hold lines that are placed by hand
// biome-ignore-all lint/a11y/useFocusableInteractive: focus stays on the grid, which names its active cell
import type { ReactNode } from 'react';
import { alignOf, type SheetLayout } from './sheet-layout.ts';
import type { RowId } from './sheet-types.ts';
import type { KeptText } from './use-cell-editing.ts';

interface TotalsRowProps<Row> {
  readonly layout: SheetLayout<Row>;
  readonly cells: Readonly<Record<string, ReactNode>>;
  readonly rowIndex: number;
}

/** The totals, standing at the foot whatever is scrolled. */
export function TotalsRow<Row>({ layout, cells, rowIndex }: TotalsRowProps<Row>) {
  return (
    <div role="rowgroup" className="sheet-totals">
      <div role="row" className="sheet-totals-row" aria-rowindex={rowIndex}>
        <div role="gridcell" className="sheet-cell sheet-tick" aria-colindex={1} aria-label="Totals" />
        {layout.columns.map((column, index) => {
          const pinned = index < layout.pinned;
          const shown = cells[column.key] ?? (index === 0 ? 'Total' : null);
          return (
            <div
              role="gridcell"
              key={column.key}
              className={`sheet-cell sheet-${alignOf(column)}${pinned ? ' sheet-pinned' : ''}`}
              data-column={index}
              aria-colindex={index + 2}
            >
              <span className="sheet-text">{shown}</span>
            </div>
          );
        })}
      </div>
    </div>
  );
}

interface SelectionBarProps {
  readonly counts: string;
  readonly selection: ReadonlySet<RowId>;
  readonly unseen: number;
  readonly bulk: ReactNode;
  readonly kept: KeptText | null;
  readonly onBringBack: () => void;
  readonly onForget: () => void;
  readonly onClear: () => void;
}

/** The line under the table: how many rows, what is selected and what can be done with it, and text not stored. */
export function SelectionBar(props: SelectionBarProps) {
  const { selection, unseen, kept } = props;
  return (
    <div className="sheet-bar" data-selected={selection.size > 0}>
      {selection.size === 0 ? (
        <span className="sheet-counts">{props.counts}</span>
      ) : (
        <>
          <strong className="sheet-counts">
            {selection.size.toLocaleString()} selected
            {unseen > 0 && ` (${unseen.toLocaleString()} not shown)`}
          </strong>
          <button type="button" className="sheet-plain-button" onClick={props.onClear}>
            Select none
          </button>
          {props.bulk}
        </>
      )}
      {kept !== null && (
        <span className="sheet-kept">
          <span>
            Not stored in {kept.title}: “{kept.text}”
          </span>
          <button type="button" className="sheet-plain-button" onClick={props.onBringBack}>
            Bring back
          </button>
          <button type="button" className="sheet-plain-button" onClick={props.onForget}>
            Drop it
          </button>
        </span>
      )}
    </div>
  );
}
