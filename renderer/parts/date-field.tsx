import { ActionIcon, Popover } from '@mantine/core';
import { IconCalendar } from '@tabler/icons-react';
import { type KeyboardEvent, lazy, Suspense, useState } from 'react';
import { parseTypedDate } from '../../core/dates/date-text.ts';
import { Refusal } from '../../core/refusal.ts';
import type { FieldProps } from './field-frame.tsx';
import { dateText } from './formats.ts';
import { useLocale } from './locale.tsx';
import { Loading } from './notes.tsx';
import { ReadField } from './read-field.tsx';
import './fields.css';

const Calendar = lazy(() => import('./calendar.tsx'));

export interface DateFieldProps extends FieldProps {
  /** YYYY-MM-DD; null while nothing can be read. */
  readonly value: string | null;
  readonly onChange: (date: string | null) => void;
  /** Today on the user's calendar: what typing “today” means, and the mark in the calendar. */
  readonly today: string;
  readonly min?: string;
  readonly max?: string;
}

/** A calendar date, typed in any usual form or picked from a calendar. */
export function DateField({ value, onChange, today, min, max, ...field }: DateFieldProps) {
  const locale = useLocale();
  const [opened, setOpened] = useState(false);

  const read = (text: string): string => {
    const name = field.label.toLowerCase();
    const order = locale.dateForm === 'mm/dd/yyyy' ? 'month-first' : 'day-first';
    const date = text.trim().toLowerCase() === 'today' ? today : (parseTypedDate(text, order, name) ?? today);
    if ((min === undefined || date >= min) && (max === undefined || date <= max)) return date;
    const from = min === undefined ? '' : `from ${dateText(min, locale)}`;
    const to = max === undefined ? '' : `up to ${dateText(max, locale)}`;
    throw new Refusal(
      'bad-input',
      `The ${name} ${dateText(date, locale)} is outside the dates allowed here. Nothing was changed.`,
      {
        field: field.name,
        accepted: `a day ${[from, to].filter(Boolean).join(' ')}`,
      },
    );
  };

  /** The key closes the calendar, not the window that the field is in. */
  const closeFirst = (event: KeyboardEvent) => {
    if (!opened || event.key !== 'Escape') return;
    event.preventDefault();
    setOpened(false);
  };
  const calendarButton = (
    // On the way down: the popover shuts itself on the way, and then it can no longer be told that it was open.
    <span onKeyDownCapture={closeFirst}>
      <Popover opened={opened} onChange={setOpened} trapFocus returnFocus position="bottom-end">
        <Popover.Target>
          <ActionIcon
            className="field-button"
            aria-label={`Calendar for ${field.label.toLowerCase()}`}
            disabled={field.disabled === true}
            onClick={() => setOpened(!opened)}
          >
            <IconCalendar aria-hidden size="1.2em" />
          </ActionIcon>
        </Popover.Target>
        <Popover.Dropdown>
          <Suspense fallback={<Loading label="Opening the calendar" />}>
            <Calendar
              value={value}
              today={today}
              {...(min === undefined ? {} : { min })}
              {...(max === undefined ? {} : { max })}
              onPick={(date) => {
                onChange(date);
                setOpened(false);
              }}
            />
          </Suspense>
        </Popover.Dropdown>
      </Popover>
    </span>
  );
  return (
    <ReadField
      {...field}
      value={value}
      onChange={onChange}
      read={read}
      write={(date) => dateText(date, locale)}
      aside={calendarButton}
    />
  );
}
