import { Drawer } from '@mantine/core';
import { Link } from '../app/route.tsx';
import type { Derivation, DerivationRow } from './derivation.ts';
import { DateText, Money, Quantity } from './figures.tsx';
import { Caution, Loading } from './notes.tsx';
import { RefusalNote, refusalWords } from './refusal-note.tsx';
import { type Column, SimpleTable } from './simple-table.tsx';
import './why-panel.css';

export interface WhyPanelProps {
  readonly opened: boolean;
  readonly onClose: () => void;
  /** Null while it is still on its way. */
  readonly derivation: Derivation | null;
  readonly error?: unknown;
}

function figureOf(row: DerivationRow) {
  if (row.amountMinor === undefined) return row.value ?? '';
  return <Money amountMinor={row.amountMinor} {...(row.currency === undefined ? {} : { currency: row.currency })} />;
}

function quantityOf(row: DerivationRow) {
  if (row.quantityMilli === undefined) return '';
  return <Quantity quantityMilli={row.quantityMilli} {...(row.unit === undefined ? {} : { unit: row.unit })} />;
}

function labelOf(row: DerivationRow) {
  const label =
    row.entryId === undefined ? (
      row.label
    ) : (
      <Link to="/journal" params={{ entry: String(row.entryId) }}>
        {row.label}
      </Link>
    );
  return (
    <>
      {label}
      {row.note !== undefined && row.note !== '' && <span className="why-note">{row.note}</span>}
    </>
  );
}

/** Only the columns that some row fills: a fuel check has no dates, a count has no money. */
function columnsFor(rows: readonly DerivationRow[]): readonly Column<DerivationRow>[] {
  const all: readonly (Column<DerivationRow> & { readonly used: boolean })[] = [
    {
      id: 'date',
      title: 'Date',
      used: rows.some((row) => row.date !== undefined),
      cell: (row) => (row.date === undefined ? '' : <DateText date={row.date} />),
      sortBy: (row) => row.date ?? '',
    },
    { id: 'label', title: 'What', used: true, cell: labelOf, rowHeader: true },
    {
      id: 'quantity',
      title: 'Quantity',
      figures: true,
      used: rows.some((row) => row.quantityMilli !== undefined),
      cell: quantityOf,
      sortBy: (row) => row.quantityMilli ?? 0,
    },
    {
      id: 'amount',
      title: rows.some((row) => row.amountMinor !== undefined) ? 'Amount' : 'Value',
      figures: true,
      used: rows.some((row) => row.amountMinor !== undefined || row.value !== undefined),
      cell: figureOf,
      ...(rows.every((row) => row.value === undefined) ? { sortBy: (row: DerivationRow) => row.amountMinor ?? 0 } : {}),
    },
  ];
  return all.filter(({ used }) => used);
}

/** The drawer at the right that shows where a figure comes from: its entries or inputs, the formula, the source. */
export function WhyPanel({ opened, onClose, derivation, error = null }: WhyPanelProps) {
  return (
    <Drawer
      opened={opened}
      onClose={onClose}
      position="right"
      size="34rem"
      title={derivation === null ? 'Where this figure comes from' : derivation.title}
      className="why-panel"
    >
      {error !== null && <RefusalNote refusal={refusalWords(error)} />}
      {error === null && derivation === null && <Loading label="Gathering the entries behind the figure" />}
      {derivation !== null && (
        <div className="why">
          <p className="why-result figure">{derivation.result}</p>
          {derivation.caution !== undefined && <Caution>{derivation.caution}</Caution>}
          {derivation.rows.length === 0 ? (
            <p>No entry stands behind this figure: it is what it was at the beginning.</p>
          ) : (
            <SimpleTable
              caption={`What makes ${derivation.result}`}
              columns={columnsFor(derivation.rows)}
              rows={derivation.rows}
              rowKey={(_, index) => String(index)}
            />
          )}
          {derivation.formula !== undefined && (
            <p>
              <strong>How:</strong> {derivation.formula}
            </p>
          )}
          {derivation.source !== undefined && (
            <p>
              <strong>Source:</strong> {derivation.source}
            </p>
          )}
        </div>
      )}
    </Drawer>
  );
}
