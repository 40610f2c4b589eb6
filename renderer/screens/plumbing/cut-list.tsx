import { Button } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import type { PlumbingView } from '../../../core/contract/plumbing.ts';
import { Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Caution, Empty } from '../../parts/notes.tsx';
import { HoseLengths } from './hose-lengths.tsx';
import { lengthText } from './lengths-text.ts';

type CutRow = PlumbingView['cutList'][number];

/** How the lengths at hand and those to buy are cut, hose by hose; fits one sheet of paper. */
export function CutList({ rows, caution }: { readonly rows: readonly CutRow[]; readonly caution: string }) {
  return (
    <div className="plumbing-block">
      {rows.length === 0 ? (
        <Empty>
          Once a line can be taken off, its cut stands here, laid into the lengths at hand before any hose is bought.
        </Empty>
      ) : (
        <>
          <Toolbar label="Cut list">
            <Button leftSection={<IconPrinter aria-hidden size="1.1em" />} onClick={() => window.print()}>
              Print
            </Button>
          </Toolbar>
          <div className="plumbing-cuts">
            {rows.map((row) => (
              <OneHose key={row.hose} row={row} />
            ))}
          </div>
          <Caution>{caution}</Caution>
        </>
      )}
      <p className="plumbing-says">
        Lengths at hand are kept here and are not on the parts list: hose that stands on the parts list must not be
        written down here as well, or it counts twice.
      </p>
      <HoseLengths />
    </div>
  );
}

function OneHose({ row }: { readonly row: CutRow }) {
  const locale = useLocale();
  const longest = Math.max(...row.lengths.map(({ lengthMm }) => lengthMm), 1);
  return (
    <section aria-label={`Cuts from ${row.hose}`} className="plumbing-hose">
      <h2>{row.hose}</h2>
      <p>
        {row.answer}{' '}
        {row.proven ? 'No other way of cutting buys less.' : 'A good way of cutting, not proven to be the best.'}
      </p>
      <ol className="plumbing-lengths">
        {row.lengths.map((one, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: equal lengths are told apart by their place only
          <li key={`${at} ${one.from}`}>
            <p>
              <strong>{one.from}</strong>:{' '}
              {one.cuts.map(({ line, mm }) => `${line} ${lengthText(mm, locale)}`).join(', ')}; rest{' '}
              {lengthText(one.restMm, locale)}.
            </p>
            <CutBar length={one} longest={longest} />
          </li>
        ))}
      </ol>
    </section>
  );
}

/** The length drawn to scale of the longest; the text above says the same. */
function CutBar({ length, longest }: { readonly length: CutRow['lengths'][number]; readonly longest: number }) {
  const share = (mm: number) => `${(100 * mm) / length.lengthMm}%`;
  return (
    <div className="plumbing-bar" data-bought={length.bought || undefined} aria-hidden>
      <div style={{ width: `${(100 * length.lengthMm) / longest}%` }}>
        {length.cuts.map(({ line, mm }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: copies of a line are told apart by their place only
          <span key={`${at} ${line}`} style={{ width: share(mm) }}>
            {mm / longest > 0.12 ? Math.round(mm) : ''}
          </span>
        ))}
      </div>
    </div>
  );
}
