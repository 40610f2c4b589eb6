import type { SchematicView } from '../../../core/contract/plumbing.ts';
import type { Drawing, PlacedEdge, PlacedNode } from './drawing-elk.ts';
import { boxesOverlap, runsThrough } from './drawing-overlaps.ts';
import { findWay, type Heading, lineRoom, type Obstacles } from './drawing-route.ts';
import type { Box, LabelShape, Point } from './drawing-shapes.ts';

/** Puts components where somebody moved them, and leads the lines anew where that is needed. */

export type Places = SchematicView['places'];

/** Least room between two components, px: a line passes, and the layout leaves more. */
const apart = 24;
const step = 10;
/** How much longer a way may be so that a label needn't leave its place, px. */
const worthStaying = 160;

/** The place nearest to the wanted one where a box has room. Beyond the search, the wanted one. */
export function freePlace(box: Box, taken: readonly Box[], room = apart): Point {
  const free = (x: number, y: number): boolean => !taken.some((other) => boxesOverlap({ ...box, x, y }, other, room));
  if (free(box.x, box.y)) return { x: box.x, y: box.y };
  for (let ring = 1; ring < 400; ring += 1) {
    let best: Point | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (let side = -ring; side <= ring; side += 1) {
      for (const [dx, dy] of [
        [side, -ring],
        [side, ring],
        [-ring, side],
        [ring, side],
      ] as const) {
        const [x, y] = [box.x + dx * step, box.y + dy * step];
        const way = Math.hypot(dx, dy);
        if (way < least && free(x, y)) {
          best = { x, y };
          least = way;
        }
      }
    }
    if (best !== null) return best;
  }
  return { x: box.x, y: box.y };
}

function settle(nodes: readonly PlacedNode[], places: Places, last: string | undefined): PlacedNode[] {
  const rank = ({ id }: PlacedNode): number => (id === last ? 2 : places[id] === undefined ? 1 : 0);
  const settled = new Map<string, PlacedNode>();
  for (const node of nodes.toSorted((a, b) => rank(a) - rank(b))) {
    const wanted = { ...node, ...places[node.id] };
    settled.set(node.id, { ...node, ...freePlace(wanted, [...settled.values()]) });
  }
  return nodes.map((node) => settled.get(node.id) ?? node);
}

/** Where the end of a line stands, and in which direction it leaves the component. */
function headingAt(nodes: ReadonlyMap<string, PlacedNode>, end: { node: string; port: string }): Heading | undefined {
  const node = nodes.get(end.node);
  const port = node?.shape.ports.find(({ id }) => id === end.port);
  if (node === undefined || port === undefined) return undefined;
  const right = port.side === 'right';
  return { x: node.x + (right ? node.width : 0), y: node.y + port.y, dx: right ? 1 : -1 };
}

const shifts = Array.from({ length: 41 }, (_, at) => (at % 2 === 0 ? 1 : -1) * Math.ceil(at / 2) * 26);

interface Spot extends Point {
  /** From which side the line enters the label: 1 from the left. */
  readonly dx: -1 | 1;
  readonly way: number;
}

/** Spots for a label between two ends: where it was, if that is free, then those of the shortest way. */
function spotsOf(from: Heading, to: Heading, { x, y, width, height }: LabelShape & Box, obstacles: Obstacles): Spot[] {
  const spots: Spot[] = [];
  for (const dx of [1, -1] as const) {
    for (const shiftX of shifts) {
      for (const shiftY of shifts) {
        const middle = { x: (from.x + to.x) / 2 + shiftX, y: (from.y + to.y) / 2 + shiftY };
        for (const y of shiftY === 0 ? [middle.y, from.y, to.y] : [middle.y]) {
          const [enter, leave] = [middle.x - (dx * width) / 2, middle.x + (dx * width) / 2];
          const back = (from.dx * (enter - from.x) < 24 ? 120 : 0) + (-to.dx * (to.x - leave) < 24 ? 120 : 0);
          const bends = (Math.abs(y - from.y) < 1 ? 0 : 60) + (Math.abs(y - to.y) < 1 ? 0 : 60);
          const way = Math.abs(enter - from.x) + Math.abs(y - from.y) + Math.abs(to.x - leave) + Math.abs(to.y - y);
          spots.push({ x: middle.x - width / 2, y: y - height / 2, dx, way: way + back + bends });
        }
      }
    }
  }
  const free = (spot: Point): boolean =>
    !obstacles.boxes.some((box) => boxesOverlap({ ...spot, width, height }, box, 2 * lineRoom + 6)) &&
    !obstacles.lines.some((points) => runsThrough(points, { ...spot, width, height }, lineRoom));
  const found = ([1, -1] as const).map((dx) => ({ x, y, dx, way: 0 })).filter(free);
  const most = found.length + 2;
  // Spots hard beside one another lead to the same way: only ones that differ are worth trying.
  const isNew = (spot: Spot): boolean =>
    found.every((one) => Math.abs(one.x - spot.x) + Math.abs(one.y - spot.y) > height || one.dx !== spot.dx);
  for (const spot of spots.sort((one, other) => one.way - other.way)) {
    if (isNew(spot) && free(spot)) found.push(spot);
    if (found.length === most) break;
  }
  return found;
}

