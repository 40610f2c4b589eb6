import { Refusal } from '../../../core/refusal.ts';
import { ReadField } from '../../parts/read-field.tsx';

function readDays(text: string): number {
  const days = Number(text.trim());
  if (text.trim() !== '' && Number.isInteger(days) && days >= 0 && days <= 2000) return days;
  throw new Refusal('bad-input', `“${text.trim()}” is no count of days. Nothing was changed.`, {
    accepted: 'whole days from 0 to 2000',
  });
}

export interface DaysFieldProps {
  readonly name: string;
  readonly label: string;
  readonly description?: string;
  readonly required?: boolean;
  readonly value: number | null;
  readonly onChange: (days: number | null) => void;
}

/** Whole days, typed. */
export const DaysField = (props: DaysFieldProps) => <ReadField {...props} read={readDays} write={String} numeric />;
