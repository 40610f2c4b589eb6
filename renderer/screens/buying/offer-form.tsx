import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { currencyCodes } from '../../../core/money/currency.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, QuantityField, TextField, UnitPriceField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useLocale } from '../../parts/locale.tsx';
import type { Named } from './use-names.ts';

export interface OfferFormProps {
  readonly build: number;
  /** The offer that is changed; null for a new one. */
  readonly row: RecordRow | null;
  readonly parts: Named;
  readonly vendors: Named;
  readonly onClose: () => void;
}

const optionsOf = (names: Named) =>
  [...names].map(([id, label]) => ({ value: String(id), label })).sort((a, b) => a.label.localeCompare(b.label));
const asText = (id: unknown): string | null => (typeof id === 'number' ? String(id) : null);

/** One offer: which part, whose, from how many, at what price, until when. */
export function OfferForm({ build, row, parts, vendors, onClose }: OfferFormProps) {
  const { today } = useWorkspace();
  const base = useLocale().currency;
  const was = row?.values ?? {};
  const [part, setPart] = useState(asText(was['part']));
  const [vendor, setVendor] = useState(asText(was['vendor']));
  const [fromMilli, setFrom] = useState<number | null>((was['fromMilli'] as number | undefined) ?? 1000);
  const [eachE4, setEach] = useState<number | null>((was['eachE4'] as number | undefined) ?? null);
  const [currency, setCurrency] = useState<string | null>((was['currency'] as string | undefined) ?? base);
  const [until, setUntil] = useState<string | null>((was['until'] as string | null | undefined) ?? null);
  const [note, setNote] = useState(String(was['note'] ?? ''));
  const act = useAct((key, values: Record<string, unknown>) =>
    api.records.save({
      key,
      on: today,
      kind: 'offer',
      ...(row === null ? { build } : { id: row.id, revision: row.revision }),
      values,
    }),
  );
  const submit = async () => {
    if (part === null || vendor === null || fromMilli === null || eachE4 === null || currency === null) return;
    const values = { part: Number(part), vendor: Number(vendor), fromMilli, eachE4, currency, until, note };
    if ((await act.run(values)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={row === null ? 'New offer' : 'Change an offer'}
      submitLabel={row === null ? 'Write down the offer' : 'Keep the offer so'}
      onSubmit={() => void submit()}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <Choice name="part" label="Part" value={part} onChange={setPart} options={optionsOf(parts)} required autoFocus />
      <Choice name="vendor" label="Vendor" value={vendor} onChange={setVendor} options={optionsOf(vendors)} required />
      <div className="form-row">
        <QuantityField
          name="fromMilli"
          label="From so many"
          unit="each"
          value={fromMilli}
          onChange={setFrom}
          required
        />
        <UnitPriceField
          name="eachE4"
          label="Price each"
          currency={currency ?? base}
          value={eachE4}
          onChange={setEach}
          required
        />
      </div>
      <div className="form-row">
        <Choice
          name="currency"
          label="Currency"
          value={currency}
          onChange={setCurrency}
          options={currencyCodes.map((code) => ({ value: code, label: code }))}
          required
        />
        <DateField name="until" label="Holds until" value={until} onChange={setUntil} today={today} />
      </div>
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={400} />
    </FormWindow>
  );
}
