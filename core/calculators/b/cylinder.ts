/** What the calculators of this group ask for alike, and the area that all of them rest on. */
import type { NumberInput } from '../calculator.ts';

export const bore = {
  label: 'Bore',
  dimension: 'length',
  unit: 'mm',
  must: { above: 0 },
  usual: { from: 30, to: 200 },
} as const satisfies NumberInput;

export const stroke = {
  label: 'Stroke',
  dimension: 'length',
  unit: 'mm',
  must: { above: 0 },
  usual: { from: 20, to: 200 },
} as const satisfies NumberInput;

export const cylinders = {
  kind: 'integer',
  label: 'Cylinders',
  dimension: 'number',
  unit: '-',
  must: { atLeast: 1 },
  usual: { to: 16 },
} as const satisfies NumberInput;

/** Area of a circle of that diameter, π/4 · d² [m²]. */
export function boreArea(diameter: number): number {
  return (Math.PI / 4) * diameter ** 2;
}
