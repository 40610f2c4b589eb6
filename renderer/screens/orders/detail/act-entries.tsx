import { Button } from '@mantine/core';
import type { JournalRow } from '../../../../core/contract/journal.ts';
import { Link } from '../../../app/route.tsx';
import { counted } from '../../../parts/formats.ts';
import type { OrderAct } from './acts-of.ts';
import type { Reversible } from './reverse-window.tsx';

export interface ActEntriesProps {
  readonly act: OrderAct;
  readonly reverse: ((what: Reversible) => void) | null;
}

/** One act in words: its only entry, or its name with its entries folded under it. */
export function ActEntries({ act, reverse }: ActEntriesProps) {
  const [only] = act.rows;
  if (act.rows.length === 1 && only !== undefined) return <Entry row={only} />;
  return (
    <details className="act-entries">
      <summary>
        {act.label} <span className="quiet">{counted(act.rows.length, 'entry', 'entries')}</span>
      </summary>
      <ul className="entry-list">
        {act.rows.map((row) => (
          <li key={row.seq}>
            <Entry row={row} />
            {reverse !== null && (
              <TakeBack
                reversed={row.reversedBy !== null}
                reverses={row.reverses !== null}
                words={row.text}
                onTakeBack={() => reverse({ entry: row.seq, text: row.text })}
              />
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

function Entry({ row: { seq, text, note } }: { readonly row: JournalRow }) {
  return (
    <span>
      <Link to="/journal" params={{ entry: seq }}>
        {text}
      </Link>
      {note !== '' && <span className="quiet under">{note}</span>}
    </span>
  );
}

export interface TakeBackProps {
  readonly reversed: boolean;
  readonly reverses: boolean;
  /** What would be taken back. */
  readonly words: string;
  readonly onTakeBack: () => void;
}

/** The way to take something back, or why there is none. */
export function TakeBack({ reversed, reverses, words, onTakeBack }: TakeBackProps) {
  if (reversed) return <span className="quiet">taken back</span>;
  if (reverses) return <span className="quiet">takes another back</span>;
  return (
    <Button size="compact" variant="subtle" aria-label={`Take back: ${words}`} onClick={onTakeBack}>
      Take back
    </Button>
  );
}
