import { useState } from 'react';
import type { Settings } from '../../../core/contract/workbook.ts';
import { showMinutes } from '../../../core/schedule/working-time.ts';
import { Form } from '../../parts/form.tsx';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';
import { minutesAWeek, type WeekWindow } from '../../parts/week-windows.ts';
import { WeekWindowsField } from '../../parts/week-windows-field.tsx';
import { useSaveSettings } from './use-settings.ts';

/** The hours a week that there really are for the build; the hoist check counts its day with them. */
export function HoursSection({ settings, readOnly }: { readonly settings: Settings; readonly readOnly: boolean }) {
  const [windows, setWindows] = useState<readonly WeekWindow[]>(settings.weekWindows);
  const [wrong, setWrong] = useState<RefusalWords | null>(null);
  const save = useSaveSettings();
  const change = (next: readonly WeekWindow[]) => {
    setWrong(null);
    setWindows(next);
  };
  const submit = () => {
    try {
      minutesAWeek(windows);
      setWrong(null);
      void save.run({ weekWindows: [...windows] });
    } catch (error) {
      setWrong(refusalWords(error));
    }
  };
  return (
    <Form submitLabel="Save the free hours" busy={save.busy} refusal={wrong ?? save.refusal} onSubmit={submit}>
      <p>{sumSentence(windows)} The hoist check counts its day with these hours, one thing after another.</p>
      <WeekWindowsField windows={windows} onChange={change} readOnly={readOnly} />
    </Form>
  );
}

function sumSentence(windows: readonly WeekWindow[]): string {
  if (windows.length === 0) return 'No hours are set, so the hoist check can give no day.';
  try {
    return `${showMinutes(minutesAWeek(windows))} a week.`;
  } catch {
    return 'Two of these times overlap, or one ends before it begins.';
  }
}
