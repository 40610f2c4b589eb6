import { Button } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { currencyCodes } from '../../../core/money/currency.ts';
import { Refusal } from '../../../core/refusal.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { DateText } from '../../parts/figures.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Loading } from '../../parts/notes.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** A rate as the workbook keeps it: plain decimal text. */
function readRate(typed: string): string {
  const plain = typed.trim().replace(',', '.');
  if (/^\d{1,9}(\.\d{1,10})?$/.test(plain) && /[1-9]/.test(plain)) return plain;
  throw new Refusal('bad-input', `The rate “${typed.trim()}” can't be taken. Nothing was changed.`, {
    field: 'rate',
    accepted: 'a number above 0 such as 1.0842, without a mark between thousands',
  });
}

/** What one unit of other currencies was worth, by day. */
export function RatesSection({ base, acts }: { readonly base: string; readonly acts: boolean }) {
  const { today } = useWorkspace();
  const rates = useRead(['records', null, 'rate'], () => api.records.list({ kind: 'rate' }));
  const [adding, setAdding] = useState(false);
  const retire = useAct((key, id: number) => api.records.retire({ key, on: today, kind: 'rate', id, reason: '' }));
  const columns: readonly Column<RecordRow>[] = [
    {
      id: 'currency',
      title: 'One unit of',
      rowHeader: true,
      cell: ({ values }) => text(values['currency']),
      sortBy: ({ values }) => text(values['currency']),
    },
    {
      id: 'on',
      title: 'Day',
      cell: ({ values }) => <DateText date={text(values['on'])} />,
      sortBy: ({ values }) => text(values['on']),
    },
    { id: 'rate', title: `Is worth, in ${base}`, figures: true, cell: ({ values }) => text(values['rate']) },
    { id: 'source', title: 'Read where', cell: ({ values }) => text(values['source']) },
    {
      id: 'retire',
      title: 'Wrong',
      cell: ({ id, values }) => (
        <Button size="compact" variant="subtle" disabled={!acts || retire.busy} onClick={() => void retire.run(id)}>
          Put away{' '}
          <span className="only-heard">
            the rate of {text(values['currency'])} on {text(values['on'])}
          </span>
        </Button>
      ),
    },
  ];
  return (
    <div className="settings-stack">
      <p>
        Orders in another currency are counted at the rate of their day, or the last one before it. A rate that an order
        has used already stays with that order.
      </p>
      {acts && (
        <div className="settings-buttons">
          <Button onClick={() => setAdding(true)}>Add a rate</Button>
        </div>
      )}
      {retire.refusal !== null && <RefusalNote refusal={retire.refusal} />}
      {rates.state === 'loading' && <Loading label="Reading the rates" />}
      {rates.state === 'refused' && <RefusalNote refusal={rates.refusal} onRetry={rates.retry} />}
      {rates.state === 'ready' &&
        (rates.value.length === 0 ? (
          <p>No rate is kept. One is needed before the first order in another currency.</p>
        ) : (
          <SimpleTable
            caption="Exchange rates"
            columns={columns}
            rows={rates.value}
            rowKey={({ id }) => String(id)}
            sortedBy={{ column: 'on', descending: true }}
          />
        ))}
      {adding && <RateForm base={base} onClose={() => setAdding(false)} />}
    </div>
  );
}

function RateForm({ base, onClose }: { readonly base: string; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [currency, setCurrency] = useState<string | null>(null);
  const [on, setOn] = useState<string | null>(today);
  const [rate, setRate] = useState<string | null>(null);
  const [source, setSource] = useState('');
  const act = useAct((key, values: Record<string, unknown>) =>
    api.records.save({ key, on: today, kind: 'rate', values }),
  );
  return (
    <FormWindow
      opened
      title="Add an exchange rate"
      submitLabel="Add the rate"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run({ currency, on, rate, source })) !== null && onClose()}
    >
      <Choice
        name="currency"
        label="Currency"
        value={currency}
        onChange={setCurrency}
        options={currencyCodes.filter((code) => code !== base).map((code) => ({ value: code, label: code }))}
        required
      />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
      <ReadField
        name="rate"
        label="One unit is worth"
        value={rate}
        onChange={setRate}
        read={readRate}
        write={(plain) => plain}
        suffix={base}
        numeric
        required
      />
      <TextField name="source" label="Read where" value={source} onChange={setSource} longest={120} />
    </FormWindow>
  );
}
