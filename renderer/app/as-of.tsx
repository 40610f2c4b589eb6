import { Button } from '@mantine/core';
import { IconCalendar, IconHistory } from '@tabler/icons-react';
import { useState } from 'react';
import { DateField } from '../parts/date-field.tsx';
import { FormWindow } from '../parts/form.tsx';
import { dateText } from '../parts/formats.ts';
import { useLocale } from '../parts/locale.tsx';
import { useWorkspace } from './workspace.tsx';

/** Chooses the past date that every screen is shown as of. */
export function AsOfControl() {
  const { asOf, showAsOf, today } = useWorkspace();
  const locale = useLocale();
  const [opened, setOpened] = useState(false);
  const [date, setDate] = useState<string | null>(null);
  const open = () => {
    setDate(asOf ?? today);
    setOpened(true);
  };
  const show = () => {
    showAsOf(date === null || date === today ? null : date);
    setOpened(false);
  };
  return (
    <>
      <Button variant="subtle" leftSection={<IconCalendar aria-hidden size="1.1em" />} onClick={open}>
        <span className="only-heard">Shown as of</span> {asOf === null ? 'Today' : dateText(asOf, locale)}
      </Button>
      <FormWindow
        opened={opened}
        title="Look at a past day"
        submitLabel="Show that day"
        onSubmit={show}
        onCancel={() => setOpened(false)}
      >
        <DateField
          name="asOf"
          label="Day"
          description="Every page is shown as the workbook stood at the end of this day. Nothing is changed."
          value={date}
          onChange={setDate}
          max={today}
          today={today}
          required
          autoFocus
        />
      </FormWindow>
    </>
  );
}

/** Stands above every page while a past date is shown, so that an old figure is never taken for today's. */
export function AsOfBanner() {
  const { asOf, showAsOf } = useWorkspace();
  const locale = useLocale();
  if (asOf === null) return null;
  return (
    <div className="as-of-banner" role="status">
      <IconHistory aria-hidden size="1.2em" className="as-of-mark" />
      <span>
        Shown as of <strong>{dateText(asOf, locale)}</strong>
      </span>
      <span aria-hidden>·</span>
      <Button variant="subtle" size="compact" className="not-printed" onClick={() => showAsOf(null)}>
        Back to today
      </Button>
    </div>
  );
}
