import { useCallback, useRef, useState } from 'react';
import type { EditProblem, RowId, SheetColumn } from './sheet-types.ts';

interface CellName {
  readonly rowId: RowId;
  readonly columnKey: string;
}

/** A cell being edited. */
export interface CellEditing extends CellName {
  /** What the editor opened with: the first key typed, or the cell's text. */
  readonly opening: string;
  /** The cell's text before; committing the same changes nothing. */
  readonly before: string;
  /** Whether the opening text stands selected, so that typing replaces it. */
  readonly selectAll: boolean;
  readonly busy: boolean;
  readonly problem: EditProblem | null;
}

/** Text that was typed and not stored, kept so that it can be brought back. */
export interface KeptText extends CellName {
  readonly text: string;
  readonly title: string;
}

/** Editing of one cell at a time: text in, a commit that may be turned down, and nothing typed is ever lost. */
export function useCellEditing<Row>() {
  const [editing, setEditing] = useState<CellEditing | null>(null);
  const [kept, setKept] = useState<KeptText | null>(null);
  const draft = useRef('');
  const busy = useRef(false);
  // The field blurs while it closes, and that must not store anything a second time.
  const open = useRef(false);

  const start = useCallback((row: Row, id: RowId, column: SheetColumn<Row>, typed?: string) => {
    const before = editText(column, row);
    draft.current = typed ?? before;
    open.current = true;
    setEditing({
      rowId: id,
      columnKey: column.key,
      opening: typed ?? before,
      before,
      selectAll: typed === undefined,
      busy: false,
      problem: null,
    });
  }, []);

  /** Ends editing; what was typed is kept aside if it differs from what the cell holds. */
  const cancel = useCallback((now: CellEditing, title: string) => {
    open.current = false;
    const text = draft.current;
    if (text !== now.before) setKept({ rowId: now.rowId, columnKey: now.columnKey, text, title });
    setEditing(null);
  }, []);

  /** Stores the draft. True when the editor may close; false when it was turned down or a commit is under way. */
  const commit = useCallback(async (now: CellEditing, row: Row, column: SheetColumn<Row>): Promise<boolean> => {
    if (busy.current || !open.current) return false;
    const text = draft.current;
    if (text !== now.before) {
      busy.current = true;
      setEditing({ ...now, busy: true, problem: null });
      try {
        await column.edit?.commit(row, text);
      } catch (error) {
        setEditing({ ...now, opening: text, selectAll: false, busy: false, problem: readProblem(error) });
        return false;
      } finally {
        busy.current = false;
      }
    }
    open.current = false;
    setEditing(null);
    setKept((had) => (had?.rowId === now.rowId && had.columnKey === now.columnKey ? null : had));
    return true;
  }, []);

  const forget = useCallback(() => setKept(null), []);
  const setDraft = useCallback((text: string) => {
    draft.current = text;
  }, []);
  return { editing, kept, start, cancel, commit, forget, setDraft };
}

/** The text a cell's editor opens with. */
function editText<Row>(column: SheetColumn<Row>, row: Row): string {
  return column.edit?.text?.(row) ?? column.text(row);
}

export function canEdit<Row>(column: SheetColumn<Row>, row: Row): boolean {
  return column.edit !== undefined && (column.edit.allowed?.(row) ?? true);
}

function readProblem(error: unknown): EditProblem {
  const { message, field, accepted } = (error ?? {}) as Partial<Record<keyof EditProblem, unknown>>;
  const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined);
  return {
    message: text(message) ?? 'The change could not be stored. Nothing was changed.',
    field: text(field),
    accepted: text(accepted),
  };
}
