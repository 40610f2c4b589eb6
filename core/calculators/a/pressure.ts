import { formatMeasure } from '../../units/measure.ts';
import { calculator, refuseInput, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { specialPublication811 } from './converter.ts';

/** The highest absolute pressure meant here [Pa]. */
const highestAbsolute = 20e6;

export const pressureConversion = calculator({
  id: 'A2',
  slug: 'pressure-units',
  title: 'Pressure, gauge and absolute',
  about: 'A pressure in another unit, and from gauge to absolute and back.',
  inputs: {
    value: {
      label: 'Pressure',
      hint: 'gauge stays gauge, absolute stays absolute',
      dimension: 'pressure',
      unit: 'kPa',
      usual: { from: -110, to: 20_000 },
    },
    gauge: { label: 'Gauge pressure', dimension: 'pressureGauge', unit: 'kPa' },
    absolute: {
      label: 'Absolute pressure',
      dimension: 'pressureAbsolute',
      unit: 'kPa',
      must: { above: 0 },
      usual: { to: 20_000 },
    },
    baro: {
      label: 'Barometer',
      hint: 'at the place itself, not reduced to sea level',
      dimension: 'pressureAbsolute',
      unit: 'kPa',
      must: { above: 0 },
      usual: { from: 50, to: 110 },
      default: 101.325,
      defaultSource: 'standard atmosphere, ISO 2533',
    },
  },
  outputs: {
    result: { label: 'In the unit asked for', dimension: 'pressure', unit: 'kPa' },
    absolute: { label: 'Absolute pressure', dimension: 'pressureAbsolute', unit: 'kPa' },
    gauge: { label: 'Gauge pressure', dimension: 'pressureGauge', unit: 'kPa' },
  },
  formula: 'absolute = gauge + baro; gauge = absolute − baro; 1 psi = 6894.757293168 Pa; 1 inHg = 3386.389 Pa',
  source: `${specialPublication811}, but for the conventional inch of mercury, 3386.389 Pa as printed there`,
  notes: [
    'The inch of mercury is the conventional one (3386.389 Pa); at 32 °F it is 3386.38 Pa, at 60 °F 3376.85 Pa.',
    '14.7 psi is the air at sea level on a standard day, not the barometer everywhere.',
  ],
  example: { gauge: { value: 22, unit: 'psi' }, baro: { value: 29.5, unit: 'inHg' } },
  modes: [
    {
      name: 'convert',
      title: 'another unit',
      needs: ['value'],
      may: [],
      compute: ({ value }) => ({ outputs: { result: value } }),
    },
    {
      name: 'to-absolute',
      title: 'absolute from gauge',
      needs: ['gauge'],
      compute: ({ gauge, baro }) => {
        const absolute = gauge + baro;
        // Rounding of decimal entries may leave a full vacuum a hair above zero.
        if (absolute <= 1e-9 * baro) {
          refuseInput(
            'gauge',
            'The absolute pressure would be zero or below.',
            'a gauge pressure above minus the barometer',
          );
        }
        const high = exceeds(absolute, highestAbsolute);
        return {
          outputs: { absolute },
          warnings: high ? [warning('The absolute pressure is above 20 MPa: check the entry.')] : [],
        };
      },
    },
    {
      name: 'to-gauge',
      title: 'gauge from absolute',
      needs: ['absolute'],
      compute: ({ absolute, baro }) => {
        const gauge = absolute - baro;
        const vacuum = formatMeasure({ value: -gauge / 1000, unit: 'kPa' }, 'pressureGauge');
        return { outputs: { gauge }, notes: gauge < 0 ? [`Below the air outside: a vacuum of ${vacuum}.`] : [] };
      },
    },
  ],
});
