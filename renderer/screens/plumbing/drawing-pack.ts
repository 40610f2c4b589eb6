import { boundsOf } from './drawing-bounds.ts';
import type { Drawing } from './drawing-elk.ts';
import { boxesOverlap } from './drawing-overlaps.ts';
import type { Box, Point } from './drawing-shapes.ts';

/** Groups without a line between them, put side by side so that the whole can be shown as large as possible. */

/** Width to height of the window and of a sheet of paper, between the two. */
const wanted = 1.65;
/** Room between two groups, px. */
const apart = 18;
const widths = [1, 1.1, 1.25, 1.4, 1.6, 1.8, 2.1, 2.5, 3, 4];

/** The parts of the drawing that hang together. */
function groupsOf({ nodes, edges }: Drawing): Drawing[] {
  const group = new Map(nodes.map(({ id }) => [id, id]));
  const rootOf = (id: string): string => {
    let root = id;
    for (let up = group.get(root); up !== undefined && up !== root; up = group.get(root)) root = up;
    return root;
  };
  for (const { label } of edges) group.set(rootOf(label.edge.from.node), rootOf(label.edge.to.node));
  const edgesOf = Map.groupBy(edges, ({ label }) => rootOf(label.edge.from.node));
  return [...Map.groupBy(nodes, ({ id }) => rootOf(id))].map(([root, own]) => ({
    nodes: own,
    edges: edgesOf.get(root) ?? [],
  }));
}

const shifted = <Thing extends Point>(thing: Thing, by: Point): Thing => ({
  ...thing,
  x: thing.x + by.x,
  y: thing.y + by.y,
});

const shiftedDrawing = ({ nodes, edges }: Drawing, by: Point): Drawing => ({
  nodes: nodes.map((node) => shifted(node, by)),
  edges: edges.map((edge) => ({
    ...edge,
    label: shifted(edge.label, by),
    points: edge.points.map((point) => shifted(point, by)),
  })),
});

/** Each box as high up as it goes on a sheet of some width, then as far to the left. */
function placeOn(sheet: number, boxes: readonly Box[]): Box[] {
  const placed: Box[] = [];
  for (const { width, height } of boxes) {
    const xs = [0, ...placed.map((box) => box.x + box.width + apart)].filter((x) => x + width <= sheet);
    const ys = [0, ...placed.map((box) => box.y + box.height + apart)].sort((a, b) => a - b);
    const spots = ys.flatMap((y) => xs.map((x) => ({ x, y, width, height })));
    const spot = spots.find((one) => !placed.some((other) => boxesOverlap(one, other, apart)));
    placed.push(spot ?? { x: 0, y: (ys.at(-1) ?? 0) + apart, width, height });
  }
  return placed;
}

const extent = (boxes: readonly Box[]): number =>
  Math.max(Math.max(...boxes.map(({ x, width }) => x + width)) / wanted, ...boxes.map(({ y, height }) => y + height));

/** How high a sheet of the wanted form must be for the drawing. */
export const sheetHeight = (drawing: Drawing): number => {
  const { width, height } = boundsOf(drawing);
  return Math.max(width / wanted, height);
};

/** The drawing with its groups close together, the largest first. */
export function packed(drawing: Drawing): Drawing {
  const groups = groupsOf(drawing)
    .map((group) => ({ group, box: boundsOf(group) }))
    .sort((a, b) => b.box.width * b.box.height - a.box.width * a.box.height);
  if (groups.length === 0) return drawing;
  const boxes = groups.map(({ box }) => box);
  const widest = Math.max(...boxes.map(({ width }) => width));
  const best = widths
    .map((factor) => placeOn(widest * factor, boxes))
    .reduce((one, other) => (extent(other) < extent(one) ? other : one));
  const moved = groups.map(({ group, box }, at) => {
    const { x = 0, y = 0 } = best[at] ?? {};
    return shiftedDrawing(group, { x: x - box.x, y: y - box.y });
  });
  return { nodes: moved.flatMap(({ nodes }) => nodes), edges: moved.flatMap(({ edges }) => edges) };
}
