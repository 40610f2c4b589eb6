/** What calculators of fuel and power ask for alike, and what stands beside their results. */
import type { NumberInput } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';

export const power = {
  label: 'Power',
  hint: 'at the crankshaft',
  dimension: 'power',
  unit: 'hp',
  must: { above: 0 },
  usual: { to: 2500 },
} as const satisfies NumberInput;

export const specificConsumption = {
  label: 'Specific fuel consumption',
  hint: 'at full load; common practice: petrol turbo 0.55 to 0.65 lb/(hp·h), E85 0.80 to 0.95',
  dimension: 'fuelConsumption',
  unit: 'g/kWh',
  must: { above: 0 },
  usual: { from: 200, to: 700 },
} as const satisfies NumberInput;

export const fuelDensity = {
  label: 'Fuel density',
  hint: 'D1 gives it for a blend of petrol and ethanol',
  dimension: 'density',
  unit: 'kg/m3',
  must: { above: 0 },
  usual: { from: 650, to: 850 },
} as const satisfies NumberInput;

export const injectors = {
  kind: 'integer',
  label: 'Injectors',
  dimension: 'number',
  unit: '-',
  must: { atLeast: 1 },
  usual: { to: 24 },
} as const satisfies NumberInput;

export const dutyLimit = 0.85;

export const duty = {
  label: 'Duty',
  hint: 'share of the time that the injector is driven; common practice: 80 to 85 % at most',
  dimension: 'fraction',
  unit: '%',
  must: { above: 0, atMost: 100 },
} as const satisfies NumberInput;

export const pressureAcross = {
  label: 'Pressure across the injector',
  dimension: 'pressureDifference',
  unit: 'bar',
  must: { above: 0 },
  usual: { from: 1, to: 10 },
} as const satisfies NumberInput;

export const ratedPressure = { ...pressureAcross, label: 'Rated pressure across the injector' } as const;

export const actualPressure = {
  ...pressureAcross,
  label: 'Actual pressure across the injector',
  hint: 'base rail pressure with a boost-referenced regulator; rail less boost with a fixed rail',
} as const;

export const injectorFlow = {
  label: 'Injector flow',
  dimension: 'volumeFlow',
  unit: 'cc/min',
  must: { above: 0 },
  usual: { from: 50, to: 5000 },
} as const satisfies NumberInput;

export const dutyWarning = `Duty is above ${dutyLimit * 100} %: little is left for voltage drops and a hot day (common practice).`;

export const fuelCaution = `${makersValueGoverns} Too little fuel under boost destroys engines: confirm the mixture by measurement.`;

export const fuelPressureCaution = `${makersValueGoverns} Fuel under pressure sprays and burns: keep to the makers' pressures and parts, and to local rules.`;
