import { ActionIcon, Button } from '@mantine/core';
import { IconPlus, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import { Refusal } from '../../core/refusal.ts';
import { Choice } from './fields.tsx';
import { ReadField } from './read-field.tsx';
import { clockOf, type WeekWindow, weekdays } from './week-windows.ts';
import './week-windows.css';

function readClock(text: string): string {
  const clock = clockOf(text);
  if (clock !== null) return clock;
  throw new Refusal('bad-input', `The time “${text.trim()}” can't be read. Nothing was changed.`, {
    accepted: 'a time of day from 0:00 to 24:00, such as 19:30',
  });
}

export interface WeekWindowsFieldProps {
  readonly windows: readonly WeekWindow[];
  readonly onChange: (windows: readonly WeekWindow[]) => void;
  readonly readOnly?: boolean;
}

/** The free times of a week, one line each, added and removed. */
export function WeekWindowsField({ windows, onChange, readOnly = false }: WeekWindowsFieldProps) {
  // Each line keeps its own key, so that removing one never empties the fields of another.
  const [keys, setKeys] = useState<readonly number[]>(() => windows.map((_, index) => index));
  const change = (at: number, part: Partial<WeekWindow>) =>
    onChange(windows.map((window, index) => (index === at ? { ...window, ...part } : window)));
  const add = () => {
    setKeys([...keys, Math.max(-1, ...keys) + 1]);
    onChange([...windows, { weekday: 6, from: '09:00', to: '13:00' }]);
  };
  const remove = (at: number) => {
    setKeys(keys.filter((_, index) => index !== at));
    onChange(windows.filter((_, index) => index !== at));
  };
  return (
    <>
      {windows.map((row, at) => (
        <fieldset key={keys[at] ?? at} className="week-window" disabled={readOnly}>
          <legend className="only-heard">Free time {at + 1}</legend>
          <Choice
            name={`weekday-${at}`}
            label="Day"
            value={String(row.weekday)}
            onChange={(weekday) => weekday !== null && change(at, { weekday: Number(weekday) })}
            options={weekdays.map(({ value, label }) => ({ value: value as string, label }))}
            required
          />
          <ReadField
            name={`from-${at}`}
            label="From"
            value={row.from}
            onChange={(from) => from !== null && change(at, { from })}
            read={readClock}
            write={(clock) => clock}
            numeric
            required
          />
          <ReadField
            name={`to-${at}`}
            label="To"
            value={row.to}
            onChange={(to) => to !== null && change(at, { to })}
            read={readClock}
            write={(clock) => clock}
            numeric
            required
          />
          <ActionIcon aria-label={`Remove free time ${at + 1}`} onClick={() => remove(at)}>
            <IconTrash aria-hidden size="1.2em" />
          </ActionIcon>
        </fieldset>
      ))}
      {!readOnly && (
        <Button className="week-windows-add" leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={add}>
          Add a free time
        </Button>
      )}
    </>
  );
}
