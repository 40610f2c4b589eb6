import { useState } from 'react';
import { Refusal } from '../../../core/refusal.ts';
import { api } from '../../app/client.ts';
import { type Read, useRead } from '../../app/data.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { torqueText } from '../../parts/torque.ts';

type Setting = Awaited<ReturnType<typeof api.bench.setting>>;

interface Lever {
  readonly wrenchMm: number | null;
  readonly adapterMm: number | null;
  readonly angleDeg: number | null;
}

const number = (name: string, least: number, most: number) => (text: string) => {
  const value = Number(text.trim().replace(',', '.'));
  if (text.trim() !== '' && Number.isFinite(value) && value >= least && value <= most) return value;
  throw new Refusal('bad-input', `“${text.trim()}” can't be taken. Nothing was changed.`, {
    field: name,
    accepted: `a number from ${least} to ${most}`,
  });
};

/**
 * What the wrench is set to when a crowfoot or another adapter lies between it and the bolt. Null while there is no
 * adapter, or no torque to set.
 */
export function useCrowfoot(torqueMilliNm: number | null) {
  const [lever, setLever] = useState<Lever>({ wrenchMm: null, adapterMm: null, angleDeg: 0 });
  const { wrenchMm, adapterMm, angleDeg } = lever;
  const whole = torqueMilliNm !== null && wrenchMm !== null && adapterMm !== null && adapterMm > 0 && angleDeg !== null;
  const read = useRead(
    ['bench.setting', torqueMilliNm, wrenchMm, adapterMm, angleDeg],
    whole ? () => api.bench.setting({ torqueMilliNm, wrenchMm, adapterMm, angleDeg }) : null,
  );
  const setting = whole && read.state === 'ready' && !read.stale ? read.value : null;
  return { lever, setLever, read: whole ? read : null, setting };
}

export interface CrowfootProps {
  readonly lever: Lever;
  readonly onLever: (lever: Lever) => void;
  readonly read: Read<Setting> | null;
}

/** The lengths of wrench and adapter, and the setting that follows. */
export function Crowfoot({ lever, onLever, read }: CrowfootProps) {
  const { units } = useLocale();
  return (
    <details className="bench-more not-printed">
      <summary>With a crowfoot or another adapter</summary>
      <div className="bench-fields">
        <ReadField
          name="wrenchMm"
          label="Wrench, grip to drive"
          value={lever.wrenchMm}
          onChange={(wrenchMm) => onLever({ ...lever, wrenchMm })}
          read={number('wrenchMm', 1, 3000)}
          write={String}
          suffix="mm"
          numeric
        />
        <ReadField
          name="adapterMm"
          label="Adapter, drive to bolt"
          value={lever.adapterMm}
          onChange={(adapterMm) => onLever({ ...lever, adapterMm })}
          read={number('adapterMm', 0, 1000)}
          write={String}
          suffix="mm"
          numeric
        />
        <ReadField
          name="angleDeg"
          label="Angle between them"
          description="0 in line with the wrench, 90 square to it."
          value={lever.angleDeg}
          onChange={(angleDeg) => onLever({ ...lever, angleDeg })}
          read={number('angleDeg', 0, 180)}
          write={String}
          suffix="°"
          numeric
        />
      </div>
      {read?.state === 'refused' && <RefusalNote refusal={read.refusal} onRetry={read.retry} />}
      {read?.state === 'ready' && (
        <p>
          Set the wrench to <strong>{torqueText(read.value.settingMilliNm, units)}</strong>. {read.value.formula}.{' '}
          {read.value.caution}
        </p>
      )}
    </details>
  );
}
