import { Button, Popover } from '@mantine/core';
import { IconCalendar, IconHistory } from '@tabler/icons-react';
import { useState } from 'react';
import { DateField } from '../parts/date-field.tsx';
import { dateText } from '../parts/formats.ts';
import { useLocale } from '../parts/locale.tsx';
import { useWorkspace } from './workspace.tsx';

/** Chooses the past date that every screen is shown as of. */
export function AsOfControl() {
  const { asOf, showAsOf, today } = useWorkspace();
  const locale = useLocale();
  const [opened, setOpened] = useState(false);
  return (
    <Popover opened={opened} onChange={setOpened} position="bottom-start" trapFocus withinPortal>
      <Popover.Target>
        <Button
          variant="subtle"
          leftSection={<IconCalendar aria-hidden size="1.1em" />}
          onClick={() => setOpened(!opened)}
        >
          <span className="only-heard">Shown as of </span>
          {asOf === null ? 'Today' : dateText(asOf, locale)}
        </Button>
      </Popover.Target>
      <Popover.Dropdown aria-label="Show as of a past date">
        <DateField
          name="asOf"
          label="Show as of"
          description="Entries after this date are left out."
          value={asOf ?? today}
          max={today}
          today={today}
          onChange={(date) => {
            if (date === null) return;
            showAsOf(date === today ? null : date);
          }}
        />
      </Popover.Dropdown>
    </Popover>
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
      <Button variant="subtle" size="compact" className="not-printed" onClick={() => showAsOf(null)}>
        Back to today
      </Button>
    </div>
  );
}
