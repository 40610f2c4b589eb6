import type { WhyFigure } from '../../../core/contract/journal.ts';
import type { ProgressMeasures } from '../../../core/contract/plan.ts';
import { AskedFigure, FigureList } from '../../parts/asked-figure.tsx';
import { hoursText } from '../../parts/minutes.ts';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import type { Reading } from './reading.ts';

type Stage = 'received' | 'fitted' | 'verified';
type Way = 'byLine' | 'byQuantity' | 'byValue';

const stages = [
  { stage: 'received', title: 'Received', figure: 'received-share' },
  { stage: 'fitted', title: 'Fitted', figure: 'fitted-share' },
  { stage: 'verified', title: 'Verified', figure: 'verified-share' },
] as const satisfies readonly { stage: Stage; title: string; figure: WhyFigure }[];
type StageRow = (typeof stages)[number];

const ways = [
  { way: 'byLine', title: 'By line' },
  { way: 'byQuantity', title: 'By quantity' },
  { way: 'byValue', title: 'By value' },
] as const satisfies readonly { way: Way; title: string }[];

/** How far the build is, by every measure, side by side: none of them alone says it. */
export function Measures({ measures, reading }: { readonly measures: ProgressMeasures; readonly reading: Reading }) {
  const columns: readonly Column<StageRow>[] = [
    { id: 'stage', title: 'Parts', rowHeader: true, cell: ({ title }) => title },
    ...ways.map(
      ({ way, title }): Column<StageRow> => ({
        id: way,
        title,
        figures: true,
        cell: (row) => {
          const share = measures[row.stage][way];
          return (
            <AskedFigure of={`parts ${row.stage} ${title.toLowerCase()}`} why={{ ...reading, figure: row.figure }}>
              {share.text}
              {way === 'byLine' && share.share !== null && (
                <span className="measure-of">
                  {' '}
                  {share.done} of {share.of}
                </span>
              )}
            </AskedFigure>
          );
        },
      }),
    ),
  ];
  const { byCount, byWeight } = measures.jobs;
  return (
    <section className="plan-measures" aria-labelledby="measures">
      <h2 id="measures">How far it is</h2>
      <FigureList
        figures={[
          {
            label: 'Jobs done, by count',
            why: { ...reading, figure: 'jobs-share' },
            figure: byCount.text,
            ...(byCount.share === null ? {} : { note: `${byCount.done} of ${byCount.of}` }),
          },
          {
            label: 'Jobs done, by weight of work',
            why: { ...reading, figure: 'jobs-share' },
            figure: byWeight.text,
            ...(byWeight.share === null
              ? {}
              : { note: `${hoursText(byWeight.done)} of ${hoursText(byWeight.of)} guessed` }),
          },
          {
            label: 'Estimate spent',
            why: { ...reading, figure: 'spend-share' },
            figure: measures.spend.text,
          },
        ]}
      />
      <SimpleTable
        caption="Parts on their way to the engine"
        captionHidden
        columns={columns}
        rows={stages}
        rowKey={({ stage }) => stage}
      />
    </section>
  );
}
