import { href } from '../../app/route.tsx';
import type { PlacedEdge } from './drawing-elk.ts';
import { TextRows } from './drawing-marks.tsx';
import { contentOf, lacksHeard, type Point, type SchematicEdge } from './drawing-shapes.ts';
import { type LineStyle, styleOf } from './drawing-style.ts';

const arrow = { long: 11, half: 5 };
/** The point of the arrow stands at the edge of the port's ring. */
const ring = 4;

const pathOf = (points: readonly Point[]): string =>
  points.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x} ${y}`).join(' ');

/** The line up to its arrow, and the arrow itself. */
function withArrow(points: readonly Point[], weight: number): { readonly path: string; readonly head: string } {
  const [before, end] = points.slice(-2);
  if (before === undefined || end === undefined) return { path: '', head: '' };
  const far = Math.hypot(end.x - before.x, end.y - before.y) || 1;
  const [dx, dy] = [(end.x - before.x) / far, (end.y - before.y) / far];
  const at = (back: number, aside: number): Point => ({
    x: end.x - dx * back - dy * aside,
    y: end.y - dy * back + dx * aside,
  });
  const half = arrow.half + weight / 2;
  const corners = [at(ring, 0), at(ring + arrow.long, half), at(ring + arrow.long, -half)];
  return { path: pathOf([...points.slice(0, -1), at(ring + arrow.long - 1, 0)]), head: `${pathOf(corners)} Z` };
}

/** A stroke in the manner of a fluid, with a rim that lets it be seen where lines cross. */
export function Stroke({ path, style }: { readonly path: string; readonly style: LineStyle }) {
  const { id, weight, dashes } = style;
  return (
    <>
      <path className="drawing-rim" d={path} strokeWidth={weight + 5} />
      <path
        className="drawing-stroke"
        data-fluid={id}
        d={path}
        strokeWidth={weight}
        strokeDasharray={dashes.length === 0 ? undefined : dashes.join(' ')}
      />
    </>
  );
}

/** A line from port to port with its arrow in the direction of flow. */
export function LineFigure({ edge: { label, points } }: { readonly edge: PlacedEdge }) {
  const style = styleOf(label.edge.fluid);
  const { path, head } = withArrow(points, style.weight);
  return (
    <g>
      <Stroke path={path} style={style} />
      <path className="drawing-arrow" data-fluid={style.id} d={head} />
    </g>
  );
}

const heard = (edge: SchematicEdge): string =>
  [`Line ${edge.name}`, contentOf(edge), edge.standing, ...lacksHeard(edge.wrong)].join(', ');

/** The label of a line, which leads to the line. */
export function LabelFigure({ edge: { line, label } }: { readonly edge: PlacedEdge }) {
  return (
    <g transform={`translate(${label.x} ${label.y})`}>
      <a href={href('/plumbing', { line })} aria-label={heard(label.edge)} draggable={false}>
        <rect className="drawing-label" width={label.width} height={label.height} />
        <TextRows rows={label.rows} />
      </a>
    </g>
  );
}
