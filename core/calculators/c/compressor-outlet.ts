import { calculator, type Warning, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { airDensity, airHeatRatio, airTemperature, barometer, manifoldPressure } from './air.ts';

/** Hoses and seals [K]; common practice, no published source. */
const outletLimit = 273.15 + 180;
/** A charge hotter than this asks for less ignition advance and more care [K]; common practice. */
const chargeLimit = 273.15 + 60;

/** Temperature [K] behind a compressor of that isentropic efficiency. */
function outletTemperature(inlet: number, ratio: number, efficiency: number): number {
  return inlet * (1 + (ratio ** ((airHeatRatio - 1) / airHeatRatio) - 1) / efficiency);
}

const outletWarnings = (outlet: number): Warning[] =>
  exceeds(outlet, outletLimit)
    ? [warning('The air leaves the compressor above 180 °C: mind hoses and seals (common practice).')]
    : [];

/** Temperature [K] behind an intercooler, and what there is to warn of. */
function cooled(outlet: number, effectiveness: number, coolant: number): { charge: number; warnings: Warning[] } {
  const charge = outlet - effectiveness * (outlet - coolant);
  const hot = exceeds(charge, chargeLimit)
    ? [warning('The charge is above 60 °C: knock comes sooner (common practice).')]
    : [];
  return { charge, warnings: [...outletWarnings(outlet), ...hot] };
}

const compressor = ['inlet_temp', 'pressure_ratio', 'efficiency'] as const;
const intercooler = [...compressor, 'effectiveness', 'coolant_temp'] as const;

export const compressorOutlet = calculator({
  id: 'C4',
  slug: 'compressor-outlet',
  title: 'Compressor outlet, intercooler, density ratio',
  about: 'How hot a compressor makes the air, what an intercooler takes back, and how dense the charge is.',
  inputs: {
    inlet_temp: { ...airTemperature, label: 'Compressor inlet temperature' },
    pressure_ratio: {
      label: 'Pressure ratio',
      hint: 'outlet to inlet of the compressor, both absolute: C3',
      dimension: 'number',
      unit: '-',
      must: { atLeast: 1 },
      usual: { to: 5 },
    },
    efficiency: {
      label: 'Compressor efficiency',
      hint: 'isentropic, from its map: 0.72, or 72 %',
      dimension: 'fraction',
      unit: '-',
      must: { above: 0, atMost: 1 },
      usual: { from: 0.4, to: 0.85 },
    },
    effectiveness: {
      label: 'Intercooler effectiveness',
      hint: '0 without one',
      dimension: 'fraction',
      unit: '-',
      must: { atLeast: 0, atMost: 1 },
      usual: { to: 0.95 },
    },
    coolant_temp: {
      ...airTemperature,
      label: 'Coolant temperature',
      hint: 'what cools the intercooler: the ambient air for air to air',
      usual: { from: -40, to: 120 },
    },
    map_abs: manifoldPressure,
    ambient_temp: { ...airTemperature, label: 'Ambient temperature' },
    baro: barometer,
  },
  outputs: {
    compressor_outlet_temp: { label: 'Compressor outlet', dimension: 'temperature', unit: 'degC' },
    charge_temp: { label: 'Charge temperature', dimension: 'temperature', unit: 'degC' },
    charge_density: { label: 'Charge density', dimension: 'density', unit: 'kg/m3' },
    density_ratio: { label: 'Charge density to that of the air outside', dimension: 'number', unit: '-' },
  },
  formula:
    'compressor_outlet_temp = inlet_temp · (1 + (pressure_ratio^((γ − 1)/γ) − 1)/efficiency), γ = 1.4; ' +
    'charge_temp = compressor_outlet_temp − effectiveness · (compressor_outlet_temp − coolant_temp); ' +
    'charge_density = map_abs/(R · charge_temp); density_ratio = (map_abs/charge_temp)/(baro/ambient_temp)',
  source:
    'Isentropic relations: Heywood, Internal Combustion Engine Fundamentals, chapter 6; effectiveness as in ' +
    'heat-exchanger texts and Stone (from memory). Limits: common practice, no published source.',
  notes: ['Temperatures in the equations are absolute. Heat from a hot engine bay is left out.'],
  example: {
    inlet_temp: { value: 25, unit: 'degC' },
    pressure_ratio: { value: 2.6 },
    efficiency: { value: 0.72 },
    effectiveness: { value: 0.75 },
    coolant_temp: { value: 25, unit: 'degC' },
    map_abs: { value: 250, unit: 'kPa' },
    baro: { value: 101.325, unit: 'kPa' },
    ambient_temp: { value: 25, unit: 'degC' },
  },
  modes: [
    {
      name: 'outlet',
      title: 'compressor outlet',
      needs: compressor,
      may: [],
      compute: ({ inlet_temp, pressure_ratio, efficiency }) => {
        const outlet = outletTemperature(inlet_temp, pressure_ratio, efficiency);
        return { outputs: { compressor_outlet_temp: outlet }, warnings: outletWarnings(outlet) };
      },
    },
    {
      name: 'charge',
      title: 'charge temperature behind an intercooler',
      needs: intercooler,
      may: [],
      compute: ({ inlet_temp, pressure_ratio, efficiency, effectiveness, coolant_temp }) => {
        const outlet = outletTemperature(inlet_temp, pressure_ratio, efficiency);
        const { charge, warnings } = cooled(outlet, effectiveness, coolant_temp);
        return { outputs: { compressor_outlet_temp: outlet, charge_temp: charge }, warnings };
      },
    },
    {
      name: 'density',
      title: 'charge density as well',
      needs: [...intercooler, 'map_abs', 'ambient_temp'],
      may: ['baro'],
      compute: (values) => {
        const outlet = outletTemperature(values.inlet_temp, values.pressure_ratio, values.efficiency);
        const { charge, warnings } = cooled(outlet, values.effectiveness, values.coolant_temp);
        const density = airDensity(values.map_abs, charge);
        return {
          outputs: {
            compressor_outlet_temp: outlet,
            charge_temp: charge,
            charge_density: density,
            density_ratio: density / airDensity(values.baro, values.ambient_temp),
          },
          warnings,
        };
      },
    },
  ],
});
