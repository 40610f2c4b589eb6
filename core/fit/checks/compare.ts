import { fit as judge } from '../fit.ts';
import { parsePort } from '../parse.ts';
import { plain } from '../thread.ts';
import type { ComparingCheck } from './check.ts';
import { converter, type Side } from './sides.ts';

/** How two filled sides compare. `problem` says what is missing to judge. */
export type Compared =
  | {
      readonly holds: boolean;
      readonly marginLeft?: number;
      readonly unit?: string;
      readonly notes: readonly string[];
      readonly reason?: string;
    }
  | { readonly problem: string };

/** Sums and conversions leave the last bits open. */
const rounding = 1e-9;

const sameText = (one: string, other: string): boolean =>
  one.toLowerCase().replace(/\s+/g, '') === other.toLowerCase().replace(/\s+/g, '');

type Scalar = Extract<Side, { readonly is: 'number' }>;
type Span = Extract<Side, { readonly is: 'range' }>;

const noMargin = (holds: boolean, notes: readonly string[] = []): Compared => ({ holds, notes });

const withMargin = (left: number, holds: boolean, unit: string | undefined, notes: readonly string[]): Compared => ({
  holds,
  marginLeft: Number(left.toFixed(9)),
  ...(unit === undefined ? {} : { unit }),
  notes,
});

function equal(left: Side, right: Side, ambientBar: number | undefined): boolean | { readonly problem: string } {
  if (left.is === 'number' && right.is === 'number') {
    const way = converter(left, right, ambientBar);
    if ('problem' in way) return way;
    const value = way.convert(left.value);
    return Math.abs(value - right.value) <= rounding * Math.max(1, Math.abs(right.value));
  }
  if (left.is === 'text' && right.is === 'text') return sameText(left.value, right.value);
  if (left.is === 'yes-no' && right.is === 'yes-no') return left.value === right.value;
  if (left.is === 'range' && right.is === 'range') {
    const way = converter(left, right, ambientBar);
    if ('problem' in way) return way;
    const near = (one: number, other: number): boolean => one === other || Math.abs(one - other) <= rounding;
    return near(way.convert(left.min), right.min) && near(way.convert(left.max), right.max);
  }
  if (left.is === 'list' && right.is === 'list') {
    if (left.items.length !== right.items.length) return false;
    for (const [at, item] of left.items.entries()) {
      const other = right.items[at];
      const same = other === undefined ? false : equal(item, other, ambientBar);
      if (same !== true) return same;
    }
    return true;
  }
  return { problem: 'two sides of the same sort' };
}

function order(op: 'le' | 'ge' | 'lt' | 'gt', left: Scalar, right: Scalar, ambientBar: number | undefined): Compared {
  const way = converter(left, right, ambientBar);
  if ('problem' in way) return way;
  const value = way.convert(left.value);
  const room = op === 'le' || op === 'lt' ? right.value - value : value - right.value;
  const margin = right.margin ?? 0;
  const holds = op === 'lt' || op === 'gt' ? room - margin > rounding : room - margin >= -rounding;
  return withMargin(room, holds, right.unit, way.notes);
}

function sum(
  list: Side,
  unitLike: Scalar,
  ambientBar: number | undefined,
): { readonly value: number; readonly notes: readonly string[] } | { readonly problem: string } {
  const items = list.is === 'list' ? list.items : [list];
  let value = 0;
  const notes: string[] = [];
  for (const item of items) {
    if (item.is !== 'number') return { problem: 'numbers to add up' };
    const way = converter(item, unitLike, ambientBar);
    if ('problem' in way) return way;
    value += way.convert(item.value);
    notes.push(...way.notes);
  }
  return { value, notes: [...new Set(notes)] };
}

/** Room on the closer side of the range; an open side has room without end. */
function roomIn(range: Span, least: number, most: number): number {
  return Math.min(range.max - most, least - range.min);
}

