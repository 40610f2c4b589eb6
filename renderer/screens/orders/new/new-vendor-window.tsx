import { useState } from 'react';
import { currencyCodes } from '../../../../core/money/currency.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { Choice, TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { useLocale } from '../../../parts/locale.tsx';
import type { ChosenVendor } from './vendor-fields.tsx';

export interface NewVendorWindowProps {
  readonly onClose: () => void;
  readonly onMade: (vendor: ChosenVendor) => void;
}

/** A vendor in three fields; the rest can be filled in with the lists. */
export function NewVendorWindow({ onClose, onMade }: NewVendorWindowProps) {
  const { today } = useWorkspace();
  const base = useLocale().currency;
  const [name, setName] = useState('');
  const [site, setSite] = useState('');
  const [currency, setCurrency] = useState<string | null>(base);
  const { busy, refusal, run } = useAct((key, values: Record<string, unknown>) =>
    api.records.save({ key, on: today, kind: 'vendor', values }),
  );
  const send = async () => {
    const made = (await run({ name: name.trim(), site: site.trim(), currency }))?.made[0];
    if (made !== undefined) onMade({ id: made, currency });
  };
  return (
    <FormWindow
      opened
      title="New vendor"
      submitLabel="Add the vendor"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <TextField name="values.name" label="Name" value={name} onChange={setName} longest={120} required autoFocus />
      <TextField name="values.site" label="Web page or address" value={site} onChange={setSite} longest={400} />
      <Choice
        name="values.currency"
        label="Sells in"
        value={currency}
        onChange={setCurrency}
        options={currencyCodes.map((code) => ({ value: code, label: code }))}
        required
      />
    </FormWindow>
  );
}
