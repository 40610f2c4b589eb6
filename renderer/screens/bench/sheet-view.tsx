import { useState } from 'react';
import type { SheetView } from '../../../core/contract/bench.ts';
import { limitWords } from '../../../core/measuring/sheet.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Caution } from '../../parts/notes.tsx';
import { Answer } from '../../parts/page.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { State } from '../../parts/state.tsx';
import { FitTable } from './fit-table.tsx';
import { figure, placesOfStep } from './sheet-figures.ts';
import { ReadingsGrid } from './sheet-grid.tsx';
import { StrikeForm } from './strike-form.tsx';

/** One measuring sheet: its readings place by place, what they say, and what to put in. */
export function MeasuringSheet({ id }: { readonly id: number }) {
  const reading = useReading();
  const read = useRead(
    ['bench', reading?.build ?? null, reading?.asOf ?? null, 'sheet', id],
    reading === null ? null : () => api.bench.sheet({ ...reading, sheet: id }),
  );
  return (
    <ReadView read={read} label="Reading the measuring sheet">
      {(sheet) => <Sheet sheet={sheet} past={reading?.asOf !== undefined} />}
    </ReadView>
  );
}

function Sheet({ sheet, past }: { readonly sheet: SheetView; readonly past: boolean }) {
  const [striking, setStriking] = useState<{ readonly place: string; readonly name: string } | null>(null);
  const digits = placesOfStep(sheet.resolution);
  const show = (value: number | null) => figure(value, digits, sheet.unit);
  const round = sheet.places.some(({ outOfRound, taper }) => outOfRound !== null || taper !== null);
  return (
    <div className="measuring-sheet">
      <Answer blocks={sheet.standing !== 'in limits'}>
        {sheet.title}: {sheet.says}
      </Answer>
      <p>
        {sheet.limits.least !== null || sheet.limits.most !== null ? (
          <>
            Limits {limitWords(sheet.limits, sheet.unit)}
            {sheet.limits.source === '' ? ', without a source' : `, from ${sheet.limits.source}`}.{' '}
          </>
        ) : (
          'No limits are written down for the sizes. '
        )}
        {sheet.less !== null && (
          <>
            Clearance is what is left over{' '}
            <Link to="/bench" params={{ sheet: sheet.less }}>
              {sheet.lessTitle}
            </Link>
            : {limitWords(sheet.clearanceLimits, sheet.unit)}
            {sheet.clearanceLimits.source === '' ? '' : `, from ${sheet.clearanceLimits.source}`}.{' '}
          </>
        )}
        {sheet.instrument !== '' && `${sheet.instrument}. `}
        {sheet.expansionPpm !== null &&
          `Lengths are brought to 20 °C, for a part that grows ${sheet.expansionPpm} millionths a kelvin and a steel instrument as warm as the part.`}
      </p>
      <Caution>{sheet.caution}</Caution>
      {past && <p>A past day is shown, so nothing can be written down from here. Go back to today.</p>}
      <ReadingsGrid
        key={`${sheet.id} ${sheet.revision}`}
        sheet={sheet}
        past={past}
        onStrike={(place, name) => setStriking({ place, name })}
      />
      <SimpleTable
        caption="What the readings say"
        rows={sheet.places}
        rowKey={({ place }) => place}
        columns={[
          { id: 'place', title: 'Place', rowHeader: true, cell: ({ place }) => place },
          {
            id: 'verdict',
            title: 'Size',
            cell: ({ verdict, missing }) =>
              missing.length > 0 && verdict !== 'out' ? (
                <State state="missing" words={verdict === 'missing' ? 'missing' : `missing ${missing.join(', ')}`} />
              ) : (
                <State state={verdict} />
              ),
          },
          { id: 'mean', title: 'Mean', figures: true, cell: ({ mean }) => show(mean) },
          ...(round
            ? [
                { id: 'round', title: 'Out of round', figures: true, cell: (row: Place) => show(row.outOfRound) },
                { id: 'taper', title: 'Taper', figures: true, cell: (row: Place) => show(row.taper) },
              ]
            : []),
          ...(sheet.less === null
            ? []
            : [
                {
                  id: 'clearance',
                  title: 'Clearance',
                  figures: true,
                  cell: (row: Place) =>
                    row.clearance === null
                      ? 'not known'
                      : `${show(row.clearance)}${row.clearanceUncertainty === null ? '' : ` ± ${show(row.clearanceUncertainty)}`}`,
                },
                {
                  id: 'clearanceVerdict',
                  title: 'Fit',
                  cell: (row: Place) => <State state={row.clearanceVerdict} />,
                },
              ]),
        ]}
      />
      <p>
        {sheet.count} readings
        {sheet.mean !== null && `, mean ${show(sheet.mean)}`}
        {sheet.range !== null && `, range ${show(sheet.range)}`}
        {sheet.deviation !== null && `, standard deviation ${figure(sheet.deviation, digits + 1, sheet.unit)}`}.
        {sheet.resolution !== null || sheet.uncertainty !== null
          ? sheet.less !== null && ' ± is twice the standard uncertainty of the instruments.'
          : ' Write down what the instrument resolves, and its uncertainty, to see how sure a reading is.'}
      </p>
      {sheet.fit !== null && <FitTable fit={sheet.fit} unit={sheet.unit} digits={digits} />}
      {sheet.part !== null && (
        <p>
          Belongs to{' '}
          <Link to="/parts" params={{ part: sheet.part }}>
            {sheet.partDescription}
          </Link>
          .
        </p>
      )}
      {sheet.job !== null && (
        <p>
          Job:{' '}
          <Link to="/plan" params={{ job: sheet.job }}>
            {sheet.jobTitle}
          </Link>
          .
        </p>
      )}
      {sheet.note !== '' && <p className="bench-note">{sheet.note}</p>}
      {striking !== null && <StrikeForm sheet={sheet} {...striking} onClose={() => setStriking(null)} />}
    </div>
  );
}

type Place = SheetView['places'][number];
