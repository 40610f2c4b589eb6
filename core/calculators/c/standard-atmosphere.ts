import { calculator } from '../calculator.ts';
import { airDensity, airGasConstant, seaLevelPressure, seaLevelTemperature, standardGravity } from './air.ts';

/** Earth's nominal radius [m] and how temperature falls with geopotential altitude [K/m]; ISO 2533. */
const earthRadius = 6_356_766;
const lapseRate = 0.0065;

export const standardAtmosphere = calculator({
  id: 'C6',
  slug: 'standard-atmosphere',
  title: 'Standard atmosphere',
  about: 'Temperature, pressure and density of the air at an altitude on a standard day.',
  inputs: {
    altitude: {
      label: 'Altitude',
      hint: 'above sea level',
      dimension: 'length',
      unit: 'm',
      must: { atLeast: -5000, atMost: 11_000 },
      usual: { from: -500, to: 11_000 },
    },
  },
  outputs: {
    temperature: { label: 'Temperature', dimension: 'temperature', unit: 'degC' },
    pressure: { label: 'Pressure, absolute', dimension: 'pressureAbsolute', unit: 'kPa' },
    density: { label: 'Density', dimension: 'density', unit: 'kg/m3' },
    density_ratio: { label: 'Density to that at sea level', dimension: 'number', unit: '-' },
  },
  formula:
    'h = 6356766 · altitude/(6356766 + altitude) in m; temperature = 288.15 − 0.0065 · h; ' +
    'pressure = 101325 · (temperature/288.15)^5.25588; density = pressure/(R · temperature)',
  source:
    'ISO 2533 and US Standard Atmosphere 1976, lowest layer, as in the open-source fluids library (seen). ' +
    'The tables of 1976 begin at −5000 m (from memory).',
  notes: [
    'A hot or moist day is thinner; for a day on a dynamometer use C7.',
    'At the same gauge boost, manifold pressure and power fall with the barometer; at the same absolute pressure, the ' +
      'pressure ratio of the compressor rises.',
  ],
  example: { altitude: { value: 1000, unit: 'm' } },
  compute: ({ altitude }) => {
    const geopotential = (earthRadius * altitude) / (earthRadius + altitude);
    const temperature = seaLevelTemperature - lapseRate * geopotential;
    // The exponent is 5.25588 with the constants of ISO 2533.
    const exponent = standardGravity / (lapseRate * airGasConstant);
    const pressure = seaLevelPressure * (temperature / seaLevelTemperature) ** exponent;
    const density = airDensity(pressure, temperature);
    return {
      outputs: {
        temperature,
        pressure,
        density,
        density_ratio: density / airDensity(seaLevelPressure, seaLevelTemperature),
      },
    };
  },
});
