import { type Dimension, dimensions } from '../../units/dimensions.ts';
import { fromSI, toSI } from '../../units/measure.ts';
import { plain } from '../thread.ts';
import type { Facts, FactValue, Operand, PressureReference, Quantity, Range } from './check.ts';

/** Standard pressure, bar, where the air outside isn't stated. Source: standard atmosphere, rounded (1.01325 bar). */
export const standardAmbientBar = 1.013;

/** A side with its values filled in. */
export type Side =
  | {
      readonly is: 'number';
      readonly value: number;
      readonly unit?: string;
      readonly ref?: PressureReference;
      readonly margin?: number;
    }
  | { readonly is: 'text'; readonly value: string }
  | { readonly is: 'yes-no'; readonly value: boolean }
  | {
      readonly is: 'range';
      readonly min: number;
      readonly max: number;
      readonly unit?: string;
      readonly ref?: PressureReference;
    }
  | { readonly is: 'list'; readonly items: readonly Side[] };

/** A side, or what is missing for it. */
export type Filled = { readonly side: Side } | { readonly missing: readonly string[] };

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The fact at a dotted path; undefined when there is none. */
export function factAt(facts: Facts, path: string): FactValue | undefined {
  let at: unknown = facts;
  for (const step of path.split('.')) {
    if (!isRecord(at) || !Object.hasOwn(at, step)) return undefined;
    at = at[step];
  }
  return at as FactValue | undefined;
}

const units = ({ unit, ref }: { readonly unit?: string; readonly ref?: PressureReference }) => ({
  ...(unit === undefined ? {} : { unit }),
  ...(ref === undefined ? {} : { ref }),
});

const isRange = (value: object): value is Range => 'min' in value || 'max' in value;

function sideOfRange(range: Range, path: string): Filled {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = range;
  if (Number.isNaN(min) || Number.isNaN(max) || min > max) return { missing: [path] };
  return { side: { is: 'range', min, max, ...units(range) } };
}

function fromFact(value: FactValue | undefined, path: string): Filled {
  if (typeof value === 'number')
    return Number.isFinite(value) ? { side: { is: 'number', value } } : { missing: [path] };
  if (typeof value === 'string') return value.trim() === '' ? { missing: [path] } : { side: { is: 'text', value } };
  if (typeof value === 'boolean') return { side: { is: 'yes-no', value } };
  if (Array.isArray(value)) return listOf(value.map((item: FactValue) => fromFact(item, path)));
  if (!isRecord(value)) return { missing: [path] };
  if ('value' in value) {
    const quantity = value as unknown as Quantity;
    return Number.isFinite(quantity.value)
      ? { side: { is: 'number', value: quantity.value, ...units(quantity) } }
      : { missing: [path] };
  }
  return isRange(value) ? sideOfRange(value, path) : { missing: [path] };
}

function listOf(all: readonly Filled[]): Filled {
  const missing = all.flatMap((one) => ('missing' in one ? one.missing : []));
  if (missing.length > 0) return { missing: [...new Set(missing)] };
  return { side: { is: 'list', items: all.flatMap((one) => ('side' in one ? [one.side] : [])) } };
}

/** The side that an operand stands for, with the facts filled in. */
export function fill(operand: Operand, facts: Facts): Filled {
  if (typeof operand === 'string') return fromFact(factAt(facts, operand), operand);
  if (typeof operand === 'number' || typeof operand === 'boolean') return fromFact(operand, 'literal');
  if (Array.isArray(operand)) return listOf((operand as readonly Operand[]).map((one) => fill(one, facts)));
  if ('text' in operand) return { side: { is: 'text', value: operand.text } };
  if (isRange(operand)) return sideOfRange(operand, 'range');
  const { value, margin } = operand as Extract<Operand, { readonly value: number | string }>;
  const own = units(operand as Quantity);
  const found = typeof value === 'string' ? fill(value, facts) : fromFact(value, 'literal');
  if ('missing' in found || found.side.is !== 'number') return found;
  // A fact that brings its own unit keeps it; a bare number takes the operand's.
  return { side: { ...own, ...found.side, ...(margin === undefined ? {} : { margin }) } };
}

const dimensionOf = (one: string, other: string): Dimension | undefined =>
  (Object.keys(dimensions) as Dimension[]).find(
    (dimension) => Object.hasOwn(dimensions[dimension].units, one) && Object.hasOwn(dimensions[dimension].units, other),
  );

const isPressure = (unit: string | undefined): boolean =>
  unit !== undefined && Object.hasOwn(dimensions.pressure.units, unit);

interface Measured {
  readonly unit?: string;
  readonly ref?: PressureReference;
}

/**
 * How to bring numbers measured one way to another way: a function, with what it assumes, or why it can't be done.
 * Gauge becomes absolute by adding the air outside.
 */
export function converter(
  from: Measured,
  to: Measured,
  ambientBar: number | undefined,
): { readonly convert: (value: number) => number; readonly notes: readonly string[] } | { readonly problem: string } {
  const same = (value: number): number => value;
  if (from.unit === undefined && to.unit === undefined) return { convert: same, notes: [] };
  if (from.unit === undefined || to.unit === undefined) return { problem: 'the unit of one side' };
  const dimension = dimensionOf(from.unit, to.unit);
  const known = from.unit === to.unit;
  if (!known && dimension === undefined) return { problem: `values in units that compare (${from.unit}, ${to.unit})` };
  const scale = (value: number): number =>
    known || dimension === undefined
      ? value
      : fromSI(toSI(value, from.unit ?? '', dimension), to.unit ?? '', dimension);
  if (!isPressure(from.unit) || from.ref === to.ref) return { convert: scale, notes: [] };
  if (from.ref === undefined || to.ref === undefined) return { problem: 'whether the pressures are absolute or gauge' };
  const ambient = fromSI(toSI(ambientBar ?? standardAmbientBar, 'bar', 'pressure'), to.unit, 'pressure');
  const sign = from.ref === 'gauge' ? 1 : -1;
  return {
    convert: (value) => scale(value) + sign * ambient,
    notes: [
      `Gauge and absolute pressure differ by the air outside: ${plain(ambientBar ?? standardAmbientBar, 4)} bar${ambientBar === undefined ? ', the standard, as none is stated' : ''}.`,
    ],
  };
}

const unitText = ({ unit, ref }: Measured): string =>
  `${unit === undefined || unit === '-' ? '' : ` ${unit}`}${ref === undefined ? '' : ` ${ref}`}`;

/** A side in words: `0 to 3.5 bar abs`. */
export function sideText(side: Side): string {
  switch (side.is) {
    case 'number':
      return `${plain(side.value, 6)}${unitText(side)}`;
    case 'text':
      return side.value;
    case 'yes-no':
      return side.value ? 'yes' : 'no';
    case 'list':
      return side.items.map(sideText).join(', ');
    case 'range': {
      const { min, max } = side;
      const span =
        min === Number.NEGATIVE_INFINITY
          ? `up to ${plain(max, 6)}`
          : max === Number.POSITIVE_INFINITY
            ? `from ${plain(min, 6)}`
            : `${plain(min, 6)} to ${plain(max, 6)}`;
      return `${span}${unitText(side)}`;
    }
  }
}
