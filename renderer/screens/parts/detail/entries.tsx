import { Button } from '@mantine/core';
import { useState } from 'react';
import type { JournalRow } from '../../../../core/contract/journal.ts';
import { api } from '../../../app/client.ts';
import { useAct, useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { useReading, useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { DateText } from '../../../parts/figures.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { Loading } from '../../../parts/notes.tsx';
import { RefusalNote } from '../../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import type { PartSectionProps } from './part-in-full.tsx';

const most = 100;
type Input = Omit<Parameters<typeof api.journal.reverse>[0], 'key'>;
const send = (key: string, input: Input) => api.journal.reverse({ key, ...input });

/** The journal of this part, newest first; an entry that was wrong is taken back by one that says so. */
export function Entries({ detail, closed }: PartSectionProps) {
  const reading = useReading();
  const part = detail.row.id;
  const [reversing, setReversing] = useState<JournalRow | null>(null);
  const read = useRead(
    ['journal.list', reading, 'part', part],
    reading === null
      ? null
      : () =>
          api.journal.list({
            build: reading.build,
            part,
            limit: most,
            ...(reading.asOf === undefined ? {} : { to: reading.asOf }),
          }),
  );
  if (read.state === 'loading') return <Loading label="Reading the entries" />;
  if (read.state === 'refused') return <RefusalNote refusal={read.refusal} onRetry={read.retry} />;
  const { rows, total } = read.value;
  const columns: Column<JournalRow>[] = [
    { id: 'on', title: 'Day', cell: ({ on }) => <DateText date={on} /> },
    {
      id: 'text',
      title: 'Entry',
      rowHeader: true,
      cell: (entry) => (
        <>
          <Link to="/journal" params={{ entry: entry.seq }}>
            {entry.text}
          </Link>
          {entry.note !== '' && <span className="parts-under">{entry.note}</span>}
          {entry.reversedBy !== null && <span className="parts-under">Taken back later</span>}
        </>
      ),
    },
    {
      id: 'reverse',
      title: 'Take back',
      cell: (entry) =>
        closed === null && entry.reversedBy === null && entry.reverses === null ? (
          <Button size="compact" onClick={() => setReversing(entry)}>
            Take back…<span className="only-heard"> {entry.text}</span>
          </Button>
        ) : null,
    },
  ];
  return (
    <section aria-label="Entries">
      <h3>Entries</h3>
      <SimpleTable caption="Entries" captionHidden columns={columns} rows={rows} rowKey={({ seq }) => String(seq)} />
      {total > rows.length && (
        <p>
          The newest {rows.length} of {total}.{' '}
          <Link to="/journal" params={{ part }}>
            All in the journal
          </Link>
        </p>
      )}
      {reversing !== null && <ReverseWindow entry={reversing} onClose={() => setReversing(null)} />}
    </section>
  );
}

function ReverseWindow({ entry, onClose }: { readonly entry: JournalRow; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [reason, setReason] = useState('');
  const [on, setOn] = useState<string | null>(entry.on);
  const act = useAct(send);
  const submit = async () => {
    if ((await act.run({ entry: entry.seq, on: on ?? today, reason })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={`Take back: ${entry.text}`}
      submitLabel="Take the entry back"
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <p>An equal and opposite entry is made; both stay in the journal.</p>
      <TextField name="reason" label="Why" value={reason} onChange={setReason} longest={400} required autoFocus />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
