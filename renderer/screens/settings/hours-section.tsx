import { ActionIcon, Button } from '@mantine/core';
import { IconPlus, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { Settings } from '../../../core/contract/workbook.ts';
import { Refusal } from '../../../core/refusal.ts';
import { showMinutes } from '../../../core/schedule/working-time.ts';
import { Choice } from '../../parts/fields.tsx';
import { Form } from '../../parts/form.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';
import { useSaveSettings } from './use-settings.ts';
import { clockOf, minutesAWeek, type WeekWindow, weekdays } from './week-windows.ts';

interface Row extends WeekWindow {
  readonly id: number;
}

function readClock(text: string): string {
  const clock = clockOf(text);
  if (clock !== null) return clock;
  throw new Refusal('bad-input', `The time “${text.trim()}” can't be read. Nothing was changed.`, {
    accepted: 'a time of day from 0:00 to 24:00, such as 19:30',
  });
}

/** The hours a week that there really are for the build; the hoist check counts its day with them. */
export function HoursSection({ settings, readOnly }: { readonly settings: Settings; readonly readOnly: boolean }) {
  const [rows, setRows] = useState<readonly Row[]>(settings.weekWindows.map((window, id) => ({ ...window, id })));
  const [wrong, setWrong] = useState<RefusalWords | null>(null);
  const save = useSaveSettings();
  const windows = rows.map(({ weekday, from, to }) => ({ weekday, from, to }));
  const change = (id: number, part: Partial<WeekWindow>) => {
    setWrong(null);
    setRows(rows.map((row) => (row.id === id ? { ...row, ...part } : row)));
  };
  const add = () =>
    setRows([...rows, { id: Math.max(-1, ...rows.map(({ id }) => id)) + 1, weekday: 6, from: '09:00', to: '13:00' }]);
  const submit = () => {
    try {
      minutesAWeek(windows);
      setWrong(null);
      void save.run({ weekWindows: windows });
    } catch (error) {
      setWrong(refusalWords(error));
    }
  };
  return (
    <Form submitLabel="Save the free hours" busy={save.busy} refusal={wrong ?? save.refusal} onSubmit={submit}>
      <p>{sumSentence(windows)} The hoist check counts its day with these hours, one thing after another.</p>
      {rows.map((row, index) => (
        <fieldset key={row.id} className="settings-window" disabled={readOnly}>
          <legend className="only-heard">Free time {index + 1}</legend>
          <Choice
            name={`weekday-${row.id}`}
            label="Day"
            value={String(row.weekday)}
            onChange={(weekday) => weekday !== null && change(row.id, { weekday: Number(weekday) })}
            options={weekdays.map(({ value, label }) => ({ value: value as string, label }))}
            required
          />
          <ReadField
            name={`from-${row.id}`}
            label="From"
            value={row.from}
            onChange={(from) => from !== null && change(row.id, { from })}
            read={readClock}
            write={(clock) => clock}
            numeric
            required
          />
          <ReadField
            name={`to-${row.id}`}
            label="To"
            value={row.to}
            onChange={(to) => to !== null && change(row.id, { to })}
            read={readClock}
            write={(clock) => clock}
            numeric
            required
          />
          <ActionIcon
            aria-label={`Remove free time ${index + 1}`}
            onClick={() => setRows(rows.filter(({ id }) => id !== row.id))}
          >
            <IconTrash aria-hidden size="1.2em" />
          </ActionIcon>
        </fieldset>
      ))}
      {!readOnly && (
        <Button className="settings-start" leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={add}>
          Add a free time
        </Button>
      )}
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
