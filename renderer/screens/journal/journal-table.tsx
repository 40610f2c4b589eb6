import { Button } from '@mantine/core';
import type { JournalRow } from '../../../core/contract/journal.ts';
import { Link } from '../../app/route.tsx';
import { DateText, Money, Quantity } from '../../parts/figures.tsx';
import { instantText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { useStacked } from '../../parts/stacked.ts';

export interface JournalTableProps {
  readonly caption: string;
  readonly rows: readonly JournalRow[];
  /** Left out while nothing may be taken back. */
  readonly onTakeBack?: (row: JournalRow) => void;
}

/** Entries, newest first: what happened on which day, who wrote it down when, and with which act. */
export function JournalTable({ caption, rows, onTakeBack }: JournalTableProps) {
  return (
    <table className="journal-table" data-stacked={useStacked() || undefined}>
      <caption className="only-heard">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">Entry</th>
          <th scope="col" data-figures>
            Quantity
          </th>
          <th scope="col" data-figures>
            Amount
          </th>
          <th scope="col">Written down</th>
          <th scope="col" className="not-printed">
            <span className="only-heard">Take back</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <EntryLine key={row.seq} row={row} {...(onTakeBack === undefined ? {} : { onTakeBack })} />
        ))}
      </tbody>
    </table>
  );
}

interface EntryLineProps {
  readonly row: JournalRow;
  readonly onTakeBack?: (row: JournalRow) => void;
}

function EntryLine({ row, onTakeBack }: EntryLineProps) {
  const locale = useLocale();
  const { quantityMilli, amountMinor, reversedBy, reverses } = row;
  return (
    <tr data-taken-back={reversedBy !== null || undefined}>
      <td data-label="Day">
        <DateText date={row.on} />
      </td>
      <th scope="row">
        <EntryWords row={row} />
        <span className="journal-more">
          <Link to="/journal" params={{ entry: row.seq }} aria-label={`Entry ${row.seq}`}>
            {row.seq}
          </Link>
          <Link to="/journal" params={{ act: row.act }}>
            {row.actLabel}
          </Link>
          {row.part !== null && (
            <Link to="/parts" params={{ part: row.part }}>
              Part<span className="only-heard"> {row.description}</span>
            </Link>
          )}
          {row.order !== null && (
            <Link to="/orders" params={{ order: row.order }}>
              Order {row.orderNumber}
              {row.vendorName === '' ? '' : `, ${row.vendorName}`}
            </Link>
          )}
        </span>
        {row.note !== '' && <span className="journal-note">{row.note}</span>}
      </th>
      <td data-figures data-label="Quantity">
        {row.part !== null && quantityMilli !== null && quantityMilli !== 0 && (
          <Quantity quantityMilli={quantityMilli} unit={row.unit === '' ? 'each' : row.unit} />
        )}
      </td>
      <td data-figures data-label="Amount">
        {amountMinor !== null && amountMinor !== 0 && <Money amountMinor={amountMinor} currency={row.currency} />}
      </td>
      <td className="journal-soft" data-label="Written down">
        {instantText(row.recordedAt, locale)}
        {row.author !== '' && <span className="journal-author">{row.author}</span>}
      </td>
      <td className="journal-buttons not-printed">
        {onTakeBack !== undefined && reversedBy === null && reverses === null && (
          <Button size="compact" variant="subtle" onClick={() => onTakeBack(row)}>
            Take back… <span className="only-heard">entry {row.seq}</span>
          </Button>
        )}
      </td>
    </tr>
  );
}

/** The entry in words; one that was taken back is struck through and says by which. */
export function EntryWords({ row }: { readonly row: JournalRow }) {
  if (row.reversedBy === null) {
    return (
      <span className="journal-text">
        {row.text}
        {row.reverses !== null && (
          <>
            {' '}
            (takes back{' '}
            <Link to="/journal" params={{ entry: row.reverses }}>
              entry {row.reverses}
            </Link>
            )
          </>
        )}
      </span>
    );
  }
  return (
    <span className="journal-text">
      <s>{row.text}</s>{' '}
      <span className="journal-taken">
        taken back by{' '}
        <Link to="/journal" params={{ entry: row.reversedBy }}>
          {row.reversedBy}
        </Link>
      </span>
    </span>
  );
}
