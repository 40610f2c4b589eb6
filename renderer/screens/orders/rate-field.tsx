import { Refusal } from '../../../core/refusal.ts';
import { useLocale } from '../../parts/locale.tsx';
import { ReadField } from '../../parts/read-field.tsx';

export interface RateFieldProps {
  readonly currency: string;
  /** Decimal text; null leaves the rate to the workbook. */
  readonly value: string | null;
  readonly onChange: (rate: string | null) => void;
}

/** The day's rate of a foreign currency; left empty, the latest rate on record is used. */
export function RateField({ currency, value, onChange }: RateFieldProps) {
  const base = useLocale().currency;
  return (
    <ReadField<string>
      name="rate"
      label={`${base} for 1 ${currency}, if not on record`}
      value={value}
      onChange={onChange}
      read={readRate}
      write={(rate) => rate}
      numeric
    />
  );
}

function readRate(text: string): string {
  const rate = text.trim().replace(',', '.');
  if (/^\d{1,9}(\.\d{1,10})?$/.test(rate) && /[1-9]/.test(rate)) return rate;
  throw new Refusal('bad-input', `The rate “${text.trim()}” can't be read. Nothing was changed.`, {
    field: 'rate',
    accepted: 'a number above 0 such as 1.0842, without a mark between thousands',
  });
}
