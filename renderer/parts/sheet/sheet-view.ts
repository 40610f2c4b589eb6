import { isSearched } from './column-vectors.ts';
import type { SheetColumn, SheetColumnFilter, SheetFilter, SheetSort, SheetView } from './sheet-types.ts';

/** The view of a sheet that nobody has arranged yet. */
export const plainView: SheetView = {
  columns: { order: [], hidden: [], width: {} },
  sort: [],
  filters: [],
  search: '',
  group: null,
  collapsed: [],
};

/** Column widths in pixels stay between a readable minimum and a screen's width. */
const widthLimits = { min: 48, max: 960 } as const;

const widthByKind = { text: 180, number: 88, money: 112, quantity: 88, date: 112, state: 136, choice: 136 } as const;

/** The width of a column in pixels at desk size: the person's, else the column's, else one that holds its title. */
export function columnWidth<Row>(view: SheetView, column: SheetColumn<Row>): number {
  const titled = Math.max(widthByKind[column.kind], 52 + 8.5 * column.title.length); // 52: menu, sort mark, padding
  return clampWidth(view.columns.width[column.key] ?? column.width ?? titled);
}

export function clampWidth(width: number): number {
  return Math.round(Math.min(widthLimits.max, Math.max(widthLimits.min, width)));
}

/** All columns from left to right, hidden ones too; those the view doesn't know yet come after those it does. */
export function orderColumns<Row>(view: SheetView, columns: readonly SheetColumn<Row>[]): SheetColumn<Row>[] {
  const place = new Map(view.columns.order.map((key, index) => [key, index]));
  const last = place.size;
  return columns.toSorted((a, b) => (place.get(a.key) ?? last) - (place.get(b.key) ?? last));
}

/** The columns in sight. A view that would hide them all shows the first one, so that there is a way back. */
export function shownColumns<Row>(view: SheetView, columns: readonly SheetColumn<Row>[]): SheetColumn<Row>[] {
  const ordered = orderColumns(view, columns);
  const shown = ordered.filter(({ key }) => !view.columns.hidden.includes(key));
  return shown.length > 0 ? shown : ordered.slice(0, 1);
}

/** Moves a column past its nearest visible neighbour; the same view if there is none on that side. */
export function moveColumn<Row>(
  view: SheetView,
  columns: readonly SheetColumn<Row>[],
  key: string,
  by: -1 | 1,
): SheetView {
  const shown = shownColumns(view, columns);
  const neighbour = shown[shown.findIndex((column) => column.key === key) + by];
  if (neighbour === undefined || !shown.some((column) => column.key === key)) return view;
  const order = orderColumns(view, columns).map((column) => column.key);
  order.splice(order.indexOf(key), 1);
  order.splice(order.indexOf(neighbour.key) + (by === 1 ? 1 : 0), 0, key);
  return { ...view, columns: { ...view.columns, order } };
}

/** Hides or shows a column; the last visible one stays. */
export function hideColumn<Row>(
  view: SheetView,
  columns: readonly SheetColumn<Row>[],
  key: string,
  hide: boolean,
): SheetView {
  const others = view.columns.hidden.filter((hidden) => hidden !== key);
  if (hide && shownColumns(view, columns).every((column) => column.key === key)) return view;
  return { ...view, columns: { ...view.columns, hidden: hide ? [...others, key] : others } };
}

export function resizeColumn(view: SheetView, key: string, width: number): SheetView {
  return { ...view, columns: { ...view.columns, width: { ...view.columns.width, [key]: clampWidth(width) } } };
}

/** Ascending, then descending, then unsorted. With `add` the other sort keys stay, and a new one ranks last. */
export function turnSort(view: SheetView, key: string, add: boolean): SheetView {
  const had = view.sort.find((sort) => sort.key === key);
  const next: SheetSort[] =
    had === undefined ? [{ key, dir: 'ascending' }] : had.dir === 'ascending' ? [{ key, dir: 'descending' }] : [];
  if (!add) return { ...view, sort: next };
  const sort =
    had === undefined ? [...view.sort, ...next] : view.sort.flatMap((each) => (each.key === key ? next : [each]));
  return { ...view, sort };
}

export function setSort(view: SheetView, sort: SheetSort): SheetView {
  return { ...view, sort: [sort] };
}

/** Sets the filter of a column, or takes it off when `filter` is null. One filter a column. */
export function setFilter(view: SheetView, key: string, filter: SheetFilter | null): SheetView {
  const at = view.filters.findIndex((each) => each.key === key);
  if (filter === null) return at === -1 ? view : { ...view, filters: view.filters.toSpliced(at, 1) };
  return { ...view, filters: at === -1 ? [...view.filters, filter] : view.filters.with(at, filter) };
}

export function clearFilters(view: SheetView): SheetView {
  return { ...view, filters: [], search: '' };
}

export function groupBy(view: SheetView, key: string | null): SheetView {
  return view.group === key ? view : { ...view, group: key, collapsed: [] };
}

export function foldGroup(view: SheetView, text: string, folded: boolean): SheetView {
  const others = view.collapsed.filter((each) => each !== text);
  return { ...view, collapsed: folded ? [...others, text] : others };
}

const filterKinds = {
  text: 'words',
  number: 'range',
  money: 'range',
  quantity: 'range',
  date: 'range',
  state: 'choices',
  choice: 'choices',
} as const;

/** How a column is filtered: as it says, else by its kind. */
export function filterOf<Row>(column: SheetColumn<Row>): SheetColumnFilter {
  return column.filter ?? { kind: filterKinds[column.kind] };
}

/** The words of an active filter, without the column's title: "Fuel, Oil", "from 12.50", "empty". */
export function describeFilter(filter: SheetFilter): string {
  if (filter.op === 'any-of') {
    const named = filter.value.map((text) => text || 'none');
    return named.length > 3 ? `${named.slice(0, 2).join(', ')} and ${named.length - 2} more` : named.join(', ');
  }
  if (filter.op === 'words') return `“${filter.value}”`;
  if (filter.op === 'blank') return filter.value ? 'empty' : 'not empty';
  const { fromText, toText } = filter.value;
  if (fromText === '') return `to ${toText}`;
  return toText === '' ? `from ${fromText}` : `${fromText} to ${toText}`;
}

/** What the search line looks through, for its placeholder. */
export function searchedTitles<Row>(columns: readonly SheetColumn<Row>[]): string {
  return columns
    .filter(isSearched)
    .slice(0, 3)
    .map(({ title }) => title.toLowerCase())
    .join(', ');
}
