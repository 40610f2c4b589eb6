import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { TextField } from '../../parts/fields.tsx';

/** The day of an act, which the user sees and can change. */
export function useActDay() {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const field = <DateField name="on" label="Day" value={on} onChange={setOn} today={today} required />;
  return { on: on ?? today, field };
}

/** Who did it: the author of the settings until somebody else is typed. */
export function useWho(label: string) {
  const settings = useRead(['workbook.settings'], () => api.workbook.settings());
  const [typed, setTyped] = useState<string | null>(null);
  const by = typed ?? (settings.state === 'ready' ? settings.value.author : '');
  const field = <TextField name="by" label={label} value={by} onChange={setTyped} longest={80} />;
  return { by, field };
}
