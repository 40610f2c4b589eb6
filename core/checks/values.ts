/** Values on their way from a fact, a target or a measurement to a calculator: as typed, and in SI where it is needed. */
import type { Given, Input } from '../calculators/calculator.ts';
import { Refusal } from '../refusal.ts';
import { type Dimension, dimensions } from '../units/dimensions.ts';
import { formatMeasure, fromSI, toSI } from '../units/measure.ts';
import { parseMeasure } from '../units/parse-measure.ts';

/** A value and what it measures; null when only its user can say (a free fact, a typed value). */
export interface CheckValue {
  readonly given: Given;
  readonly dimension: Dimension | null;
  /** As a person reads it. */
  readonly text: string;
}

/** The message of a refusal without its last sentence, for a verdict. */
export const problemOf = (refusal: Refusal): string => refusal.message.replace(/\s*Nothing was changed\.\s*$/, '');

/** A number with its unit of a dimension, typed as text. @throws Refusal `bad-input`. */
export function measureValue(value: string, unit: string, dimension: Dimension, field: string): CheckValue {
  const measure = parseMeasure(value, dimension, { field, unit });
  return { given: measure, dimension, text: formatMeasure(measure, dimension, 6) };
}

export const siValue = (si: number, dimension: Dimension, unit: string): CheckValue => {
  const measure = { value: fromSI(si, unit, dimension), unit };
  return { given: measure, dimension, text: formatMeasure(measure, dimension, 5) };
};

/** The number in SI. @throws Refusal `bad-input` when it is no number. */
export function siOf({ given, dimension }: CheckValue, wanted: Dimension, field: string): number {
  const from = dimension ?? wanted;
  const measure =
    typeof given.value === 'number'
      ? { value: given.value, unit: given.unit ?? '' }
      : parseMeasure(String(given.value), from, { field, unit: given.unit ?? '' });
  return toSI(measure.value, measure.unit, from);
}

type Shift = 'same' | 'plus barometer' | 'less barometer';

/** How a value of one kind of pressure is read as another. Undefined where the two have nothing to do with each other. */
function shiftBetween(from: Dimension, to: Dimension): Shift | undefined {
  if (from === to) return 'same';
  const like = (one: Dimension): 'gauge' | 'absolute' | 'difference' | 'plain' | undefined =>
    one === 'pressureGauge'
      ? 'gauge'
      : one === 'pressureAbsolute'
        ? 'absolute'
        : one === 'pressureDifference' || one === 'pressure'
          ? 'difference'
          : one === 'number' || one === 'fraction'
            ? 'plain'
            : undefined;
  const a = like(from);
  const b = like(to);
  if (a === undefined || b === undefined) return undefined;
  if (a === 'plain' || b === 'plain') return a === b ? 'same' : undefined;
  if (a === 'gauge' && b === 'absolute') return 'plus barometer';
  if (a === 'absolute') return b === 'gauge' ? 'less barometer' : undefined;
  // A regulator that follows the manifold keeps its gauge pressure across the injectors.
  return b === 'absolute' ? undefined : 'same';
}

/**
 * The value as an input of this kind takes it. A gauge pressure becomes absolute with the barometer of the build, and
 * the other way round.
 * @param barometer air pressure in Pa.
 * @throws Refusal `bad-input` when it is something else altogether.
 */
export function givenFor(value: CheckValue, input: Input, barometer: () => number, field: string): Given {
  const { given, dimension } = value;
  if (!('dimension' in input) || dimension === null || input.kind === 'list') return given;
  const shift = shiftBetween(dimension, input.dimension);
  if (shift === undefined) {
    throw new Refusal(
      'bad-input',
      `${field} is ${dimensions[dimension].name}, not ${dimensions[input.dimension].name}. Nothing was changed.`,
      {
        field,
        accepted: dimensions[input.dimension].name,
      },
    );
  }
  if (dimension === input.dimension) return given;
  const si = siOf(value, dimension, field);
  const shifted = shift === 'same' ? si : shift === 'plus barometer' ? si + barometer() : si - barometer();
  return { value: fromSI(shifted, input.unit, input.dimension), unit: input.unit };
}
