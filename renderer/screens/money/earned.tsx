import { Button } from '@mantine/core';
import { useState } from 'react';
import type { EarnedMeasure, EarnedView } from '../../../core/contract/money.ts';
import { showMinutes } from '../../../core/schedule/working-time.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { LinesOverTime } from '../../parts/chart.tsx';
import { counted, dateText, moneyText } from '../../parts/formats.ts';
import { Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { BaselineForm } from './baseline-form.tsx';
import type { Reading } from './money-words.tsx';

/** The build held against the plan that was kept: what should be here and done by now, and where it ends at this rate. */
export function Earned({ reading }: { readonly reading: Reading }) {
  const [keeping, setKeeping] = useState(false);
  const canAct = useCanAct();
  const view = useRead(['money', reading.build, reading.asOf ?? null, 'earned'], () => api.money.earned(reading));
  return (
    <section className="money-section" aria-labelledby="earned">
      <h2 id="earned">Against the plan</h2>
      <ReadView read={view} label="Reading the plan">
        {(earned) =>
          earned.baseline === null ? (
            <Empty {...(canAct ? { action: { label: 'Keep a baseline…', onClick: () => setKeeping(true) } } : {})}>
              {earned.answer} {earned.howTo}
            </Empty>
          ) : (
            <>
              <Toolbar label="Baseline">
                <Button disabled={!canAct} onClick={() => setKeeping(true)}>
                  Keep a new baseline…
                </Button>
              </Toolbar>
              <Measures view={earned} baseline={earned.baseline} />
            </>
          )
        }
      </ReadView>
      {keeping && <BaselineForm build={reading.build} onClose={() => setKeeping(false)} />}
    </section>
  );
}

function Measures({ view, baseline }: { view: EarnedView; baseline: NonNullable<EarnedView['baseline']> }) {
  const locale = useLocale();
  return (
    <>
      <p>{view.answer}</p>
      <p className="soft">
        Held against “{baseline.name}”, kept on {dateText(baseline.on, locale)}:{' '}
        {counted(baseline.parts, 'part line', 'part lines')}, {counted(baseline.jobs, 'job', 'jobs')}, planned to{' '}
        {dateText(baseline.endOn, locale)}.
        {view.unplanned > 0 &&
          ` ${counted(view.unplanned, 'line has', 'lines have')} come since and were never planned.`}
      </p>
      {view.measures.map((measure) => (
        <Measure key={measure.of} measure={measure} />
      ))}
      <p className="soft">{view.caution}</p>
    </>
  );
}

function Measure({ measure }: { readonly measure: EarnedMeasure }) {
  const locale = useLocale();
  const { today } = useWorkspace();
  const isMoney = measure.of === 'money';
  const what = isMoney ? 'parts in money' : 'jobs in hours';
  const hours = (minutes: number): string => (minutes < 0 ? `−${showMinutes(-minutes)}` : showMinutes(minutes));
  const figure = (value: number | null): string =>
    value === null ? '–' : isMoney ? moneyText(value, locale) : hours(Math.round(value));
  // Over and under in words: a sign before money is easily missed.
  const against = (value: number | null): string =>
    value === null || value === 0 ? figure(value) : `${figure(Math.abs(value))} ${value < 0 ? 'over' : 'under'}`;
  const drawn = (value: number): number => (isMoney ? value : value / 60);
  const series = (['pv', 'ev', 'ac'] as const).map((key) => ({
    name: { pv: 'planned', ev: 'earned', ac: isMoney ? 'spent' : 'worked' }[key],
    points: measure.curve.flatMap((point) => {
      const value = point[key];
      return value === null ? [] : [{ on: point.on, value: drawn(value) }];
    }),
  }));
  const sums = [
    { id: 'bac', label: 'Planned in all', value: measure.bac },
    { id: 'pv', label: 'Planned by now', value: measure.pv },
    {
      id: 'ev',
      label: isMoney ? 'Earned: parts accepted, at their planned price' : 'Earned: work done, by its guess',
      value: measure.ev,
    },
    { id: 'ac', label: isMoney ? 'Spent: cost of what came in' : 'Hours worked', value: measure.ac },
  ];
  return (
    <>
      <h3>{isMoney ? 'Parts, in money' : 'Jobs, in hours'}</h3>
      <LinesOverTime
        title={measure.schedule.says}
        unit={isMoney ? { kind: 'money' } : { kind: 'count', name: 'hours', decimals: 0 }}
        today={today}
        series={series}
      />
      <SimpleTable
        caption={`Sums and indices, ${what}`}
        rows={[
          ...sums.map(({ id, label, value }) => ({ id, label, text: figure(value), says: '' })),
          ...measure.indices.map(({ name, label, text, says }) => ({
            id: name,
            label: `${label} (${name})`,
            text,
            says,
          })),
        ]}
        rowKey={({ id }) => id}
        columns={[
          { id: 'label', title: 'Figure', rowHeader: true, cell: ({ label }) => label },
          { id: 'value', title: 'Now', figures: true, cell: ({ text }) => text },
          { id: 'says', title: 'What it says', sentences: true, cell: ({ says }) => says },
        ]}
      />
      <SimpleTable
        caption={`Estimate at completion, ${what}${measure.outside ? ': the line-by-line estimate lies outside those of the formulas, so look at both' : ''}${measure.early ? '; under a tenth is earned, so the formulas are a hint' : ''}`}
        rows={[...measure.estimates].sort((one, other) => Number(other.first) - Number(one.first))}
        rowKey={({ way }) => way}
        columns={[
          { id: 'way', title: 'By', rowHeader: true, cell: ({ way }) => way },
          { id: 'value', title: 'Ends at', figures: true, cell: ({ value }) => figure(value) },
          { id: 'toCome', title: 'Still to come', figures: true, cell: ({ toCome }) => figure(toCome) },
          { id: 'leftOver', title: 'Against the plan', figures: true, cell: ({ leftOver }) => against(leftOver) },
          {
            id: 'assumes',
            title: 'Takes for granted',
            sentences: true,
            cell: ({ assumes, value, why }) => (value === null ? `No figure: ${why}.` : assumes),
          },
        ]}
      />
    </>
  );
}
