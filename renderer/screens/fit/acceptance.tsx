import { IconPencilCheck } from '@tabler/icons-react';
import type { ConnectionRow } from '../../../core/contract/fits.ts';
import { DateText } from '../../parts/figures.tsx';

/** The reason that was written down, who wrote it and whether it still counts. */
export function Acceptance({ accepted }: Pick<ConnectionRow, 'accepted'>) {
  if (accepted === null) return null;
  const { reason, by, on, lapsed } = accepted;
  return (
    <p className={lapsed ? 'note note-warn' : 'note'}>
      <IconPencilCheck aria-hidden className="note-icon" />
      <span>
        <strong>{lapsed ? 'The acceptance has lapsed.' : 'Accepted.'}</strong> {reason} ({by === '' ? '' : `${by}, `}
        <DateText date={on} />){lapsed && ' What it was given for has changed since, so it counts no longer.'}
      </span>
    </p>
  );
}
