import type { SheetColumn, SheetView } from './sheet-types.ts';
import { hideColumn, moveColumn, orderColumns, plainView, shownColumns } from './sheet-view.ts';

interface ColumnsPanelProps<Row> {
  readonly columns: readonly SheetColumn<Row>[];
  readonly view: SheetView;
  readonly onViewChange: (view: SheetView) => void;
  readonly onColumn: (column: SheetColumn<Row>) => void;
}

/** Which columns are shown and in what order; from here every column's own panel can be reached, hidden or not. */
export function ColumnsPanel<Row>({ columns, view, onViewChange, onColumn }: ColumnsPanelProps<Row>) {
  const shown = shownColumns(view, columns);
  return (
    <>
      <p className="sheet-panel-title">Columns</p>
      <ul className="sheet-columns-list">
        {orderColumns(view, columns).map((column) => {
          const { key, title } = column;
          const at = shown.indexOf(column);
          return (
            <li key={key}>
              <label className="sheet-choice">
                <input
                  type="checkbox"
                  checked={at !== -1}
                  disabled={at !== -1 && shown.length === 1}
                  onChange={() => onViewChange(hideColumn(view, columns, key, at !== -1))}
                />
                <span className="sheet-choice-text">{title}</span>
              </label>
              <button
                type="button"
                aria-label={`Move ${title} left`}
                disabled={at <= 0}
                onClick={() => onViewChange(moveColumn(view, columns, key, -1))}
              >
                ←
              </button>
              <button
                type="button"
                aria-label={`Move ${title} right`}
                disabled={at === -1 || at === shown.length - 1}
                onClick={() => onViewChange(moveColumn(view, columns, key, 1))}
              >
                →
              </button>
              <button type="button" aria-label={`Sort, filter or group by ${title}`} onClick={() => onColumn(column)}>
                Sort, filter
              </button>
            </li>
          );
        })}
      </ul>
      <div className="sheet-panel-line">
        <button type="button" onClick={() => onViewChange({ ...view, columns: plainView.columns })}>
          Columns as they were at first
        </button>
      </div>
    </>
  );
}
