import { Stroke } from './drawing-line.tsx';
import { MarkShape } from './drawing-marks.tsx';
import type { Mark } from './drawing-shapes.ts';
import { stylesIn } from './drawing-style.ts';

const marks: readonly (readonly [Mark, string])[] = [
  ['made', 'made'],
  ['not made', 'not made'],
  ['unfit', 'unfit: fails a check'],
  ['missing', 'missing or not known'],
  ['wrong', 'wrong'],
];

/** How the fluids of this drawing and the marks before words are drawn. */
export function Legend({ fluids }: { readonly fluids: readonly string[] }) {
  return (
    <ul className="drawing-legend" aria-label="How lines and marks are drawn">
      {stylesIn(fluids).map((style) => (
        <li key={style.id}>
          <svg aria-hidden width={64} height={14}>
            <Stroke path="M0 7 H64" style={style} />
          </svg>
          {style.label}
        </li>
      ))}
      {marks.map(([mark, words]) => (
        <li key={mark}>
          <svg aria-hidden width={16} height={16} className="drawing-legend-mark">
            <MarkShape mark={mark} x={2} y={2} size={12} />
          </svg>
          {words}
        </li>
      ))}
      <li>
        <svg aria-hidden width={16} height={16}>
          <circle className="drawing-port" data-open cx={8} cy={8} r={4} />
        </svg>
        nothing joins the port
      </li>
    </ul>
  );
}
