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
