import { Checkbox } from '@mantine/core';
import { Refusal } from '../../../core/refusal.ts';
import { Choice, MoneyField } from '../../parts/fields.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import type { ChargesDraft } from './charges-draft.ts';

export interface ChargesFieldsProps {
  readonly draft: ChargesDraft;
  readonly onChange: (draft: ChargesDraft) => void;
  readonly currency: string;
}

const bases = [
  { value: 'goods', label: 'the goods' },
  { value: 'goods+freight', label: 'goods and shipping' },
  { value: 'all', label: 'goods, shipping and duty' },
] as const;

/** Discount, shipping, duty and tax of an order, in its own currency. */
export function ChargesFields({ draft, onChange, currency }: ChargesFieldsProps) {
  const set = (part: Partial<ChargesDraft>) => onChange({ ...draft, ...part });
  return (
    <>
      <div className="form-row">
        <MoneyField
          name="charges.discountMinor"
          label="Discount"
          currency={currency}
          value={draft.discountMinor}
          onChange={(discountMinor) => set({ discountMinor })}
        />
        <MoneyField
          name="charges.shippingMinor"
          label="Shipping"
          currency={currency}
          value={draft.shippingMinor}
          onChange={(shippingMinor) => set({ shippingMinor })}
        />
        <MoneyField
          name="charges.dutyMinor"
          label="Duty"
          currency={currency}
          value={draft.dutyMinor}
          onChange={(dutyMinor) => set({ dutyMinor })}
        />
      </div>
      <div className="form-row">
        <Choice<'amount' | 'rate'>
          name="charges.tax.kind"
          label="Tax given as"
          value={draft.taxKind}
          onChange={(taxKind) => set({ taxKind: taxKind ?? 'amount' })}
          options={[
            { value: 'amount', label: 'the amount on the bill' },
            { value: 'rate', label: 'a percentage' },
          ]}
          required
        />
        {draft.taxKind === 'amount' ? (
          <MoneyField
            name="charges.tax.minor"
            label="Tax"
            currency={currency}
            value={draft.taxMinor}
            onChange={(taxMinor) => set({ taxMinor })}
          />
        ) : (
          <>
            <ReadField<string>
              name="charges.tax.percent"
              label="Tax rate"
              value={draft.percent}
              onChange={(percent) => set({ percent })}
              read={readPercent}
              write={(percent) => percent}
              suffix="%"
              numeric
              required
            />
            <Choice<ChargesDraft['base']>
              name="charges.tax.base"
              label="Tax on"
              value={draft.base}
              onChange={(base) => set({ base: base ?? 'goods' })}
              options={bases}
              required
            />
          </>
        )}
      </div>
      {draft.taxKind === 'rate' && (
        <Checkbox
          label="The prices have the tax in them"
          checked={draft.included}
          onChange={(event) => set({ included: event.currentTarget.checked })}
        />
      )}
    </>
  );
}

function readPercent(text: string): string {
  const percent = text.trim().replace('%', '').trim().replace(',', '.');
  if (/^\d{1,2}(\.\d{1,4})?$/.test(percent)) return percent;
  throw new Refusal('bad-input', `The tax rate “${text.trim()}” can't be read. Nothing was changed.`, {
    field: 'charges.tax.percent',
    accepted: 'a percentage below 100 with at most 4 decimals, such as 8.25',
  });
}
