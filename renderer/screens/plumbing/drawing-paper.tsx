import { boundsOf } from './drawing-bounds.ts';
import type { Drawing } from './drawing-elk.ts';
import { LabelFigure, LineFigure } from './drawing-line.tsx';
import { NodeFigure } from './drawing-node.tsx';

/** The whole drawing on one sheet of paper; only printed. */
export function OnPaper({ drawing }: { readonly drawing: Drawing }) {
  const { x, y, width, height } = boundsOf(drawing);
  return (
    <svg className="drawing-paper" viewBox={`${x} ${y} ${width} ${height}`} aria-hidden>
      {drawing.edges.map((edge) => (
        <LineFigure key={edge.line} edge={edge} />
      ))}
      {drawing.edges.map((edge) => (
        <LabelFigure key={edge.line} edge={edge} />
      ))}
      {drawing.nodes.map((node) => (
        <g key={node.id} transform={`translate(${node.x} ${node.y})`}>
          <NodeFigure shape={node.shape} />
        </g>
      ))}
    </svg>
  );
}
