import { Button } from '@mantine/core';
import { useState } from 'react';
import type { JournalRow } from '../../../../core/contract/journal.ts';
import { api } from '../../../app/client.ts';
import { useAct, useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { DateText, Money } from '../../../parts/figures.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { Loading } from '../../../parts/notes.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import { ActDay } from '../acts/act-day.tsx';
import type { Reading } from '../reading.ts';

const mostRows = 200;

export interface OrderJournalProps {
  readonly order: number;
  readonly reading: Reading;
}

/** Every entry of the order, the newest first, each with the way to take it back. */
export function OrderJournal({ order, reading }: OrderJournalProps) {
  const { build, asOf } = reading;
  const [reversing, setReversing] = useState<JournalRow | null>(null);
  const journal = useRead(['journal', build, asOf, 'order', order], () =>
    api.journal.list({ order, limit: mostRows, ...(asOf === undefined ? {} : { to: asOf }) }),
  );
  if (journal.state === 'loading') return <Loading label="Reading the order's entries" />;
  if (journal.state === 'refused') return <RefusalNote refusal={journal.refusal} onRetry={journal.retry} />;
  const { rows, total } = journal.value;
  return (
    <section aria-label="Entries">
      <SimpleTable
        caption={`Entries of the order (${total})`}
        columns={columnsOf(asOf === undefined ? setReversing : null)}
        rows={rows}
        rowKey={({ seq }) => `${seq}`}
      />
      {total > rows.length && <p>The newest {rows.length} are listed; the journal has them all.</p>}
      {reversing !== null && <ReverseWindow entry={reversing} onClose={() => setReversing(null)} />}
    </section>
  );
}

function columnsOf(reverse: ((row: JournalRow) => void) | null): readonly Column<JournalRow>[] {
  const columns: Column<JournalRow>[] = [
    {
      id: 'on',
      title: 'Day',
      cell: ({ on }) => <DateText date={on} />,
      sortBy: ({ on, seq }) => `${on} ${String(seq).padStart(12, '0')}`,
    },
    {
      id: 'text',
      title: 'Entry',
      rowHeader: true,
      cell: ({ seq, text, note }) => (
        <>
          <Link to="/journal" params={{ entry: seq }}>
            {text}
          </Link>
          {note !== '' && <span className="quiet under">{note}</span>}
        </>
      ),
    },
    {
      id: 'amount',
      title: 'Amount',
      figures: true,
      cell: ({ amountMinor, currency }) =>
        amountMinor === null ? '' : <Money amountMinor={amountMinor} currency={currency} />,
    },
  ];
  if (reverse === null) return columns;
  columns.push({
    id: 'reverse',
    title: 'Take back',
    cell: (row) => {
      if (row.reversedBy !== null) return <span className="quiet">taken back</span>;
      if (row.reverses !== null) return <span className="quiet">takes another back</span>;
      return (
        <Button size="compact" variant="subtle" aria-label={`Take back: ${row.text}`} onClick={() => reverse(row)}>
          Take back
        </Button>
      );
    },
  });
  return columns;
}

function ReverseWindow({ entry, onClose }: { readonly entry: JournalRow; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [reason, setReason] = useState('');
  const { busy, refusal, run } = useAct((key, day: string) =>
    api.journal.reverse({ key, on: day, entry: entry.seq, reason: reason.trim() }),
  );
  const send = async () => {
    if ((await run(on ?? today)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Take an entry back"
      submitLabel="Take it back"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
      blocks
    >
      <p>{entry.text}</p>
      <p className="quiet">An equal and opposite entry is made; the first one stays in the journal.</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} autoFocus />
      <ActDay value={on} onChange={setOn} label="Taken back on" />
    </FormWindow>
  );
}
