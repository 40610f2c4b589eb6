import { type KeyboardEvent, memo, type ReactNode, type RefObject } from 'react';
import type { SheetColumn, SheetView } from './sheet-types.ts';
import { clearFilters, describeFilter, groupBy, searchedTitles, setFilter } from './sheet-view.ts';

interface FilterLineProps<Row> {
  readonly label: string;
  readonly columns: readonly SheetColumn<Row>[];
  readonly view: SheetView;
  readonly search: RefObject<HTMLInputElement | null>;
  /** Whether to name the key that leads here; there is none at the bench. */
  readonly hint: boolean;
  readonly onViewChange: (view: SheetView) => void;
  readonly onColumns: (anchor: HTMLElement) => void;
  readonly onLeave: () => void;
  /** Sort keys as removable words too: on cards there are no column heads to show them. */
  readonly showSort: boolean;
  readonly tools: ReactNode;
}

/** The search line, and every active filter as a word that can be taken off. */
function FilterLinePlain<Row>(props: FilterLineProps<Row>) {
  const { columns, view, search, onViewChange } = props;
  const titleOf = (key: string) => columns.find((column) => column.key === key)?.title ?? key;
  const remove = (next: SheetView) => {
    onViewChange(next);
    search.current?.focus();
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Escape' && view.search !== '') onViewChange({ ...view, search: '' });
    else if (event.key === 'Escape' || event.key === 'ArrowDown' || event.key === 'Enter') props.onLeave();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const titles = searchedTitles(columns);
  return (
    <search className="sheet-filter-line" aria-label={`Filter ${props.label}`}>
      <input
        ref={search}
        type="search"
        className="sheet-field sheet-search"
        aria-label={`Find in ${props.label}`}
        placeholder={props.hint ? `Find by ${titles}  ( / )` : `Find by ${titles}`}
        value={view.search}
        onChange={(event) => onViewChange({ ...view, search: event.currentTarget.value })}
        onKeyDown={onKeyDown}
      />
      {view.filters.map((filter) => (
        <Word
          key={filter.key}
          kind="filter"
          text={`${titleOf(filter.key)}: ${describeFilter(filter)}`}
          onRemove={() => remove(setFilter(view, filter.key, null))}
        />
      ))}
      {props.showSort &&
        view.sort.map(({ key, dir }) => (
          <Word
            key={`sort-${key}`}
            kind="sorting"
            text={`${titleOf(key)} ${dir === 'ascending' ? '↑' : '↓'}`}
            onRemove={() => remove({ ...view, sort: view.sort.filter((sort) => sort.key !== key) })}
          />
        ))}
      {view.group !== null && (
        <Word
          kind="grouping"
          text={`by ${titleOf(view.group).toLowerCase()}`}
          onRemove={() => remove(groupBy(view, null))}
        />
      )}
      {view.filters.length > 1 && (
        <button type="button" className="sheet-plain-button" onClick={() => remove(clearFilters(view))}>
          Clear all
        </button>
      )}
      <span className="sheet-filter-rest" />
      <button
        type="button"
        className="sheet-plain-button"
        aria-haspopup="dialog"
        onClick={(event) => props.onColumns(event.currentTarget)}
      >
        {props.showSort ? 'Sort, filter, columns' : 'Columns'}
      </button>
      {props.tools}
    </search>
  );
}

function Word({ kind, text, onRemove }: { kind: string; text: string; onRemove: () => void }) {
  return (
    <button type="button" className="sheet-word" aria-label={`Remove ${kind} ${text}`} onClick={onRemove}>
      <span>{text}</span>
      <svg width="10" height="10" viewBox="0 0 10 10" aria-hidden="true">
        <path d="M1.5 1.5l7 7m0-7l-7 7" stroke="currentColor" strokeWidth="1.5" />
      </svg>
    </button>
  );
}

export const FilterLine = memo(FilterLinePlain) as typeof FilterLinePlain;
