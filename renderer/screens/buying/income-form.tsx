import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, MoneyField, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';

export interface IncomeFormProps {
  readonly build: number;
  /** The income that is changed; null for a new one. */
  readonly row: RecordRow | null;
  readonly onClose: () => void;
}

const ways = [
  { value: 'month', label: 'Every month, on the day of the first' },
  { value: 'once', label: 'Once' },
] as const;

/** One income: what comes in, and when. */
export function IncomeForm({ build, row, onClose }: IncomeFormProps) {
  const { today } = useWorkspace();
  const was = row?.values ?? {};
  const [name, setName] = useState(String(was['name'] ?? ''));
  const [amountMinor, setAmount] = useState<number | null>((was['amountMinor'] as number | undefined) ?? null);
  const [every, setEvery] = useState<'month' | 'once'>(was['every'] === 'once' ? 'once' : 'month');
  const [from, setFrom] = useState<string | null>((was['from'] as string | undefined) ?? today);
  const [until, setUntil] = useState<string | null>((was['until'] as string | null | undefined) ?? null);
  const [note, setNote] = useState(String(was['note'] ?? ''));
  const act = useAct((key, values: Record<string, unknown>) =>
    api.records.save({
      key,
      on: today,
      kind: 'income',
      ...(row === null ? { build } : { id: row.id, revision: row.revision }),
      values,
    }),
  );
  const submit = async () => {
    if (amountMinor === null || from === null) return;
    const values = { name, amountMinor, every, from, until: every === 'once' ? null : until, note };
    if ((await act.run(values)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={row === null ? 'New income' : 'Change an income'}
      submitLabel={row === null ? 'Write down the income' : 'Keep the income so'}
      onSubmit={() => void submit()}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
    >
      <TextField name="name" label="What it is" value={name} onChange={setName} longest={80} required autoFocus />
      <MoneyField name="amountMinor" label="Amount" value={amountMinor} onChange={setAmount} required />
      <Choice
        name="every"
        label="Comes"
        value={every}
        onChange={(value) => setEvery(value === 'once' ? 'once' : 'month')}
        options={[...ways]}
        required
      />
      <div className="form-row">
        <DateField
          name="from"
          label={every === 'once' ? 'On' : 'First on'}
          value={from}
          onChange={setFrom}
          today={today}
          required
        />
        {every === 'month' && (
          <DateField name="until" label="Last day it can come" value={until} onChange={setUntil} today={today} />
        )}
      </div>
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={400} />
    </FormWindow>
  );
}
