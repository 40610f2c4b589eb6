import { Radio } from '@mantine/core';
import { type Density, setPreferences, type ThemeChoice, usePreferences } from '../../app/preferences.ts';

/** Day or night, desk or bench: kept on this machine, not in the workbook. */
export function LookSection() {
  const { theme, density } = usePreferences();
  return (
    <div className="settings-stack">
      <p>The look is kept on this machine; the workbook isn't changed.</p>
      <Radio.Group
        label="Colours"
        value={theme}
        onChange={(chosen) => setPreferences({ theme: chosen as ThemeChoice })}
      >
        <div className="settings-radios">
          <Radio size="md" value="system" label="As the system has them" />
          <Radio size="md" value="day" label="Day: ink on paper" />
          <Radio size="md" value="night" label="Night: light on dark" />
        </div>
      </Radio.Group>
      <Radio.Group label="Size" value={density} onChange={(chosen) => setPreferences({ density: chosen as Density })}>
        <div className="settings-radios">
          <Radio size="md" value="desk" label="Desk: compact rows, for mouse and keyboard" />
          <Radio size="md" value="bench" label="Bench: large targets and figures, for gloves" />
        </div>
      </Radio.Group>
    </div>
  );
}
