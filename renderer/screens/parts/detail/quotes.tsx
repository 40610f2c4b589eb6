import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { PartDetail } from '../../../../core/contract/parts.ts';
import { currencyCodes } from '../../../../core/money/currency.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice, TextField, UnitPriceField } from '../../../parts/fields.tsx';
import { DateText, UnitPrice } from '../../../parts/figures.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { useLocale } from '../../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import type { PartSectionProps } from './part-in-full.tsx';

type Quote = PartDetail['quotes'][number];
type Input = Omit<Parameters<typeof api.parts.quote>[0], 'key'>;
const send = (key: string, input: Input) => api.parts.quote({ key, ...input });

const columns: readonly Column<Quote>[] = [
  { id: 'on', title: 'Day', cell: ({ on }) => <DateText date={on} />, sortBy: ({ on }) => on },
  {
    id: 'vendor',
    title: 'Vendor',
    rowHeader: true,
    cell: ({ vendorName, note }) => (
      <>
        {vendorName || 'not said'}
        {note !== '' && <span className="parts-under">{note}</span>}
      </>
    ),
  },
  {
    id: 'each',
    title: 'Price each',
    figures: true,
    cell: ({ eachE4, currency }) => <UnitPrice priceE4={eachE4} currency={currency} />,
    sortBy: ({ eachE4 }) => eachE4,
  },
  {
    id: 'valid',
    title: 'Good until',
    cell: ({ validUntil, expired }) =>
      validUntil === null ? (
        ''
      ) : (
        <>
          <DateText date={validUntil} />
          {expired && <span className="parts-under">has passed</span>}
        </>
      ),
  },
];

/** What vendors asked for the part. */
export function Quotes({ detail, names, closed }: PartSectionProps) {
  const [adding, setAdding] = useState(false);
  const { row, quotes } = detail;
  return (
    <section aria-label="Quotes">
      <h3>Quotes</h3>
      {quotes.length === 0 ? (
        <p>No vendor’s price is noted yet.</p>
      ) : (
        <SimpleTable caption="Quotes" captionHidden columns={columns} rows={quotes} rowKey={({ seq }) => String(seq)} />
      )}
      {closed === null && !row.dropped && <Button onClick={() => setAdding(true)}>Add a quote…</Button>}
      {adding && <QuoteWindow detail={detail} names={names} onClose={() => setAdding(false)} />}
    </section>
  );
}

function QuoteWindow({ detail, names, onClose }: Omit<PartSectionProps, 'closed'> & { readonly onClose: () => void }) {
  const { row } = detail;
  const { today } = useWorkspace();
  const locale = useLocale();
  const [vendor, setVendor] = useState<string | null>(row.vendor === null ? null : String(row.vendor));
  const [currency, setCurrency] = useState<string>(locale.currency);
  const [eachE4, setEachE4] = useState<number | null>(null);
  const [validUntil, setValidUntil] = useState<string | null>(null);
  const [asEstimate, setAsEstimate] = useState(row.estimateEachE4 === null);
  const [note, setNote] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const act = useAct(send);
  const own = currency === locale.currency;
  const submit = async () => {
    if (eachE4 === null) return;
    const done = await act.run({
      part: row.id,
      vendor: vendor === null ? null : Number(vendor),
      eachE4,
      currency,
      validUntil,
      asEstimate: asEstimate && own,
      note,
      on: on ?? today,
    });
    if (done !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={`Quote for ${row.description}`}
      submitLabel="Add the quote"
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <UnitPriceField
        name="eachE4"
        label="Price each"
        value={eachE4}
        onChange={setEachE4}
        currency={currency}
        required
        autoFocus
      />
      <Choice
        name="currency"
        label="Currency"
        value={currency}
        onChange={(code) => setCurrency(code ?? locale.currency)}
        options={currencyCodes.map((code) => ({ value: code, label: code }))}
        required
      />
      <Choice name="vendor" label="Vendor" value={vendor} onChange={setVendor} options={names.vendor.options} />
      <DateField name="validUntil" label="Good until" value={validUntil} onChange={setValidUntil} today={today} />
      <Checkbox
        label={own ? 'Take it as the guess of the price' : `The guess of the price is in ${locale.currency}`}
        checked={asEstimate && own}
        disabled={!own}
        onChange={(event) => setAsEstimate(event.currentTarget.checked)}
      />
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={2000} long />
      <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
