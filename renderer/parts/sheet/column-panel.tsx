import type { ColumnVectors } from './column-vectors.ts';
import { FilterFields } from './filter-fields.tsx';
import type { SheetColumn, SheetView } from './sheet-types.ts';
import { columnWidth, groupBy, hideColumn, moveColumn, resizeColumn, setSort, shownColumns } from './sheet-view.ts';

interface ColumnPanelProps<Row> {
  readonly column: SheetColumn<Row>;
  readonly columns: readonly SheetColumn<Row>[];
  readonly view: SheetView;
  readonly vectors: ColumnVectors<Row>;
  readonly cards: boolean;
  readonly onViewChange: (view: SheetView) => void;
  readonly onClose: (returnFocus: boolean) => void;
}

/** Pixels by which a press of a button or key widens or narrows a column. */
export const widthStep = 16;

/** Everything that can be done with one column: sort, filter, group, place, width, hide. */
export function ColumnPanel<Row>(props: ColumnPanelProps<Row>) {
  const { column, columns, view, onViewChange, onClose } = props;
  const { key, title } = column;
  const shown = shownColumns(view, columns);
  const at = shown.findIndex((each) => each.key === key);
  const sorted = view.sort.find((sort) => sort.key === key)?.dir;
  const width = columnWidth(view, column);
  const [up, down] = directionWords[column.kind === 'date' ? 'date' : isFigure(column.kind) ? 'figure' : 'text'];
  const change = (next: SheetView, close = false) => {
    onViewChange(next);
    if (close) onClose(true);
  };
  return (
    <>
      <p className="sheet-panel-title">{title}</p>
      <div className="sheet-panel-line">
        <button
          type="button"
          data-first
          aria-pressed={sorted === 'ascending'}
          onClick={() => change(setSort(view, { key, dir: 'ascending' }), true)}
        >
          {up}
        </button>
        <button
          type="button"
          aria-pressed={sorted === 'descending'}
          onClick={() => change(setSort(view, { key, dir: 'descending' }), true)}
        >
          {down}
        </button>
      </div>
      <FilterFields column={column} view={view} vectors={props.vectors} onViewChange={onViewChange} />
      {column.groupable === true && (
        <div className="sheet-panel-line">
          <button
            type="button"
            aria-pressed={view.group === key}
            onClick={() => change(groupBy(view, view.group === key ? null : key), true)}
          >
            {view.group === key ? 'Stop grouping' : `Group by ${title.toLowerCase()}`}
          </button>
        </div>
      )}
      {!props.cards && (
        <div className="sheet-panel-line">
          <button type="button" disabled={at <= 0} onClick={() => change(moveColumn(view, columns, key, -1))}>
            Move left
          </button>
          <button
            type="button"
            disabled={at === -1 || at === shown.length - 1}
            onClick={() => change(moveColumn(view, columns, key, 1))}
          >
            Move right
          </button>
          <button type="button" onClick={() => change(resizeColumn(view, key, width - widthStep))}>
            Narrower
          </button>
          <button type="button" onClick={() => change(resizeColumn(view, key, width + widthStep))}>
            Wider
          </button>
          <button
            type="button"
            disabled={shown.length === 1}
            onClick={() => change(hideColumn(view, columns, key, true), true)}
          >
            Hide
          </button>
        </div>
      )}
    </>
  );
}

const directionWords = {
  text: ['A to Z', 'Z to A'],
  figure: ['Smallest first', 'Largest first'],
  date: ['Earliest first', 'Latest first'],
} as const;

function isFigure(kind: SheetColumn<never>['kind']): boolean {
  return kind === 'number' || kind === 'money' || kind === 'quantity';
}
