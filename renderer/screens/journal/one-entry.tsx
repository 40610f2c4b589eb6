import { Button } from '@mantine/core';
import type { JournalRow } from '../../../core/contract/journal.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link, navigate } from '../../app/route.tsx';
import { DateText, Money, Quantity } from '../../parts/figures.tsx';
import { instantText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { EntryWords } from './journal-table.tsx';

export interface OneEntryProps {
  readonly seq: number;
  readonly onTakeBack?: (row: JournalRow) => void;
}

/** One entry with all that it says, for whoever came by a link. */
export function OneEntry({ seq, onTakeBack }: OneEntryProps) {
  const read = useRead(['journal', null, null, 'entry', seq], () => api.journal.list({ before: seq + 1, limit: 1 }));
  if (read.state === 'loading') return <Loading label="Reading the entry" />;
  if (read.state === 'refused') return <RefusalNote refusal={read.refusal} onRetry={read.retry} />;
  const [row] = read.value.rows;
  if (row?.seq !== seq) {
    return (
      <Empty action={{ label: 'Show all entries', onClick: () => navigate('/journal') }}>
        There is no entry {seq} in this workbook.
      </Empty>
    );
  }
  return <Shown row={row} {...(onTakeBack === undefined ? {} : { onTakeBack })} />;
}

function Shown({ row, onTakeBack }: { readonly row: JournalRow; readonly onTakeBack?: (row: JournalRow) => void }) {
  const locale = useLocale();
  const { quantityMilli, amountMinor, part, order } = row;
  return (
    <section className="journal-one" aria-label={`Entry ${row.seq}`}>
      <h2>Entry {row.seq}</h2>
      <p>
        <EntryWords row={row} />
      </p>
      <dl>
        <Term name="Day">
          <DateText date={row.on} />
        </Term>
        <Term name="Written down">
          {instantText(row.recordedAt, locale)}
          {row.author === '' ? '' : ` by ${row.author}`}
        </Term>
        <Term name="Act">
          <Link to="/journal" params={{ act: row.act }}>
            {row.actLabel}
          </Link>
        </Term>
        {part !== null && (
          <Term name="Part">
            <Link to="/parts" params={{ part }}>
              {row.description}
            </Link>
          </Term>
        )}
        {order !== null && (
          <Term name="Order">
            <Link to="/orders" params={{ order }}>
              {row.orderNumber === '' ? `Order ${order}` : row.orderNumber}
            </Link>
            {row.vendorName === '' ? '' : `, ${row.vendorName}`}
          </Term>
        )}
        {part !== null && quantityMilli !== null && quantityMilli !== 0 && (
          <Term name="Quantity">
            <Quantity quantityMilli={quantityMilli} unit={row.unit === '' ? 'each' : row.unit} />
          </Term>
        )}
        {amountMinor !== null && amountMinor !== 0 && (
          <Term name="Amount">
            <Money amountMinor={amountMinor} currency={row.currency} />
          </Term>
        )}
        {row.note !== '' && <Term name="Note">{row.note}</Term>}
      </dl>
      <div className="journal-one-buttons not-printed">
        {onTakeBack !== undefined && row.reversedBy === null && row.reverses === null && (
          <Button onClick={() => onTakeBack(row)}>Take back…</Button>
        )}
        <Button variant="subtle" onClick={() => navigate('/journal')}>
          Show all entries
        </Button>
      </div>
    </section>
  );
}

function Term({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
