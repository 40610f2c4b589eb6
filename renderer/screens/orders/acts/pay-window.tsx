import { useState } from 'react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { MoneyField, TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { moneyText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { RateField } from '../rate-field.tsx';
import { ActDay } from './act-day.tsx';

export interface PayWindowProps {
  readonly detail: OrderDetail;
  readonly onClose: () => void;
}

/** A payment to the vendor, in the order's currency; what is left to pay is suggested where it is known exactly. */
export function PayWindow({ detail, onClose }: PayWindowProps) {
  const { row } = detail;
  const { today } = useWorkspace();
  const locale = useLocale();
  const foreign = row.currency !== locale.currency;
  const [on, setOn] = useState<string | null>(today);
  const [amountMinor, setAmountMinor] = useState<number | null>(suggestedMinor(detail));
  const [rate, setRate] = useState<string | null>(null);
  const [method, setMethod] = useState('');
  const [note, setNote] = useState('');
  const { busy, refusal, run } = useAct((key, input: { on: string; amountMinor: number }) =>
    api.orders.pay({
      key,
      order: row.id,
      ...input,
      ...(rate === null ? {} : { rate }),
      method: method.trim(),
      note: note.trim(),
    }),
  );
  const send = async () => {
    if ((await run({ on: on ?? today, amountMinor: amountMinor ?? 0 })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Payment"
      submitLabel={amountMinor === null ? 'Enter the payment' : `Pay ${moneyText(amountMinor, locale, row.currency)}`}
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <p>
        {moneyText(row.stillToPayMinor + row.claimsMinor, locale)} is still to pay to {row.vendorName}.
      </p>
      <MoneyField
        name="amountMinor"
        label="Amount"
        currency={row.currency}
        value={amountMinor}
        onChange={setAmountMinor}
        required
        autoFocus
      />
      {foreign && <RateField currency={row.currency} value={rate} onChange={setRate} />}
      <ActDay value={on} onChange={setOn} label="Paid on" />
      <div className="form-row">
        <TextField
          name="method"
          label="Paid by"
          placeholder="card, transfer, cash"
          value={method}
          onChange={setMethod}
          longest={80}
        />
        <TextField name="note" label="Note" value={note} onChange={setNote} longest={2000} />
      </div>
    </FormWindow>
  );
}

/** All that is left, in the order's currency; null for a foreign order paid in part, where only the bill says it. */
export function suggestedMinor({ row, payments }: OrderDetail): number | null {
  const leftBase = row.stillToPayMinor + row.claimsMinor;
  if (leftBase <= 0) return null;
  if (row.totalMinor === row.totalBaseMinor) return leftBase;
  const paid = payments.filter(({ reversed }) => !reversed);
  return paid.length === 0 && leftBase === row.totalBaseMinor ? row.totalMinor : null;
}
