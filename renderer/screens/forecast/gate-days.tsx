import { lazy } from 'react';
import type { ForecastAnswer } from '../../../core/forecast/view.ts';
import { ChartFrame } from '../../parts/chart.tsx';
import { DateText } from '../../parts/figures.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { cumulative, type GatePoint, marksOf } from './gate-points.ts';

// With the drawing library, only once a picture is drawn.
const GateDrawing = lazy(() => import('./gate-drawing.tsx'));

export type GateView = ForecastAnswer['gates'][number];

const percent = (share: number): string => `${Math.round(share * 1000) / 10} %`;

/** On which day the gate is reached in how many of the runs: the picture, and its figures as a table. */
export function GateDays({ gate, today }: { readonly gate: GateView; readonly today: string }) {
  const points = cumulative(gate.runsByDay);
  const title = `Share of runs in which ${gate.name} is reached by each day`;
  const columns: readonly Column<GatePoint>[] = [
    { id: 'on', title: 'By', rowHeader: true, cell: ({ on }) => <DateText date={on} />, sortBy: ({ on }) => on },
    { id: 'share', title: 'Of the runs', figures: true, cell: ({ share }) => percent(share) },
    { id: 'runs', title: 'On this day', figures: true, cell: ({ runs }) => runs },
  ];
  return (
    <ChartFrame
      title={title}
      unit={{ kind: 'count', name: '% of runs' }}
      drawing={<GateDrawing points={points} marks={marksOf(gate)} today={today} label={title} />}
      table={<SimpleTable caption={title} captionHidden columns={columns} rows={points} rowKey={({ on }) => on} />}
    />
  );
}
