import { DatePicker } from '@mantine/dates';
import { useEffect, useRef } from 'react';
import '@mantine/dates/styles.layer.css';
import { usePreferences } from '../app/preferences.ts';
import { useLocale } from './locale.tsx';

export interface CalendarProps {
  readonly value: string | null;
  readonly today: string;
  readonly min?: string;
  readonly max?: string;
  readonly onPick: (date: string) => void;
}

const weekDays = { sunday: 0, monday: 1, saturday: 6 } as const;

/** A month to pick a day from; its own chunk, because most dates are typed. */
export default function Calendar({ value, today, min, max, onPick }: CalendarProps) {
  const { weekStart } = useLocale();
  const { density } = usePreferences();
  const place = useRef<HTMLDivElement>(null);
  // The chunk may arrive after the calendar was opened, so the focus is brought in from here.
  useEffect(() => {
    const days = place.current;
    (
      days?.querySelector<HTMLElement>('[data-selected]') ?? days?.querySelector<HTMLElement>('[aria-current]')
    )?.focus();
  }, []);
  return (
    <DatePicker
      ref={place}
      size={density === 'bench' ? 'xl' : 'sm'}
      value={value}
      defaultDate={value ?? today}
      firstDayOfWeek={weekDays[weekStart]}
      weekendDays={[]}
      hideOutsideDates
      onChange={(date) => {
        if (date !== null) onPick(date);
      }}
      getDayProps={(date) => (date === today ? { 'aria-current': 'date' as const } : {})}
      {...(min === undefined ? {} : { minDate: min })}
      {...(max === undefined ? {} : { maxDate: max })}
      ariaLabels={{ nextMonth: 'Next month', previousMonth: 'Month before' }}
    />
  );
}
