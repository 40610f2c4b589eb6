import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';

export interface ActDayProps {
  readonly value: string | null;
  readonly onChange: (day: string | null) => void;
  readonly label?: string;
}

/** The day on which an act happened; today unless it is changed. */
export function ActDay({ value, onChange, label = 'Day' }: ActDayProps) {
  const { today } = useWorkspace();
  return <DateField name="on" label={label} value={value} onChange={onChange} today={today} required />;
}
