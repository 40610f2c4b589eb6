import { Button } from '@mantine/core';
import type { JudgedFit } from '../../../core/contract/fits.ts';
import { once } from './fit-words.ts';

export interface AdaptersProps {
  readonly adapters: JudgedFit['adapters'];
  /** Takes the adapter at this place of the list; left out where none can be taken. */
  readonly onUse?: (at: number) => void;
  readonly busy?: boolean;
  /** What the section is called, where more than one stands on the page. */
  readonly label?: string;
}

/** The adapters that join the two, the best first. */
export function Adapters({ adapters, onUse, busy = false, label = 'Adapters that join them' }: AdaptersProps) {
  if (adapters.length === 0) return null;
  return (
    <section aria-label={label} className="fit-block">
      <h3>Adapters that join them</h3>
      <ol className="fit-list">
        {adapters.map(({ pieces, needs, source }, at) => (
          <li key={pieces.join(' + ')}>
            <strong>{pieces.join(' + ')}</strong>
            <p>
              {pieces.length === 1 ? 'One piece.' : `${pieces.length} pieces.`}
              {needs.length > 0 && ` Also needed: ${once(needs).join('; ')}.`}
            </p>
            <p className="fit-soft">Source: {source}</p>
            {onUse !== undefined && (
              <Button disabled={busy} onClick={() => onUse(at)}>
                Use this adapter <span className="only-heard">{pieces.join(' + ')}</span>
              </Button>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