/** Leads one line from port to port through a free spot for its label. */
function lead(label: LabelShape & Box, from: Heading, to: Heading, obstacles: Obstacles): PlacedEdge | undefined {
  const arriving: Heading = { ...to, dx: to.dx === 1 ? -1 : 1 };
  let best: { readonly edge: PlacedEdge; readonly cost: number } | undefined;
  for (const { x, y, dx } of spotsOf(from, to, label, obstacles)) {
    const box = { ...label, x, y };
    const [left, right] = [x, x + label.width];
    const enter: Heading = { x: dx === 1 ? left : right, y: y + label.height / 2, dx };
    const leave: Heading = { ...enter, x: dx === 1 ? right : left };
    const around = { ...obstacles, boxes: [...obstacles.boxes, box] };
    const one = findWay(from, enter, around);
    if (one === null) continue;
    const other = findWay(leave, arriving, { ...around, lines: [...obstacles.lines, one.points] });
    if (other === null) continue;
    const stays = x === label.x && y === label.y;
    const cost = one.cost + other.cost - (stays ? worthStaying : 0);
    if (best === undefined || cost < best.cost) {
      best = { edge: { line: label.edge.line, label: box, points: [...one.points, ...other.points] }, cost };
    }
  }
  return best?.edge;
}

/**
 * The drawing with components at their places. What nobody moved stays where it was laid out, unless something stands
 * there now; lines keep their way while nothing of theirs was moved and nothing stands in it.
 * @param last the component moved last: it gives way to the others.
 */
export function drawingAt(drawing: Drawing, places: Places, last?: string): Drawing {
  const laidOut = new Map(drawing.nodes.map((node) => [node.id, node]));
  const nodes = settle(drawing.nodes, places, last);
  const moved = nodes.filter(({ id, x, y }) => {
    const before = laidOut.get(id);
    return before === undefined || Math.abs(before.x - x) > 0.5 || Math.abs(before.y - y) > 0.5;
  });
  if (moved.length === 0) return drawing;
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const movedIds = new Set(moved.map(({ id }) => id));
  const stands = ({ label, points }: PlacedEdge): boolean =>
    !movedIds.has(label.edge.from.node) &&
    !movedIds.has(label.edge.to.node) &&
    !moved.some((box) => boxesOverlap(label, box, lineRoom) || runsThrough(points, box, lineRoom));
  const done = new Map(drawing.edges.filter(stands).map((edge) => [edge.line, edge]));
  const ends = (edge: PlacedEdge) => {
    const [from, to] = [headingAt(byId, edge.label.edge.from), headingAt(byId, edge.label.edge.to)];
    return from === undefined || to === undefined
      ? []
      : [{ edge, from, to, far: Math.hypot(to.x - from.x, to.y - from.y) }];
  };
  const open = drawing.edges.filter(({ line }) => !done.has(line)).flatMap(ends);
  for (const { edge, from, to } of open.sort((a, b) => a.far - b.far)) {
    const edges = [...done.values()];
    const obstacles = {
      boxes: [...nodes, ...edges.map(({ label }) => label)],
      lines: edges.map(({ points }) => points),
    };
    done.set(edge.line, lead(edge.label, from, to, obstacles) ?? straight(edge, from, to));
  }
  return { nodes, edges: drawing.edges.flatMap(({ line }) => done.get(line) ?? []) };
}

/** Where no way is free: straight across, with the label in the middle. */
function straight({ line, label }: PlacedEdge, from: Heading, to: Heading): PlacedEdge {
  const [x, y] = [(from.x + to.x - label.width) / 2, (from.y + to.y - label.height) / 2];
  const middle = (from.x + to.x) / 2;
  return { line, label: { ...label, x, y }, points: [from, { x: middle, y: from.y }, { x: middle, y: to.y }, to] };
}
