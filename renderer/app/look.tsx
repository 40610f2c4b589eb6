import { Button } from '@mantine/core';
import { IconArmchair2, IconMoon, IconSun, IconTool } from '@tabler/icons-react';
import type { Command } from '../parts/palette.tsx';
import { setPreferences, shownTheme, usePreferences } from './preferences.ts';

/** Day or night, desk or bench: each button says what it will switch to. */
export function LookSwitches() {
  const preferences = usePreferences();
  const night = shownTheme(preferences) === 'night';
  const bench = preferences.density === 'bench';
  return (
    <>
      <Button
        variant="subtle"
        leftSection={night ? <IconSun aria-hidden size="1.1em" /> : <IconMoon aria-hidden size="1.1em" />}
        onClick={() => setPreferences({ theme: night ? 'day' : 'night' })}
      >
        {night ? 'Day' : 'Night'}
      </Button>
      <Button
        variant="subtle"
        leftSection={bench ? <IconArmchair2 aria-hidden size="1.1em" /> : <IconTool aria-hidden size="1.1em" />}
        onClick={() => setPreferences({ density: bench ? 'desk' : 'bench' })}
      >
        {bench ? 'Desk' : 'Bench'}
      </Button>
    </>
  );
}

/** The same switches for whoever types. */
export const lookCommands: readonly Command[] = [
  { id: 'look-day', label: 'Day colours', run: () => setPreferences({ theme: 'day' }) },
  { id: 'look-night', label: 'Night colours', run: () => setPreferences({ theme: 'night' }) },
  { id: 'look-system', label: 'Colours as the system has them', run: () => setPreferences({ theme: 'system' }) },
  { id: 'look-desk', label: 'Desk: compact rows', run: () => setPreferences({ density: 'desk' }) },
  { id: 'look-bench', label: 'Bench: large targets and figures', run: () => setPreferences({ density: 'bench' }) },
];
