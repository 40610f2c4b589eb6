import { runsThrough } from './drawing-overlaps.ts';
import type { Box, Point } from './drawing-shapes.ts';
import { waitingLine } from './drawing-waiting.ts';

/** Finds a way at right angles between two points, around everything that has a box. */

/** Room that a line keeps to components and labels, px. */
export const lineRoom = 7;
/** Where the lanes beside a box are, px from it. */
const lane = 12;
/** What a bend, a crossing and running along another line cost, in px of way. */
const cost = { bend: 35, crossing: 12, along: 600 } as const;
/** Lines closer than this run along each other, px. */
const tooClose = 5;

/** A point with the direction in which the line leaves or arrives there. */
export interface Heading extends Point {
  readonly dx: -1 | 1;
}

export interface Obstacles {
  readonly boxes: readonly Box[];
  /** Lines that are there already. */
  readonly lines: readonly (readonly Point[])[];
}

const steps = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** Numbers in order, none hard beside another, with one more in the middle of every wide gap. */
function lanesOf(needed: readonly number[], values: readonly number[]): number[] {
  const lanes = [...new Set(needed)];
  for (const value of values.map(Math.round).sort((a, b) => a - b)) {
    if (!lanes.some((one) => Math.abs(one - value) < tooClose)) lanes.push(value);
  }
  lanes.sort((a, b) => a - b);
  return lanes.flatMap((value, at) => {
    const next = lanes[at + 1];
    return next !== undefined && next - value > 3 * lane ? [value, Math.round((value + next) / 2)] : [value];
  });
}

interface Stretch {
  readonly p: Point;
  readonly q: Point;
  readonly level: boolean;
}

const stretchesOf = (lines: Obstacles['lines']): Stretch[] =>
  lines.flatMap((points) =>
    points.flatMap((p, at) => {
      const q = points[at + 1];
      return q === undefined ? [] : [{ p, q, level: p.y === q.y }];
    }),
  );

/** What it costs besides its length to go from a to b, given what is there already. */
function trouble(a: Point, b: Point, stretches: readonly Stretch[]): number {
  const flat = a.y === b.y;
  let sum = 0;
  for (const { p, q, level } of stretches) {
    if (level === flat) {
      const gap = level ? Math.abs(p.y - a.y) : Math.abs(p.x - a.x);
      if (gap >= tooClose) continue;
      const shared = level ? overlap(a.x, b.x, p.x, q.x) : overlap(a.y, b.y, p.y, q.y);
      if (shared > 0) sum += cost.along + shared;
    } else {
      const [h1, h2, v1, v2] = flat ? [a, b, p, q] : [p, q, a, b];
      if (overlap(h1.x, h2.x, v1.x, v1.x) >= 0 && overlap(v1.y, v2.y, h1.y, h1.y) >= 0) sum += cost.crossing;
    }
  }
  return sum;
}

/** How much of one stretch lies in another; negative when they are apart. */
const overlap = (a1: number, a2: number, b1: number, b2: number): number =>
  Math.min(Math.max(a1, a2), Math.max(b1, b2)) - Math.max(Math.min(a1, a2), Math.min(b1, b2));

/** Only the corners. */
function cornersOf(way: readonly Point[]): Point[] {
  const points = way.filter(({ x, y }, at) => x !== way[at - 1]?.x || y !== way[at - 1]?.y);
  return points.filter((point, at) => {
    const [before, after] = [points[at - 1], points[at + 1]];
    if (before === undefined || after === undefined) return true;
    const level = before.y === point.y && point.y === after.y;
    return !(level || (before.x === point.x && point.x === after.x));
  });
}

/** A way with its cost; null where everything is in the way. */
export function findWay(
  from: Heading,
  to: Heading,
  { boxes, lines }: Obstacles,
): { readonly points: readonly Point[]; readonly cost: number } | null {
  const [start, goal] = [
    { x: Math.round(from.x + from.dx * lane), y: from.y },
    { x: Math.round(to.x - to.dx * lane), y: to.y },
  ];
  const xs = lanesOf(
    [start.x, goal.x],
    boxes.flatMap(({ x, width }) => [x - lane, x + width + lane]),
  );
  const ys = lanesOf(
    [start.y, goal.y],
    boxes.flatMap(({ y, height }) => [y - lane, y + height + lane]),
  );
  const at = (state: number): Point => {
    const cell = Math.floor(state / 4);
    return { x: xs[cell % xs.length] ?? 0, y: ys[Math.floor(cell / xs.length)] ?? 0 };
  };
  const stateOf = (column: number, row: number, turn: number): number => (row * xs.length + column) * 4 + turn;
  const goalCell = ys.indexOf(goal.y) * xs.length + xs.indexOf(goal.x);
  const goalTurn = to.dx === 1 ? 0 : 2;
  const first = stateOf(xs.indexOf(start.x), ys.indexOf(start.y), from.dx === 1 ? 0 : 2);
  const stretches = stretchesOf(lines);
  const best = new Map<number, number>([[first, 0]]);
  const before = new Map<number, number>();
  const passable = new Map<number, number>();
  const far = ({ x, y }: Point): number => Math.abs(x - goal.x) + Math.abs(y - goal.y);
  const waiting = waitingLine();
  waiting.push(first, far(start));
  for (let state = waiting.pop(); state !== undefined; state = waiting.pop()) {
    const sum = best.get(state) ?? 0;
    const cell = Math.floor(state / 4);
    if (cell === goalCell && state % 4 === goalTurn) {
      const points: Point[] = [];
      for (let one: number | undefined = state; one !== undefined; one = before.get(one)) points.push(at(one));
      return { points: cornersOf([from, ...points.reverse(), to].map(({ x, y }) => ({ x, y }))), cost: sum };
    }
    const here = at(state);
    for (const [turn, [dx, dy]] of steps.entries()) {
      if ((turn + 2) % 4 === state % 4) continue;
      const bend = turn === state % 4 ? 0 : cost.bend;
      const [column, row] = [(cell % xs.length) + dx, Math.floor(cell / xs.length) + dy];
      if (cell === goalCell && bend > 0) {
        put(stateOf(cell % xs.length, Math.floor(cell / xs.length), turn), sum + bend, state, here);
        continue;
      }
      if (column < 0 || row < 0 || column >= xs.length || row >= ys.length) continue;
      const next = stateOf(column, row, turn);
      const there = at(next);
      let price = passable.get(next);
      if (price === undefined) {
        const blocked = boxes.some((box) => runsThrough([here, there], box, lineRoom));
        price = blocked ? Number.POSITIVE_INFINITY : wayBetween(here, there) + trouble(here, there, stretches);
        passable.set(next, price);
      }
      if (price !== Number.POSITIVE_INFINITY) put(next, sum + bend + price, state, there);
    }
  }
  return null;

  function put(state: number, sum: number, from: number, there: Point): void {
    if (sum >= (best.get(state) ?? Number.POSITIVE_INFINITY)) return;
    best.set(state, sum);
    before.set(state, from);
    waiting.push(state, sum + far(there));
  }
}

const wayBetween = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
