import { useState } from 'react';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { DateText, Money } from '../../../parts/figures.tsx';
import { counted } from '../../../parts/formats.ts';
import { Loading } from '../../../parts/notes.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import type { Reading } from '../reading.ts';
import { ActEntries, TakeBack } from './act-entries.tsx';
import { actsOf, type OrderAct } from './acts-of.ts';
import { ReverseWindow, type Reversible } from './reverse-window.tsx';

const mostRows = 1000;

export interface OrderJournalProps {
  readonly order: number;
  readonly reading: Reading;
}

/** What was done with the order, the newest first; each act, or one entry of it, can be taken back. */
export function OrderJournal({ order, reading }: OrderJournalProps) {
  const { build, asOf } = reading;
  const [reversing, setReversing] = useState<Reversible | null>(null);
  const journal = useRead(['journal', build, asOf, 'order', order], () =>
    api.journal.list({ order, limit: mostRows, ...(asOf === undefined ? {} : { to: asOf }) }),
  );
  if (journal.state === 'loading') return <Loading label="Reading the order's entries" />;
  if (journal.state === 'refused') return <RefusalNote refusal={journal.refusal} onRetry={journal.retry} />;
  const { rows, total } = journal.value;
  return (
    <section aria-label="Journal of the order">
      <SimpleTable
        caption={`Journal of the order (${counted(total, 'entry', 'entries')})`}
        columns={columnsOf(asOf === undefined ? setReversing : null)}
        rows={actsOf(rows)}
        rowKey={({ act }) => `${act}`}
      />
      {total > rows.length && <p>The newest {rows.length} entries are shown; the journal has them all.</p>}
      {reversing !== null && <ReverseWindow what={reversing} onClose={() => setReversing(null)} />}
    </section>
  );
}

function columnsOf(reverse: ((what: Reversible) => void) | null): readonly Column<OrderAct>[] {
  const columns: Column<OrderAct>[] = [
    {
      id: 'on',
      title: 'Day',
      cell: ({ on }) => <DateText date={on} />,
      sortBy: ({ on, act }) => `${on} ${String(act).padStart(12, '0')}`,
    },
    {
      id: 'act',
      title: 'What was done',
      rowHeader: true,
      cell: (act) => <ActEntries act={act} reverse={reverse} />,
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
    cell: (act) => (
      <TakeBack
        reversed={act.reversed}
        reverses={act.reverses}
        words={act.label}
        onTakeBack={() => reverse({ wholeAct: act.act, text: act.label })}
      />
    ),
  });
  return columns;
}
