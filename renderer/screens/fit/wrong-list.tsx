import { Button } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import type { FitsView } from '../../../core/contract/fits.ts';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { FitMark } from '../../parts/fit-mark.tsx';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { Acceptance } from './acceptance.tsx';
import { once, severityWords } from './fit-words.ts';
import { type WrongFit, wrongFits } from './wrong-fits.ts';

/** All that is wrong or lacks something, the worst first, to be printed before anything is ordered. */
export function WrongList({ view }: { readonly view: FitsView }) {
  const locale = useLocale();
  const { today, asOf } = useWorkspace();
  const rows = wrongFits(view);
  if (rows.length === 0) {
    return <p>No connection and no declared fit is wrong, and none lacks anything.</p>;
  }
  return (
    <div className="fit-block">
      <p className="fit-printed">As it stands on {dateText(asOf ?? today, locale)}.</p>
      {view.caution !== '' && <Caution>{view.caution}</Caution>}
      <div className="not-printed">
        <Button leftSection={<IconPrinter aria-hidden size="1.1em" />} onClick={() => window.print()}>
          Print the list
        </Button>
      </div>
      <ol className="fit-wrong">
        {rows.map((row) => (
          <Wrong key={`${row.kind} ${row.id}`} row={row} />
        ))}
      </ol>
    </div>
  );
}

function Wrong({ row }: { readonly row: WrongFit }) {
  const { kind, id, title, look, severity, says, consequence, sides, howToTell, missing, accepted, caution } = row;
  return (
    <li>
      <div className="fit-wrong-head">
        <FitMark look={look} />
        {severity !== 'info' && (
          <span>
            {severityWords[severity]}
            {look === 'unknown' && ', if it does not fit'}
          </span>
        )}
      </div>
      <div className="fit-wrong-says">
        <Link to="/fit" params={{ [kind]: id }}>
          {title}
        </Link>
        {sides !== '' && <p className="fit-soft">{sides}</p>}
        <p>{says}</p>
        {consequence !== '' && <p>If joined all the same: {consequence}</p>}
        {howToTell !== '' && <p>How to tell: {howToTell.replace(/\.$/, '')}.</p>}
        {missing.length > 0 && <p>Still to be known: {once(missing).join('; ')}.</p>}
        {caution !== '' && <p className="fit-soft">{caution}</p>}
        <Acceptance accepted={accepted} />
      </div>
    </li>
  );
}
