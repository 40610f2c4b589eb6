import type { Mark, TextRow } from './drawing-shapes.ts';
import { markWidth } from './drawing-shapes.ts';

/** Each in a square of 12: outlines that differ without any colour. */
const shapes: Readonly<Record<Mark, string>> = {
  made: 'M1 6.5 L4.5 10 L11 2.5',
  'not made':
    'M6 1.2 A4.8 4.8 0 0 1 10.2 3.7 M10.8 6.6 A4.8 4.8 0 0 1 8.2 10.3 M5.4 10.8 A4.8 4.8 0 0 1 1.6 8 M1.3 5 A4.8 4.8 0 0 1 3.4 2',
  unfit: 'M3.6 1 H8.4 L11 3.6 V8.4 L8.4 11 H3.6 L1 8.4 V3.6 Z M4 4 L8 8 M8 4 L4 8',
  wrong: 'M2 2 L10 10 M10 2 L2 10',
  missing: 'M6 1.2 L11.2 10.6 H0.8 Z M6 4.6 V7.4 M6 8.7 V9.3',
};

/** The shape that stands before a word. */
export function MarkShape({ mark, x, y, size }: { mark: Mark; x: number; y: number; size: number }) {
  return <path className="drawing-mark" d={shapes[mark]} transform={`translate(${x} ${y}) scale(${size / 12})`} />;
}

/** Rows of text as they were measured. The space behind each keeps their words apart where the rows are read as one. */
export function TextRows({ rows }: { readonly rows: readonly TextRow[] }) {
  return rows.map(({ text, x, y, size, bold, tone, mark }) => (
    <g key={`${y} ${text}`} data-tone={tone}>
      {mark !== null && <MarkShape mark={mark} x={x - size * markWidth} y={y - size * 0.82} size={size * 0.9} />}
      <text x={x} y={y} fontSize={size} className={bold ? 'drawing-bold' : undefined}>
        {`${text} `}
      </text>
    </g>
  ));
}
