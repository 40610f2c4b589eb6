import { lazy } from 'react';
import { ChartFrame } from './chart.tsx';
import { type Column, SimpleTable } from './simple-table.tsx';

// With the drawing library, only once a curve is drawn.
const CurveDrawing = lazy(() => import('./curve-drawing.tsx'));

export interface CurvePoint {
  readonly x: number;
  /** Nothing where there is no result. */
  readonly y: number | null;
  readonly level: 'none' | 'warning' | 'grave' | 'refused';
  readonly remark: string;
}

export interface CurveProps {
  /** The sentence that says what the curve shows. */
  readonly title: string;
  readonly xName: string;
  readonly yName: string;
  /** In rising order of x. */
  readonly points: readonly CurvePoint[];
  /** Where along x there are warnings, or nothing is drawn. */
  readonly stretches: readonly { readonly from: number; readonly to: number; readonly level: CurvePoint['level'] }[];
  /** Where things stand now. */
  readonly present: { readonly x: number; readonly y: number } | null;
  readonly xText: (value: number) => string;
  readonly yText: (value: number) => string;
}

const levelWords = { none: '', warning: 'Warning. ', grave: 'Danger. ', refused: 'No result. ' } as const;

/** One figure over another: a line with the present point, and the same figures as a table on request. */
export function Curve(props: CurveProps) {
  const { title, xName, yName, points, xText, yText } = props;
  const columns: readonly Column<CurvePoint>[] = [
    { id: 'x', title: xName, rowHeader: true, cell: ({ x }) => xText(x), sortBy: ({ x }) => x },
    { id: 'y', title: yName, figures: true, cell: ({ y }) => (y === null ? 'none' : yText(y)) },
    { id: 'remark', title: 'Remark', cell: ({ level, remark }) => `${levelWords[level]}${remark}` },
  ];
  // Every fourth point is enough to read; the first and the last are among them.
  const every = Math.max(1, Math.ceil((points.length - 1) / 12));
  const rows = points.filter((_, index) => index % every === 0 || index === points.length - 1);
  return (
    <ChartFrame
      title={title}
      unit={{ kind: 'count', name: '' }}
      drawing={<CurveDrawing {...props} />}
      table={<SimpleTable caption={title} captionHidden columns={columns} rows={rows} rowKey={({ x }) => String(x)} />}
    />
  );
}
