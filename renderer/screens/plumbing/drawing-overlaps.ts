import type { Drawing, PlacedEdge } from './drawing-elk.ts';
import type { Box, Point } from './drawing-shapes.ts';

/** Two things of a drawing that lie on one another, in words. */
export interface Overlap {
  readonly one: string;
  readonly other: string;
}

/** Touching isn't overlapping; rounding in the layout may be this much, px. */
const slack = 0.5;

export const boxesOverlap = (a: Box, b: Box, room = 0): boolean =>
  a.x < b.x + b.width + room - slack &&
  b.x < a.x + a.width + room - slack &&
  a.y < b.y + b.height + room - slack &&
  b.y < a.y + a.height + room - slack;

/** The stretch between two corners as a box without width or height. */
export const stretchBox = (from: Point, to: Point): Box => ({
  x: Math.min(from.x, to.x),
  y: Math.min(from.y, to.y),
  width: Math.abs(to.x - from.x),
  height: Math.abs(to.y - from.y),
});

/** Whether a line at right angles goes through the inside of a box, `room` px around it counted in. */
export const runsThrough = (points: readonly Point[], box: Box, room = 0): boolean =>
  points.some((point, at) => {
    const next = points[at + 1];
    if (next === undefined) return false;
    const stretch = stretchBox(point, next);
    return (
      stretch.x < box.x + box.width + room - slack &&
      stretch.x + stretch.width > box.x - room + slack &&
      stretch.y < box.y + box.height + room - slack &&
      stretch.y + stretch.height > box.y - room + slack
    );
  });

const nameOf = ({ label }: PlacedEdge): string => `label “${label.edge.name}”`;

/**
 * Everything in a drawing that hides something: components and labels on one another, and lines through a component
 * or through the label of another line. Lines may cross each other, and each runs under its own label.
 */
export function overlapsIn({ nodes, edges }: Drawing): readonly Overlap[] {
  const boxes = [
    ...nodes.map((box) => ({ box: box as Box, name: `component “${box.shape.node.title}”`, line: null })),
    ...edges.map((edge) => ({ box: edge.label as Box, name: nameOf(edge), line: edge.line })),
  ];
  const found: Overlap[] = [];
  for (const [at, a] of boxes.entries()) {
    for (const b of boxes.slice(at + 1)) {
      if (boxesOverlap(a.box, b.box)) found.push({ one: a.name, other: b.name });
    }
    for (const { line, label, points } of edges) {
      if (line !== a.line && runsThrough(points, a.box))
        found.push({ one: `line “${label.edge.name}”`, other: a.name });
    }
  }
  return found;
}
