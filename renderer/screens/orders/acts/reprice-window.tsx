import { useState } from 'react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { TextField, UnitPriceField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { useLocale } from '../../../parts/locale.tsx';
import { type ChargesDraft, chargesOf, draftOfCharges } from '../charges-draft.ts';
import { ChargesFields } from '../charges-fields.tsx';
import { RateField } from '../rate-field.tsx';
import { ActDay } from './act-day.tsx';

export interface RepriceWindowProps {
  readonly detail: OrderDetail;
  readonly onClose: () => void;
}

/** Corrects prices, charges, rate and number as the bill has them; what came and what is to come move by the difference. */
export function RepriceWindow({ detail, onClose }: RepriceWindowProps) {
  const { row, revision } = detail;
  const { today } = useWorkspace();
  const locale = useLocale();
  const [prices, setPrices] = useState<ReadonlyMap<number, number | null>>(
    () => new Map(detail.lines.map(({ id, eachE4 }) => [id, eachE4])),
  );
  const [charges, setCharges] = useState<ChargesDraft>(() => draftOfCharges(detail.charges));
  const [rate, setRate] = useState<string | null>(detail.rate);
  const [number, setNumber] = useState(row.number);
  const [note, setNote] = useState(detail.note);
  const [on, setOn] = useState<string | null>(today);
  const { busy, refusal, run } = useAct((key, day: string) =>
    api.orders.reprice({
      key,
      on: day,
      order: row.id,
      revision,
      charges: chargesOf(charges),
      ...(rate === null || rate === detail.rate ? {} : { rate }),
      lines: detail.lines.flatMap(({ id, eachE4 }) => {
        const now = prices.get(id) ?? eachE4;
        return now === eachE4 ? [] : [{ line: id, eachE4: now }];
      }),
      number: number.trim(),
      note: note.trim(),
    }),
  );
  const send = async () => {
    if ((await run(on ?? today)) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      as="drawer"
      title="Correct prices and charges"
      submitLabel="Correct the order"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <p>The cost of every line moves by the difference, on what came and on what is still to come.</p>
      {detail.lines.map(({ id, description }) => (
        <UnitPriceField
          key={id}
          name={`price ${id}`}
          label={`${description}, each`}
          currency={row.currency}
          value={prices.get(id) ?? null}
          onChange={(eachE4) => setPrices((before) => new Map(before).set(id, eachE4))}
          required
        />
      ))}
      <ChargesFields draft={charges} onChange={setCharges} currency={row.currency} />
      {row.currency !== locale.currency && <RateField currency={row.currency} value={rate} onChange={setRate} />}
      <TextField name="number" label="Order number" value={number} onChange={setNumber} longest={80} />
      <TextField name="note" label="Note on the order" value={note} onChange={setNote} longest={2000} long />
      <ActDay value={on} onChange={setOn} label="Corrected on" />
    </FormWindow>
  );
}
