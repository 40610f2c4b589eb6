import { type FormEvent, useId, useMemo, useState } from 'react';
import type { ColumnVectors } from './column-vectors.ts';
import { foldText } from './fold-text.ts';
import { countChoices, matchRows } from './index-rows.ts';
import { acceptedBound, readBounds } from './range-bounds.ts';
import type { SheetColumn, SheetView } from './sheet-types.ts';
import { filterOf, setFilter } from './sheet-view.ts';

interface FilterFieldsProps<Row> {
  readonly column: SheetColumn<Row>;
  readonly view: SheetView;
  readonly vectors: ColumnVectors<Row>;
  readonly onViewChange: (view: SheetView) => void;
}

/** More choices than these are narrowed by typing; nobody reads a thousand tick boxes. */
const choicesShown = 60;
const choicesWithoutSearch = 10;

/** The filter of one column, as its kind asks. */
export function FilterFields<Row>(props: FilterFieldsProps<Row>) {
  const { kind } = filterOf(props.column);
  if (kind === 'choices') return <ChoiceFields {...props} />;
  return kind === 'range' ? <RangeFields {...props} /> : <WordsField {...props} />;
}

function ChoiceFields<Row>({ column, view, vectors, onViewChange }: FilterFieldsProps<Row>) {
  const { key, title } = column;
  const [words, setWords] = useState('');
  const own = view.filters.find((filter) => filter.key === key);
  const chosen = own?.op === 'any-of' ? own.value : [];
  // Counted over what the other filters leave, so that a figure says what a tick would bring.
  const others = useMemo(() => view.filters.filter((filter) => filter.key !== key), [view.filters, key]);
  const choices = useMemo(
    () => countChoices(vectors, key, matchRows(vectors, view.search, others)),
    [vectors, key, view.search, others],
  );
  const sought = foldText(words.trim());
  const found = choices.filter(({ text }) => foldText(text || 'none').includes(sought));
  const toggle = (text: string) => {
    const value = chosen.includes(text) ? chosen.filter((each) => each !== text) : [...chosen, text];
    onViewChange(setFilter(view, key, value.length === 0 ? null : { key, op: 'any-of', value }));
  };
  return (
    <fieldset className="sheet-filter">
      <legend>Show only</legend>
      {choices.length > choicesWithoutSearch && (
        <input
          type="search"
          className="sheet-field"
          aria-label={`Find in ${title}`}
          placeholder="Find"
          value={words}
          onChange={(event) => setWords(event.currentTarget.value)}
        />
      )}
      <div className="sheet-choices">
        {found.slice(0, choicesShown).map(({ text, count }) => (
          <label key={text} className="sheet-choice">
            <input type="checkbox" checked={chosen.includes(text)} onChange={() => toggle(text)} />
            <span className="sheet-choice-text">{text || 'none'}</span>{' '}
            <span className="sheet-choice-count">{count.toLocaleString()}</span>
          </label>
        ))}
      </div>
      {found.length > choicesShown && (
        <p className="sheet-note">{(found.length - choicesShown).toLocaleString()} more; type to narrow them.</p>
      )}
      {found.length === 0 && <p className="sheet-note">Nothing like that in this column.</p>}
    </fieldset>
  );
}

function RangeFields<Row>({ column, view, onViewChange }: FilterFieldsProps<Row>) {
  const { key } = column;
  const own = view.filters.find((filter) => filter.key === key);
  const had = own?.op === 'between' ? own.value : null;
  const [from, setFrom] = useState(had?.fromText ?? '');
  const [to, setTo] = useState(had?.toText ?? '');
  const [problem, setProblem] = useState<{ field: 'from' | 'to'; message: string } | null>(null);
  const messageId = useId();
  const apply = (event: FormEvent) => {
    event.preventDefault();
    const outcome = readBounds(column, from, to);
    if ('message' in outcome) return setProblem(outcome);
    setProblem(null);
    onViewChange(setFilter(view, key, outcome.bounds && { key, op: 'between', value: outcome.bounds }));
  };
  const field = (side: 'from' | 'to', label: string, value: string, set: (text: string) => void) => (
    <label className="sheet-bound">
      {label}
      <input
        className="sheet-field"
        inputMode={column.kind === 'date' || column.kind === 'text' ? 'text' : 'decimal'}
        autoComplete="off"
        value={value}
        aria-invalid={problem?.field === side}
        aria-describedby={messageId}
        onChange={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
  return (
    <form className="sheet-filter" onSubmit={apply}>
      <div className="sheet-panel-line">
        {field('from', 'From', from, setFrom)}
        {field('to', 'To', to, setTo)}
        <button type="submit">Show</button>
      </div>
      <p id={messageId} className={problem === null ? 'sheet-note' : 'sheet-field-problem'} role="status">
        {problem?.message ?? `Each is ${acceptedBound(column)}; either may stay empty.`}
      </p>
      <BlankTick column={column} view={view} onViewChange={onViewChange} />
    </form>
  );
}

function WordsField<Row>({ column, view, onViewChange }: FilterFieldsProps<Row>) {
  const { key, title } = column;
  const own = view.filters.find((filter) => filter.key === key);
  return (
    <div className="sheet-filter">
      <label className="sheet-bound">
        Words in {title.toLowerCase()}
        <input
          type="search"
          className="sheet-field"
          value={own?.op === 'words' ? own.value : ''}
          onChange={(event) => {
            const value = event.currentTarget.value;
            onViewChange(setFilter(view, key, value.trim() === '' ? null : { key, op: 'words', value }));
          }}
        />
      </label>
      <BlankTick column={column} view={view} onViewChange={onViewChange} />
    </div>
  );
}

/** Finding what is still missing matters as much as finding what is there. */
function BlankTick<Row>({ column, view, onViewChange }: Omit<FilterFieldsProps<Row>, 'vectors'>) {
  const { key } = column;
  const own = view.filters.find((filter) => filter.key === key);
  const checked = own?.op === 'blank' && own.value;
  return (
    <label className="sheet-choice">
      <input
        type="checkbox"
        checked={checked}
        onChange={() => onViewChange(setFilter(view, key, checked ? null : { key, op: 'blank', value: true }))}
      />
      <span className="sheet-choice-text">Only where this is empty</span>
    </label>
  );
}
