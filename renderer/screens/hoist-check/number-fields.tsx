import { Refusal } from '../../../core/refusal.ts';
import type { FieldProps } from '../../parts/field-frame.tsx';
import { ReadField } from '../../parts/read-field.tsx';

export interface NumberFieldProps extends FieldProps {
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
}

/** Hours spent, as decimal hours or as hours and minutes, in whole minutes. */
export function HoursField(props: NumberFieldProps) {
  const read = (text: string): number => {
    const clock = /^(\d{1,4}):([0-5]\d)$/.exec(text.trim());
    if (clock !== null) return Number(clock[1]) * 60 + Number(clock[2]);
    const decimal = /^(\d{1,4})(?:[.,](\d{1,2}))?$/.exec(text.trim());
    if (decimal !== null) return Number(decimal[1]) * 60 + Math.round(Number((decimal[2] ?? '').padEnd(2, '0')) * 0.6);
    throw new Refusal('bad-input', `The hours “${text.trim()}” can't be read. Nothing was changed.`, {
      field: props.name,
      accepted: 'hours such as 2.5 or 2:30',
    });
  };
  const write = (minutes: number) => `${Math.trunc(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
  return <ReadField {...props} read={read} write={write} suffix="h" numeric />;
}
