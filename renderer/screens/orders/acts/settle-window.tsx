import { useState } from 'react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { Choice, MoneyField, QuantityField, TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { moneyText, quantityText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { ActDay } from './act-day.tsx';

type Line = OrderDetail['lines'][number];
type How = 'money back' | 'replacement';

/** Lines on which the vendor owes money or a replacement. */
export const toSettle = (detail: OrderDetail): readonly Line[] =>
  detail.lines.filter((line) => line.claimsMinor > 0 || line.returnedUnsettledMilli > 0);

export interface SettleWindowProps {
  readonly detail: OrderDetail;
  readonly onClose: () => void;
}

/** Settles what was sent back or cancelled: by money, or by a replacement that then is to come on the same line. */
export function SettleWindow({ detail, onClose }: SettleWindowProps) {
  const lines = toSettle(detail);
  const { today } = useWorkspace();
  const locale = useLocale();
  const [chosen, setChosen] = useState<string | null>(lines[0] === undefined ? null : `${lines[0].id}`);
  const line = lines.find(({ id }) => `${id}` === chosen);
  const [how, setHow] = useState<How | null>('money back');
  const [on, setOn] = useState<string | null>(today);
  const [amountMinor, setAmountMinor] = useState<number | null>(lines[0]?.claimsMinor ?? null);
  const [feeMinor, setFeeMinor] = useState<number | null>(0);
  const [settlesMilli, setSettlesMilli] = useState<number | null>(lines[0]?.returnedUnsettledMilli ?? 0);
  const [note, setNote] = useState('');
  const { busy, refusal, run } = useAct((key, input: { on: string; line: Line }) => {
    const about = { key, on: input.on, note: note.trim() };
    if (how === 'replacement') {
      const items = [{ part: input.line.part, quantityMilli: settlesMilli ?? input.line.returnedUnsettledMilli }];
      return api.parts.act({ ...about, build: detail.row.build, act: 'settle by exchange', items });
    }
    return api.orders.refund({
      ...about,
      order: detail.row.id,
      line: input.line.id,
      amountMinor: amountMinor ?? 0,
      feeMinor: feeMinor ?? 0,
      settlesMilli: settlesMilli ?? 0,
    });
  });
  const choose = (id: string | null) => {
    const next = lines.find((item) => `${item.id}` === id);
    setChosen(id);
    setAmountMinor(next?.claimsMinor ?? null);
    setSettlesMilli(next?.returnedUnsettledMilli ?? 0);
  };
  const send = async () => {
    if (line !== undefined && (await run({ on: on ?? today, line })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Refund or replacement"
      submitLabel={how === 'replacement' ? 'Note the replacement' : 'Enter the refund'}
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <Choice
        name="line"
        label="For"
        value={chosen}
        onChange={choose}
        options={lines.map(({ id, description }) => ({ value: `${id}`, label: description }))}
        required
      />
      {line !== undefined && (
        <p>
          {moneyText(line.claimsMinor, locale)} is owed for it
          {line.returnedUnsettledMilli > 0 &&
            `; ${quantityText(line.returnedUnsettledMilli, locale, line.unit)} went back unsettled`}
          .
        </p>
      )}
      {line !== undefined && line.returnedUnsettledMilli > 0 && (
        <Choice<How>
          name="how"
          label="Settled by"
          value={how}
          onChange={setHow}
          options={[
            { value: 'money back', label: 'Money back' },
            { value: 'replacement', label: 'A replacement, which is then to come' },
          ]}
          required
        />
      )}
      {how !== 'replacement' && (
        <div className="form-row">
          <MoneyField name="amountMinor" label="Came back" value={amountMinor} onChange={setAmountMinor} required />
          <MoneyField
            name="feeMinor"
            label="The vendor keeps"
            description="A restocking fee, for instance; it stays a cost."
            value={feeMinor}
            onChange={setFeeMinor}
          />
        </div>
      )}
      {line !== undefined && line.returnedUnsettledMilli > 0 && (
        <QuantityField
          name="settlesMilli"
          label="Settles how many"
          unit={line.unit}
          value={settlesMilli}
          onChange={setSettlesMilli}
          zero
        />
      )}
      <ActDay value={on} onChange={setOn} />
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={2000} />
    </FormWindow>
  );
}
