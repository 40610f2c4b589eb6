/** What the calculators of this group ask for alike, and the flow in a round pipe that they rest on. All in SI. */
import type { NumberInput } from '../calculator.ts';

export const flow = {
  label: 'Flow',
  dimension: 'volumeFlow',
  unit: 'L/min',
  must: { atLeast: 0 },
} as const satisfies NumberInput;

export const insideDiameter = {
  label: 'Inside diameter',
  hint: 'of the narrowest long run; fittings can be smaller still',
  dimension: 'length',
  unit: 'mm',
  must: { above: 0 },
  usual: { from: 1, to: 200 },
} as const satisfies NumberInput;

export const runLength = {
  label: 'Length',
  dimension: 'length',
  unit: 'm',
  must: { atLeast: 0 },
  usual: { to: 50 },
} as const satisfies NumberInput;

export const roughness = {
  label: 'Roughness of the wall',
  dimension: 'length',
  unit: 'mm',
  must: { atLeast: 0 },
  default: 0.0015,
  defaultSource: 'smooth hose, handbook figure from memory',
} as const satisfies NumberInput;

export const minorLoss = {
  label: 'Sum of the K values',
  hint: 'bends, fittings and valves, as in Crane TP-410',
  dimension: 'number',
  unit: '-',
  must: { atLeast: 0 },
  default: 0,
  defaultSource: 'a run without bends or fittings',
} as const satisfies NumberInput;

export const heightRise = {
  label: 'Height rise',
  hint: 'from inlet to outlet; negative where the outlet is lower',
  dimension: 'length',
  unit: 'm',
  default: 0,
  defaultSource: 'a level run',
} as const satisfies NumberInput;

export const density = {
  label: 'Density',
  dimension: 'density',
  unit: 'kg/m3',
  must: { above: 0 },
} as const satisfies NumberInput;

export const viscosity = {
  label: 'Dynamic viscosity',
  hint: 'at the temperature of the fluid',
  dimension: 'viscosity',
  unit: 'mPa*s',
  must: { above: 0 },
  usual: { from: 0.1, to: 5000 },
} as const satisfies NumberInput;

/** Mean velocity [m/s] of a flow [m³/s] in a round bore [m]. */
export function pipeVelocity(volumeFlow: number, diameter: number): number {
  return volumeFlow / ((Math.PI / 4) * diameter ** 2);
}

/** Reynolds number, density · velocity · diameter / viscosity. */
export function reynoldsNumber(rho: number, velocity: number, diameter: number, dynamicViscosity: number): number {
  return (rho * velocity * diameter) / dynamicViscosity;
}
