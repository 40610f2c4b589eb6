import { type FocusEvent, type KeyboardEvent, useLayoutEffect, useRef } from 'react';
import type { SheetColumn } from './sheet-types.ts';
import type { CellEditing, KeptText } from './use-cell-editing.ts';

/** Where to go once the text is stored. */
export type AfterCommit = 'down' | 'up' | 'next' | 'previous' | 'leave';

interface CellEditorProps<Row> {
  readonly column: SheetColumn<Row>;
  readonly editing: CellEditing;
  readonly kept: KeptText | null;
  /** Messages open upwards where there is no room below. */
  readonly upwards: boolean;
  readonly id: string;
  readonly onDraft: (text: string) => void;
  readonly onCommit: (after: AfterCommit) => void;
  readonly onCancel: () => void;
}

const inputModes = {
  text: 'text',
  number: 'decimal',
  money: 'decimal',
  quantity: 'decimal',
  date: 'text',
  choice: 'text',
} as const;

/** The field in the place of a cell. What is typed stays with its focus until it is stored or given up. */
export function CellEditor<Row>(props: CellEditorProps<Row>) {
  const { column, editing, kept, id } = props;
  const field = useRef<HTMLInputElement & HTMLSelectElement>(null);
  const { problem, busy } = editing;
  useLayoutEffect(() => {
    const input = field.current;
    input?.focus({ preventScroll: true });
    if (!(input instanceof HTMLInputElement)) return;
    if (editing.selectAll) input.select();
    else input.setSelectionRange(input.value.length, input.value.length);
  }, [editing.selectAll]);
  useLayoutEffect(() => {
    if (problem !== null) field.current?.focus({ preventScroll: true });
  }, [problem]);

  const recallable = kept?.rowId === editing.rowId && kept.columnKey === editing.columnKey ? kept.text : null;
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.nativeEvent.isComposing) return;
    if (event.key === 'ArrowUp' && event.altKey && recallable !== null && field.current !== null) {
      field.current.value = recallable;
      props.onDraft(recallable);
    } else if (event.key === 'Enter') props.onCommit(event.shiftKey ? 'up' : 'down');
    else if (event.key === 'Tab') props.onCommit(event.shiftKey ? 'previous' : 'next');
    else if (event.key === 'Escape') props.onCancel();
    else return;
    event.preventDefault();
  };
  const onBlur = (event: FocusEvent) => {
    // Going to another window is no decision; going elsewhere on the page is.
    if (document.hasFocus() && !busy && event.relatedTarget !== field.current) props.onCommit('leave');
  };
  const messageId = `${id}-message`;
  const shared = {
    ref: field,
    className: 'sheet-field',
    'aria-label': column.title,
    'aria-invalid': problem !== null,
    'aria-busy': busy,
    'aria-describedby': messageId,
    defaultValue: editing.opening,
    onKeyDown,
    onBlur,
    onChange: (event: { currentTarget: { value: string } }) => props.onDraft(event.currentTarget.value),
  };
  return (
    <div className="sheet-editor" data-upwards={props.upwards}>
      {column.edit?.kind === 'choice' ? (
        <select {...shared}>
          {withOpening(column.edit.choices ?? [], editing.opening).map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          readOnly={busy}
          inputMode={inputModes[column.edit?.kind ?? 'text']}
          autoComplete="off"
          spellCheck={column.edit?.kind === 'text'}
        />
      )}
      <div id={messageId} className="sheet-field-message" role={problem === null ? undefined : 'alert'}>
        {problem !== null && <ProblemText message={problem.message} accepted={problem.accepted} />}
        {problem === null && recallable !== null && (
          <span className="sheet-field-hint">Alt+↑ brings back “{recallable}”</span>
        )}
      </div>
    </div>
  );
}

function ProblemText({ message, accepted }: { message: string; accepted: string | undefined }) {
  const more = accepted !== undefined && !message.includes(accepted);
  return (
    <span className="sheet-field-problem">
      <b aria-hidden="true">! </b>
      {message}
      {more && <span> Accepted: {accepted}.</span>}
    </span>
  );
}

/** A choice outside the list stays choosable, or opening the editor would already change it. */
function withOpening(choices: readonly string[], opening: string): readonly string[] {
  return choices.includes(opening) ? choices : [opening, ...choices];
}
