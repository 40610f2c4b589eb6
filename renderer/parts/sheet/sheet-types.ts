import type { ReactNode } from 'react';

/** What names a row for good, whatever the sorting. */
export type RowId = string | number;

/** What a column sorts and filters by. Empty (null, undefined, '', NaN) always comes last. */
export type Comparable = string | number | boolean | null | undefined;

type ColumnKind = 'text' | 'number' | 'money' | 'quantity' | 'date' | 'state' | 'choice';

/** How a cell is changed in place. */
interface SheetEdit<Row> {
  readonly kind: 'text' | 'number' | 'money' | 'quantity' | 'date' | 'choice';
  /** The accepted words, for kind `choice`. */
  readonly choices?: readonly string[];
  /** The text the editor opens with, where it differs from the shown text (no currency sign, say). */
  readonly text?: (row: Row) => string;
  /** False where this row's cell can't be changed. */
  readonly allowed?: (row: Row) => boolean;
  /** Stores what was typed. Rejects with an `EditProblem` (a Refusal is one) when it can't be, having changed nothing. */
  readonly commit: (row: Row, text: string) => Promise<void>;
}

/** Why a commit was turned down, as shown under the cell. */
export interface EditProblem {
  readonly message: string;
  readonly field?: string | undefined;
  readonly accepted?: string | undefined;
}

/** How the column's filter is offered: words in it, ticks on its distinct texts, or a range. */
export interface SheetColumnFilter {
  readonly kind: 'words' | 'choices' | 'range';
  /** Turns a typed bound into what `value` returns; null if it can't be understood. */
  readonly parse?: (text: string) => number | string | null;
  /** Decimal places between a typed bound and `value`: 3 for thousandths, 2 for cents. Used when `parse` is absent. */
  readonly digits?: number;
  /** Says what a bound may look like: "an amount such as 12.50". */
  readonly accepted?: string;
}

export interface SheetColumn<Row> {
  readonly key: string;
  readonly title: string;
  readonly kind: ColumnKind;
  /** Pixels; a default by kind when absent. */
  readonly width?: number;
  /** `end` for numbers, money and quantities unless said otherwise. */
  readonly align?: 'start' | 'end' | 'center';
  readonly value: (row: Row) => Comparable;
  readonly text: (row: Row) => string;
  /** Richer cell content. Anything in it that takes focus needs `tabIndex={-1}`: the sheet is one tab stop. */
  readonly render?: (row: Row) => ReactNode;
  readonly edit?: SheetEdit<Row>;
  readonly groupable?: boolean;
  readonly filter?: SheetColumnFilter;
  /** True or false to put the column in or keep it out of the search line; by default text, state and choice are in. */
  readonly searched?: boolean;
  /** The figure for a group's head row and for the totals row, over the rows given. */
  readonly subtotal?: (rows: readonly Row[]) => string;
  /** The place of the column on a narrow screen's card. */
  readonly card?: 'primary' | 'secondary' | 'aside' | 'none';
}

export interface SheetSort {
  readonly key: string;
  readonly dir: 'ascending' | 'descending';
}

/** A range's bounds as understood and as typed; either side may be open. */
export interface RangeBounds {
  readonly from: number | string | null;
  readonly to: number | string | null;
  readonly fromText: string;
  readonly toText: string;
}

export type SheetFilter =
  | { readonly key: string; readonly op: 'any-of'; readonly value: readonly string[] }
  | { readonly key: string; readonly op: 'between'; readonly value: RangeBounds }
  | { readonly key: string; readonly op: 'words'; readonly value: string }
  | { readonly key: string; readonly op: 'blank'; readonly value: boolean };

/** All that a person can arrange on a sheet; plain data, so that it can be stored. */
export interface SheetView {
  readonly columns: {
    /** Keys from left to right; columns not named follow in their own order. */
    readonly order: readonly string[];
    readonly hidden: readonly string[];
    readonly width: Readonly<Record<string, number>>;
  };
  readonly sort: readonly SheetSort[];
  readonly filters: readonly SheetFilter[];
  readonly search: string;
  readonly group: string | null;
  /** Texts of the groups that are folded away. */
  readonly collapsed: readonly string[];
}

/** What was pasted and where the first cell would land. */
export interface SheetPaste<Row> {
  readonly tsv: string;
  readonly cells: readonly (readonly string[])[];
  readonly row: Row | null;
  readonly rowId: RowId | null;
  readonly columnKey: string;
  /** Keys of the shown columns from `columnKey` rightwards. */
  readonly columnKeys: readonly string[];
  /** Ids of the shown rows from the cell downwards, one a pasted line at most. */
  readonly rowIds: readonly RowId[];
}

export interface SheetProps<Row> {
  /** Keep the same array between renders unless a column really changed: caches hang on it. */
  readonly columns: readonly SheetColumn<Row>[];
  /** Immutable rows: a changed row is a new object in a new array. */
  readonly rows: readonly Row[];
  readonly rowId: (row: Row) => RowId;
  readonly view: SheetView;
  readonly onViewChange: (view: SheetView) => void;
  readonly selection: ReadonlySet<RowId>;
  readonly onSelectionChange: (selection: ReadonlySet<RowId>) => void;
  /** Names the sheet for a screen reader: "Parts". */
  readonly label: string;
  /** A noun for the rows in counts: one and many. */
  readonly noun?: readonly [one: string, many: string];
  readonly onOpenRow?: (row: Row) => void;
  /** Actions on the selected rows, shown in the bar at the foot. */
  readonly bulk?: (selection: ReadonlySet<RowId>) => ReactNode;
  readonly onPaste?: (paste: SheetPaste<Row>) => void;
  /** What belongs here and the first step, when there are no rows at all. */
  readonly emptyText?: ReactNode;
  /** True for a totals row from each column's `subtotal` over the rows shown; or a node for each column key. */
  readonly footer?: boolean | Readonly<Record<string, ReactNode>>;
  /** Columns that stay in sight when scrolling sideways; 1 unless given. */
  readonly pinned?: 0 | 1 | 2 | 3;
  /** Content at the right end of the filter line. */
  readonly tools?: ReactNode;
}
