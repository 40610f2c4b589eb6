import type { Derivation } from '../../core/contract/journal.ts';
import { Link } from '../app/route.tsx';
import { DateText, Money, Quantity } from './figures.tsx';
import { Loading } from './notes.tsx';
import { RefusalNote, refusalWords } from './refusal-note.tsx';
import { type Column, SimpleTable } from './simple-table.tsx';
import { Window } from './window.tsx';
import './why-panel.css';

export interface WhyPanelProps {
  readonly opened: boolean;
  readonly onClose: () => void;
  /** Null while it is still on its way. */
  readonly derivation: Derivation | null;
  readonly error?: unknown;
}

type Term = Derivation['terms'][number];
type Entry = Derivation['entries'][number];

const termColumns: readonly Column<Term>[] = [
  { id: 'label', title: 'What', rowHeader: true, cell: ({ label }) => label },
  {
    id: 'figure',
    title: 'Figure',
    figures: true,
    cell: ({ amountMinor, quantityMilli, text }) => {
      if (amountMinor !== null) return <Money amountMinor={amountMinor} />;
      return quantityMilli !== null && text === '' ? <Quantity quantityMilli={quantityMilli} /> : text;
    },
  },
];

function EntryText({ entry }: { readonly entry: Entry }) {
  return (
    <>
      <Link to="/journal" params={{ entry: entry.seq }}>
        {entry.text}
      </Link>
      {entry.description !== '' && <span className="why-note">{entry.description}</span>}
      {entry.reversed && <span className="why-note">Taken back later</span>}
    </>
  );
}

/** Only the columns that some entry fills: a count has no money, a payment has no quantity. */
function entryColumns(entries: readonly Entry[]): readonly Column<Entry>[] {
  const columns: Column<Entry>[] = [
    { id: 'on', title: 'Date', cell: ({ on }) => <DateText date={on} />, sortBy: ({ on, seq }) => `${on} ${seq}` },
    { id: 'text', title: 'Entry', rowHeader: true, cell: (entry) => <EntryText entry={entry} /> },
  ];
  if (entries.some(({ quantityMilli }) => quantityMilli !== 0)) {
    columns.push({
      id: 'quantity',
      title: 'Quantity',
      figures: true,
      cell: ({ quantityMilli }) => (quantityMilli === 0 ? '' : <Quantity quantityMilli={quantityMilli} />),
      sortBy: ({ quantityMilli }) => quantityMilli,
    });
  }
  if (entries.some(({ amountMinor }) => amountMinor !== 0)) {
    columns.push({
      id: 'amount',
      title: 'Amount',
      figures: true,
      cell: ({ amountMinor }) => (amountMinor === 0 ? '' : <Money amountMinor={amountMinor} />),
      sortBy: ({ amountMinor }) => amountMinor,
    });
  }
  return columns;
}

function Result({ derivation }: { readonly derivation: Derivation }) {
  const { amountMinor, quantityMilli, text } = derivation;
  if (amountMinor !== null) return <Money amountMinor={amountMinor} />;
  if (quantityMilli !== null) return <Quantity quantityMilli={quantityMilli} />;
  return text;
}

function Inside({ derivation }: { readonly derivation: Derivation }) {
  const { amountMinor, quantityMilli, text, terms, entries, more, formula, source } = derivation;
  const hasFigure = amountMinor !== null || quantityMilli !== null;
  return (
    <div className="why">
      <p className="why-result">
        <Result derivation={derivation} />
      </p>
      {hasFigure && text !== '' && <p>{text}</p>}
      {formula !== '' && (
        <p>
          <strong>How:</strong> {formula}
        </p>
      )}
      {terms.length > 0 && (
        <SimpleTable caption="What goes in" columns={termColumns} rows={terms} rowKey={(_, index) => `${index}`} />
      )}
      {entries.length > 0 && (
        <SimpleTable
          caption="Entries behind it"
          columns={entryColumns(entries)}
          rows={entries}
          rowKey={({ seq }) => `${seq}`}
        />
      )}
      {more > 0 && <p>{more} earlier entries are left out here; the journal has them all.</p>}
      {terms.length === 0 && entries.length === 0 && <p>No entry stands behind this figure yet.</p>}
      {source !== '' && (
        <p>
          <strong>Source:</strong> {source}
        </p>
      )}
    </div>
  );
}

/** The drawer at the right that shows where a figure comes from: its entries or inputs, the formula, the source. */
export function WhyPanel({ opened, onClose, derivation, error = null }: WhyPanelProps) {
  return (
    <Window
      opened={opened}
      onClose={onClose}
      as="drawer"
      title={derivation === null ? 'Where this figure comes from' : derivation.title}
    >
      {error !== null && <RefusalNote refusal={refusalWords(error)} />}
      {error === null && derivation === null && <Loading label="Gathering the entries behind the figure" />}
      {derivation !== null && <Inside derivation={derivation} />}
    </Window>
  );
}
