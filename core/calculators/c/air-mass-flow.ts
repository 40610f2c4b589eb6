import { calculator } from '../calculator.ts';
import {
  airDensity,
  chargeTemperature,
  displacement,
  manifoldPressure,
  rpm,
  sweptFlow,
  volumetricEfficiency,
} from './air.ts';

export const airMassFlow = calculator({
  id: 'C1',
  slug: 'air-mass-flow',
  title: 'Air mass flow (four-stroke)',
  about: 'How much air a four-stroke takes in at an engine speed and a manifold pressure.',
  inputs: { displacement, rpm, ve: volumetricEfficiency, map_abs: manifoldPressure, charge_temp: chargeTemperature },
  outputs: {
    charge_density: { label: 'Density in the manifold', dimension: 'density', unit: 'kg/m3' },
    theoretical_mass_flow: { label: 'Mass flow with every cylinder filled', dimension: 'massFlow', unit: 'kg/s' },
    mass_flow: { label: 'Mass flow', dimension: 'massFlow', unit: 'lb/min' },
    volume_flow: { label: 'Volume flow at manifold conditions', dimension: 'volumeFlow', unit: 'L/min' },
  },
  formula:
    'charge_density = map_abs/(R · charge_temp); theoretical_mass_flow = charge_density · displacement · rpm/120; ' +
    'mass_flow = ve · theoretical_mass_flow; volume_flow = ve · displacement · rpm/2 a minute',
  source:
    'Ideal gas, R = 287.05287 J/(kg·K) (ISO 2533); volumetric efficiency as defined by Heywood and Stone (from memory).',
  notes: [
    'Volumetric efficiency is referred to the density in the manifold, not to the air outside.',
    'The air that fuel vapour and humidity displace is left out: 1 to 3 %, more with ethanol.',
  ],
  example: {
    displacement: { value: 1998, unit: 'cc' },
    rpm: { value: 7000, unit: 'rpm' },
    ve: { value: 0.95 },
    map_abs: { value: 250, unit: 'kPa' },
    charge_temp: { value: 45, unit: 'degC' },
  },
  compute: ({ displacement: volume, rpm: omega, ve, map_abs: pressure, charge_temp: temperature }) => {
    const density = airDensity(pressure, temperature);
    const swept = sweptFlow(volume, omega);
    return {
      outputs: {
        charge_density: density,
        theoretical_mass_flow: density * swept,
        mass_flow: ve * density * swept,
        volume_flow: ve * swept,
      },
    };
  },
});
