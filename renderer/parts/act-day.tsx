import { useState } from 'react';
import { api } from '../app/client.ts';
import { useRead } from '../app/data.tsx';
import { useWorkspace } from '../app/workspace.tsx';
import { DateField } from './date-field.tsx';
import { TextField } from './fields.tsx';

/** The day of an act, today until another is chosen. */
export function useActDay() {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const field = <DateField name="on" label="Day it happened" value={on} onChange={setOn} today={today} required />;
  return { on: on ?? today, field };
}

/** Who did it: the author in the settings until another name is typed. */
export function useWho({ name = 'by', label, required = false }: { name?: string; label: string; required?: boolean }) {
  const settings = useRead(['workbook.settings'], () => api.workbook.settings());
  const [typed, setTyped] = useState<string | null>(null);
  const by = typed ?? (settings.state === 'ready' ? settings.value.author : '');
  const field = <TextField name={name} label={label} value={by} onChange={setTyped} required={required} longest={80} />;
  return { by, field };
}
