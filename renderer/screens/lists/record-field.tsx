import { currencyCodes } from '../../../core/money/currency.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, MoneyField, TextField } from '../../parts/fields.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { TorqueField } from '../../parts/torque-field.tsx';
import type { FieldSpec } from './kinds.ts';
import type { Names } from './names.ts';
import { OptionsField } from './options-field.tsx';
import { FlagField, HoursField, RateField, WholeField } from './small-fields.tsx';
import { optionsOf } from './value-text.ts';

const currencyOptions = currencyCodes.map((value) => ({ value, label: value }));
const methods = [
  { value: 'torque', label: 'Torque' },
  { value: 'torque and angle', label: 'Torque, then an angle' },
  { value: 'stretch', label: 'Stretch, measured' },
];

const asText = (value: unknown): string | null => (typeof value === 'string' && value !== '' ? value : null);
const asNumber = (value: unknown): number | null => (typeof value === 'number' ? value : null);

export interface RecordFieldProps {
  readonly field: FieldSpec;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
  readonly names: Names;
  readonly autoFocus: boolean;
}

/** One field of a record, drawn by its type. */
export function RecordField({ field, value, onChange, names, autoFocus }: RecordFieldProps) {
  const { today } = useWorkspace();
  const locale = useLocale();
  const common = {
    name: field.name,
    label: field.label,
    required: field.required === true,
    autoFocus,
    ...(field.description === undefined ? {} : { description: field.description }),
  };
  const text = asText(value);
  const number = asNumber(value);
  switch (field.type) {
    case 'text':
    case 'long':
      return (
        <TextField
          {...common}
          value={text ?? ''}
          onChange={onChange}
          long={field.type === 'long'}
          longest={field.longest ?? 200}
        />
      );
    case 'day':
      return <DateField {...common} value={text} onChange={onChange} today={today} />;
    case 'currency':
      return <Choice {...common} value={text} onChange={onChange} options={currencyOptions} none="Not said" />;
    case 'method':
      return <Choice {...common} value={text} onChange={onChange} options={methods} />;
    case 'whole':
      return (
        <WholeField
          {...common}
          value={number}
          onChange={onChange}
          least={field.least ?? 0}
          most={field.most ?? 1_000_000}
          unit={field.unit ?? ''}
        />
      );
    case 'money':
      return <MoneyField {...common} value={number} onChange={onChange} />;
    case 'torque':
      return <TorqueField {...common} value={number} onChange={onChange} />;
    case 'rate':
      return (
        <RateField
          {...common}
          description={`${locale.currency} for one unit of the foreign currency.`}
          value={text}
          onChange={onChange}
          base={locale.currency}
        />
      );
    case 'flag':
      return <FlagField name={field.name} label={field.label} value={value === true} onChange={onChange} />;
    case 'week':
    case 'hours':
      return <HoursField {...common} of={field.type} value={value} onChange={onChange} />;
    case 'options':
      return <OptionsField value={optionsOf(value)} onChange={onChange} />;
    default: {
      const options = [...names[field.type]].map(([id, label]) => ({ value: String(id), label }));
      const known = number === null ? null : String(number);
      const missing = known !== null && !options.some((option) => option.value === known);
      return (
        <Choice
          {...common}
          {...(field.none === undefined ? {} : { none: field.none })}
          value={known}
          onChange={(chosen) => onChange(chosen === null ? null : Number(chosen))}
          options={missing ? [...options, { value: known, label: `number ${known}, retired or dropped` }] : options}
        />
      );
    }
  }
}