function inside(range: Span, what: Side, ambientBar: number | undefined, margin: number): Compared {
  if (what.is !== 'number' && what.is !== 'range') return { problem: 'a number or a range' };
  const way = converter(what, range, ambientBar);
  if ('problem' in way) return way;
  const [least, most] = what.is === 'number' ? [what.value, what.value] : [what.min, what.max];
  const room = roomIn(range, way.convert(least), way.convert(most));
  const holds = room - margin >= -rounding;
  return Number.isFinite(room) ? withMargin(room, holds, range.unit, way.notes) : noMargin(holds, way.notes);
}

function isAmong(what: Side, list: Side, ambientBar: number | undefined): boolean | { readonly problem: string } {
  const items = list.is === 'list' ? list.items : [list];
  for (const item of items) if (equal(what, item, ambientBar) === true) return true;
  return false;
}

function joined(left: Side, right: Side, role: ComparingCheck['role']): Compared {
  if (left.is !== 'text' || right.is !== 'text') return { problem: 'ports as text, such as M14x1.5 male' };
  const context = role === undefined ? {} : { role };
  const one = parsePort(left.value, context);
  if (!one.ok) return { problem: `the port “${left.value}” (${one.message})` };
  const other = parsePort(right.value, context);
  if (!other.ok) return { problem: `the port “${right.value}” (${other.message})` };
  const found = judge(one.port, other.port, context);
  if (found.verdict === 'unknown') return { problem: found.missing.join('; ') };
  return {
    holds: found.verdict === 'mates',
    notes: found.needs.map((need) => `Needs: ${need}.`),
    reason: found.reason,
  };
}

/** Compares two filled sides; never passes what it can't compare. */
export function compare(check: ComparingCheck, left: Side, right: Side, ambientBar: number | undefined): Compared {
  const { op, tol = 0 } = check;
  const wrongSort = { problem: 'two sides of the sort that this check compares' };
  const plainly = (found: boolean | { readonly problem: string }, wanted = true): Compared =>
    typeof found === 'boolean' ? noMargin(found === wanted) : found;
  switch (op) {
    case 'eq':
      return plainly(equal(left, right, ambientBar));
    case 'ne':
      return plainly(equal(left, right, ambientBar), false);
    case 'near': {
      if (left.is !== 'number' || right.is !== 'number') return wrongSort;
      const way = converter(left, right, ambientBar);
      if ('problem' in way) return way;
      const room = tol - Math.abs(way.convert(left.value) - right.value);
      return withMargin(room, room >= -rounding, right.unit, way.notes);
    }
    case 'le':
    case 'ge':
    case 'lt':
    case 'gt':
      return left.is === 'number' && right.is === 'number' ? order(op, left, right, ambientBar) : wrongSort;
    case 'within':
      return right.is === 'range' ? inside(right, left, ambientBar, 0) : wrongSort;
    case 'covers':
      return left.is === 'range'
        ? inside(left, right, ambientBar, right.is === 'number' ? (right.margin ?? 0) : 0)
        : wrongSort;
    case 'in':
      return plainly(isAmong(left, right, ambientBar));
    case 'contains':
      return plainly(isAmong(right, left, ambientBar));
    case 'subset': {
      const items = left.is === 'list' ? left.items : [left];
      return noMargin(items.every((item) => isAmong(item, right, ambientBar) === true));
    }
    case 'mates':
      return joined(left, right, check.role);
    case 'sum_le':
    case 'sum_ge': {
      if (right.is !== 'number') return wrongSort;
      const total = sum(left, right, ambientBar);
      if ('problem' in total) return total;
      const room = op === 'sum_le' ? right.value - total.value : total.value - right.value;
      const margin = right.margin ?? 0;
      return {
        ...withMargin(room, room - margin >= -rounding, right.unit, total.notes),
        reason: `together ${plain(total.value, 6)}`,
      };
    }
  }
}
