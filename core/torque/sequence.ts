/**
 * In which order the bolts of a group are tightened, and where they lie on the drawing. Bolts are numbered from 1: round
 * a circle clockwise from the top, or row by row from the left. The maker's sequence goes before any of these.
 */
import { Refusal } from '../refusal.ts';

/** A place on the drawing, 0 to 1 from the left and from the top. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Steps round the circle between two of `count` bolts, the shorter way. */
export function stepsApart(count: number, one: number, other: number): number {
  const apart = Math.abs(one - other) % count;
  return Math.min(apart, count - apart);
}

/**
 * Star on a bolt circle: every next bolt lies opposite the last. With an even number each pair is exactly opposite, and
 * the next pair begins furthest from all that are tight; with an odd number every step is half the circle less half a
 * pitch, which comes round to each bolt once, since (n − 1)/2 and n have no common factor.
 * Source: common practice, no published source.
 * @param count whole bolts, 1 to 1000.
 */
export function starSequence(count: number): number[] {
  if (count % 2 === 1) {
    const step = (count - 1) / 2;
    return Array.from({ length: count }, (_, index) => ((index * step) % count) + 1);
  }
  const half = count / 2;
  const order: number[] = [];
  // How far each bolt lies from the nearest one that is tight.
  const nearest = new Map(Array.from({ length: count }, (_, index) => [index + 1, count]));
  const tighten = (bolt: number): void => {
    order.push(bolt);
    nearest.delete(bolt);
    for (const [other, steps] of nearest) nearest.set(other, Math.min(steps, stepsApart(count, bolt, other)));
  };
  while (nearest.size > 0) {
    const last = order.at(-1);
    let chosen = 1;
    let best = -1;
    for (const [bolt, steps] of last === undefined ? [] : nearest) {
      const worth = steps * count + stepsApart(count, bolt, last ?? bolt);
      if (worth > best) [best, chosen] = [worth, bolt];
    }
    const opposite = ((chosen - 1 + half) % count) + 1;
    tighten(chosen);
    if (nearest.has(opposite)) tighten(opposite);
  }
  return order;
}

interface GridPlace {
  readonly bolt: number;
  readonly column: number;
  readonly row: number;
}

/** Places row by row; a last row that isn't full is spread over the width. */
function gridPlaces(count: number, rows: number): { places: GridPlace[]; columns: number; rows: number } {
  const used = Math.min(Math.max(1, rows), count);
  const columns = Math.ceil(count / used);
  const places = Array.from({ length: count }, (_, index) => {
    const row = Math.floor(index / columns);
    const inRow = Math.min(columns, count - row * columns);
    return { bolt: index + 1, column: (index % columns) + (columns - inRow) / 2, row };
  });
  return { places, columns, rows: Math.ceil(count / columns) };
}

/**
 * From the middle outwards in a spiral, for bolts in rows: every next bolt lies as far from the middle as the last, or
 * further; those equally far are taken clockwise. Distances are in pitches of the rows and columns.
 * Source: common practice, no published source.
 * @param count whole bolts, 1 to 1000. @param rows 1 or more; more rows than bolts count as one bolt a row.
 */
export function spiralSequence(count: number, rows: number): number[] {
  const { places, columns, rows: used } = gridPlaces(count, rows);
  return places
    .map((place) => {
      const x = place.column - (columns - 1) / 2;
      const y = place.row - (used - 1) / 2;
      // Twice the places are whole numbers or halves, so the square is exact and ties are ties.
      return { bolt: place.bolt, square: 4 * (x * x + y * y), turn: (Math.atan2(x, -y) + 2 * Math.PI) % (2 * Math.PI) };
    })
    .sort((one, other) => one.square - other.square || one.turn - other.turn || one.bolt - other.bolt)
    .map(({ bolt }) => bolt);
}

/** @throws Refusal `bad-input` unless the order names every bolt of the group once. */
export function customSequence(order: readonly number[], count: number): number[] {
  const missing = Array.from({ length: count }, (_, index) => index + 1).filter((bolt) => !order.includes(bolt));
  if (order.length === count && missing.length === 0) return [...order];
  const problem =
    missing.length > 0
      ? `leaves out ${missing.slice(0, 12).join(', ')}`
      : `names ${order.length} bolts, and the group has ${count}`;
  throw new Refusal('bad-input', `The order of the bolts ${problem}. Nothing was changed.`, {
    field: 'order',
    accepted: `each number from 1 to ${count} once`,
  });
}

/** Spots of a bolt circle, from the top clockwise; a single bolt lies in the middle. */
export function circleSpots(count: number): Spot[] {
  if (count === 1) return [{ x: 0.5, y: 0.5 }];
  return Array.from({ length: count }, (_, index) => {
    const turn = (2 * Math.PI * index) / count;
    return { x: 0.5 + 0.42 * Math.sin(turn), y: 0.5 - 0.42 * Math.cos(turn) };
  });
}

/** Spots of bolts in rows, row by row from the left. */
export function rowSpots(count: number, rows: number): Spot[] {
  const { places, columns, rows: used } = gridPlaces(count, rows);
  return places.map(({ column, row }) => ({ x: (column + 0.5) / columns, y: (row + 0.5) / used }));
}
