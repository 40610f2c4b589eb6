import { IconArrowDown, IconArrowsSort, IconArrowUp } from '@tabler/icons-react';
import { type ReactNode, type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import './simple-table.css';

export interface Column<Row> {
  readonly id: string;
  readonly title: string;
  readonly cell: (row: Row) => ReactNode;
  /** Figures stand at the right, so that their places line up. */
  readonly figures?: boolean;
  /** Sentences: in a narrow window they are scrolled to, rather than squeezed to a word a line. */
  readonly sentences?: boolean;
  /** The cell names its row. */
  readonly rowHeader?: boolean;
  /** What the column is sorted by; a column without it can't be sorted. */
  readonly sortBy?: (row: Row) => string | number;
  /** Stands under the column, such as a sum. */
  readonly foot?: ReactNode;
}

export interface SimpleTableProps<Row> {
  /** What the table is, shown above it. */
  readonly caption: string;
  /** The caption is only heard, where a heading already says it. */
  readonly captionHidden?: boolean;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row, index: number) => string;
  readonly onRowOpen?: (row: Row) => void;
  readonly sortedBy?: { readonly column: string; readonly descending: boolean };
}

const inOrder = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

function compared(a: string | number, b: string | number): number {
  return typeof a === 'number' && typeof b === 'number' ? a - b : inOrder.compare(String(a), String(b));
}

function sorted<Row>(rows: readonly Row[], column: Column<Row> | undefined, descending: boolean): readonly Row[] {
  const by = column?.sortBy;
  if (by === undefined) return rows;
  const inRising = rows.toSorted((a, b) => compared(by(a), by(b)));
  return descending ? inRising.toReversed() : inRising;
}

function SortButton({
  title,
  state,
  onClick,
}: {
  title: string;
  state: 'ascending' | 'descending' | 'none';
  onClick: () => void;
}) {
  const Mark = state === 'ascending' ? IconArrowUp : state === 'descending' ? IconArrowDown : IconArrowsSort;
  return (
    <button type="button" className="sort-button" onClick={onClick}>
      <span>{title}</span>
      <Mark aria-hidden size="1em" data-state={state} />
    </button>
  );
}

/** Whether something is wider than its place: then it must be reachable by keyboard, to be scrolled. */
function useOverflow(): readonly [RefObject<HTMLDivElement | null>, boolean] {
  const place = useRef<HTMLDivElement>(null);
  const [overflows, setOverflows] = useState(false);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watcher = new ResizeObserver(() => setOverflows(element.scrollWidth > element.clientWidth + 1));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return [place, overflows];
}

/** A table of up to a few hundred rows, with everything in the document: it prints whole and is read aloud whole. */
export function SimpleTable<Row>(props: SimpleTableProps<Row>) {
  const { caption, captionHidden = false, columns, rows, rowKey, onRowOpen } = props;
  const [order, setOrder] = useState(props.sortedBy ?? null);
  const shown = useMemo(
    () =>
      sorted(
        rows,
        columns.find(({ id }) => id === order?.column),
        order?.descending ?? false,
      ),
    [rows, columns, order],
  );
  const turn = (column: string) =>
    setOrder((now) =>
      now?.column === column ? (now.descending ? null : { column, descending: true }) : { column, descending: false },
    );
  const [scroller, overflows] = useOverflow();
  const hasFoot = columns.some(({ foot }) => foot !== undefined);

  return (
    <div
      ref={scroller}
      className="table-scroll"
      {...(overflows ? { role: 'region', tabIndex: 0, 'aria-label': `${caption}, table` } : {})}
    >
      <table className="simple-table">
        <caption className={captionHidden ? 'only-heard' : undefined}>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ id, title, figures, sortBy }) => {
              const state = order?.column !== id ? 'none' : order.descending ? 'descending' : 'ascending';
              return (
                <th
                  key={id}
                  scope="col"
                  data-figures={figures || undefined}
                  aria-sort={sortBy === undefined ? undefined : state}
                >
                  {sortBy === undefined ? title : <SortButton title={title} state={state} onClick={() => turn(id)} />}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>
          {shown.map((row, index) => (
            <tr key={rowKey(row, index)} data-opens={onRowOpen !== undefined || undefined}>
              {columns.map((column, place) => (
                <Cell
                  key={column.id}
                  column={column}
                  row={row}
                  {...(place === 0 && onRowOpen !== undefined ? { onOpen: onRowOpen } : {})}
                />
              ))}
            </tr>
          ))}
        </tbody>
        {hasFoot && (
          <tfoot>
            <tr>
              {columns.map(({ id, figures, foot }) => (
                <td key={id} data-figures={figures || undefined}>
                  {foot}
                </td>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
    </div>
  );
}

function Cell<Row>({ column, row, onOpen }: { column: Column<Row>; row: Row; onOpen?: (row: Row) => void }) {
  const inside = column.cell(row);
  const content =
    onOpen === undefined ? (
      inside
    ) : (
      <button type="button" className="row-button" onClick={() => onOpen(row)}>
        {inside}
      </button>
    );
  const figures = column.figures || undefined;
  return column.rowHeader === true ? (
    <th scope="row" data-figures={figures}>
      {content}
    </th>
  ) : (
    <td data-figures={figures} data-sentences={column.sentences || undefined}>
      {content}
    </td>
  );
}
