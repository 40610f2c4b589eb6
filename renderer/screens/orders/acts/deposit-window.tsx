import { useState } from 'react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice, MoneyField, TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { moneyText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { ActDay } from './act-day.tsx';

const steps = [
  { value: 'paid', label: 'Deposit paid' },
  { value: 'old unit sent', label: 'Old unit sent in' },
  { value: 'refunded', label: 'Deposit came back' },
  { value: 'kept by vendor', label: 'Vendor keeps the deposit' },
] as const;
type Step = (typeof steps)[number]['value'];

export interface DepositWindowProps {
  readonly detail: OrderDetail;
  readonly onClose: () => void;
}

/** The core deposit on a line: paid, the old unit sent in, then the money back or kept. */
export function DepositWindow({ detail, onClose }: DepositWindowProps) {
  const { today } = useWorkspace();
  const locale = useLocale();
  const first = detail.lines.find(({ depositsMinor }) => depositsMinor > 0) ?? detail.lines[0];
  const [chosen, setChosen] = useState<string | null>(first === undefined ? null : `${first.id}`);
  const line = detail.lines.find(({ id }) => `${id}` === chosen);
  const out = line?.depositsMinor ?? 0;
  const [what, setWhat] = useState<Step | null>(out > 0 ? 'old unit sent' : 'paid');
  const [amountMinor, setAmountMinor] = useState<number | null>(out > 0 ? out : null);
  const [dueOn, setDueOn] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const moves = what !== 'old unit sent';
  const { busy, refusal, run } = useAct((key, input: { on: string; line: number; what: Step }) =>
    api.orders.deposit({
      key,
      order: detail.row.id,
      ...input,
      amountMinor: moves ? (amountMinor ?? 0) : 0,
      dueOn: what === 'paid' ? dueOn : null,
      reason: reason.trim(),
    }),
  );
  const send = async () => {
    if (line === undefined || what === null) return;
    if ((await run({ on: on ?? today, line: line.id, what })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Core deposit"
      submitLabel="Enter it"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <Choice
        name="line"
        label="For"
        value={chosen}
        onChange={setChosen}
        options={detail.lines.map(({ id, description }) => ({ value: `${id}`, label: description }))}
        required
      />
      <p>{out > 0 ? `${moneyText(out, locale)} is out on it.` : 'No deposit is out on it.'}</p>
      <Choice<Step> name="what" label="What happened" value={what} onChange={setWhat} options={steps} required />
      {moves && <MoneyField name="amountMinor" label="Amount" value={amountMinor} onChange={setAmountMinor} required />}
      {what === 'paid' && (
        <DateField
          name="dueOn"
          label="Old unit due by"
          description="Empty: no day was named."
          value={dueOn}
          onChange={setDueOn}
          today={today}
        />
      )}
      {what === 'kept by vendor' && (
        <TextField name="reason" label="Reason" value={reason} onChange={setReason} longest={400} />
      )}
      <ActDay value={on} onChange={setOn} />
    </FormWindow>
  );
}
