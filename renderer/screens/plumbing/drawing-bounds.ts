import type { Drawing } from './drawing-elk.ts';
import type { Box, Point } from './drawing-shapes.ts';

const margin = 14;

/** The box around everything that is drawn, with a margin. */
export function boundsOf({ nodes, edges }: Drawing): Box {
  const corners: Point[] = [...nodes, ...edges.map(({ label }) => label)]
    .flatMap(({ x, y, width, height }) => [
      { x, y },
      { x: x + width, y: y + height },
    ])
    .concat(edges.flatMap(({ points }) => points));
  if (corners.length === 0) return { x: 0, y: 0, width: 1, height: 1 };
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs) - margin, Math.min(...ys) - margin];
  return { x, y, width: Math.max(...xs) + margin - x, height: Math.max(...ys) + margin - y };
}
