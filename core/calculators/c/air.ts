/** What the calculators of this group ask for alike, and the constants of air that they rest on. */
import type { NumberInput } from '../calculator.ts';

/** Specific gas constant of dry air [J/(kg·K)]; ISO 2533. */
export const airGasConstant = 287.05287;
/** Ratio of the specific heats of air. */
export const airHeatRatio = 1.4;
/** Standard acceleration of gravity [m/s²]; ISO 2533. */
export const standardGravity = 9.80665;
/** Pressure [Pa] and temperature [K] of the standard atmosphere at sea level; ISO 2533. */
export const seaLevelPressure = 101_325;
export const seaLevelTemperature = 288.15;

/** Density of dry air as an ideal gas [kg/m³], from absolute pressure [Pa] and temperature [K]. */
export function airDensity(pressure: number, temperature: number): number {
  return pressure / (airGasConstant * temperature);
}

/** What the cylinders of a four-stroke take in at most, displacement · rpm/120 [m³/s], from m³ and rad/s. */
export function sweptFlow(displacement: number, omega: number): number {
  return (displacement * omega) / (4 * Math.PI);
}

/** Above absolute zero: gas equations divide by it. */
const aboveAbsoluteZero = { above: -273.15 } as const;

export const displacement = {
  label: 'Displacement',
  dimension: 'volume',
  unit: 'cc',
  must: { above: 0 },
  usual: { from: 50, to: 15_000 },
} as const satisfies NumberInput;

export const rpm = {
  label: 'Engine speed',
  dimension: 'rotation',
  unit: 'rpm',
  must: { above: 0 },
  usual: { to: 20_000 },
} as const satisfies NumberInput;

export const volumetricEfficiency = {
  label: 'Volumetric efficiency',
  hint: 'referred to the density in the manifold: 0.95, or 95 %',
  dimension: 'fraction',
  unit: '-',
  must: { above: 0, atMost: 1.5 },
  usual: { from: 0.3, to: 1.3 },
} as const satisfies NumberInput;

export const manifoldPressure = {
  label: 'Manifold pressure, absolute',
  hint: 'boost gauge reading plus barometer',
  dimension: 'pressureAbsolute',
  unit: 'kPa',
  must: { above: 0 },
  usual: { from: 20, to: 600 },
} as const satisfies NumberInput;

export const chargeTemperature = {
  label: 'Charge temperature',
  hint: 'of the air in the manifold',
  dimension: 'temperature',
  unit: 'degC',
  must: aboveAbsoluteZero,
  usual: { from: -40, to: 150 },
} as const satisfies NumberInput;

export const airTemperature = {
  label: 'Air temperature',
  dimension: 'temperature',
  unit: 'degC',
  must: aboveAbsoluteZero,
  usual: { from: -40, to: 60 },
} as const satisfies NumberInput;

/** The barometer, taken as standard sea level where nothing is given. */
export const barometer = {
  label: 'Barometer',
  hint: 'as read at the place, not reduced to sea level',
  dimension: 'pressureAbsolute',
  unit: 'kPa',
  must: { above: 0 },
  usual: { from: 60, to: 110 },
  default: 101.325,
  defaultSource: 'standard atmosphere at sea level, ISO 2533',
} as const satisfies NumberInput;
