import { calculator, graveWarning, refuseInput, type Warning, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { barometer } from './air.ts';

export const sensorRange = calculator({
  id: 'C8',
  slug: 'pressure-sensor-range',
  title: 'Pressure-sensor range',
  about: 'Whether a manifold pressure sensor reads far enough for a boost, overshoot and cut included.',
  inputs: {
    sensor_full_scale_abs: {
      label: 'Full scale of the sensor, absolute',
      hint: 'from its data sheet, such as 304 kPa, not from its name',
      dimension: 'pressureAbsolute',
      unit: 'kPa',
      must: { above: 0 },
      usual: { from: 100, to: 1000 },
    },
    boost_gauge: {
      label: 'Boost, gauge',
      dimension: 'pressureGauge',
      unit: 'psi',
      usual: { from: 0, to: 70 },
    },
    baro: barometer,
    headroom: {
      label: 'Head-room',
      hint: 'kept free for overshoot and a cut',
      dimension: 'fraction',
      unit: '%',
      must: { atLeast: 0, below: 100 },
      usual: { to: 50 },
      default: 10,
      defaultSource: 'common practice, no published source: leaves room for overshoot and a cut threshold',
    },
  },
  outputs: {
    required_abs: { label: 'Pressure to read, absolute', dimension: 'pressureAbsolute', unit: 'kPa' },
    max_boost_gauge: { label: 'Most boost with the head-room kept, gauge', dimension: 'pressureGauge', unit: 'psi' },
    headroom: { label: 'Head-room left', dimension: 'fraction', unit: '%' },
    in_range: { kind: 'yes-no', label: 'In range with the head-room kept' },
  },
  formula:
    'required_abs = baro + boost_gauge; headroom left = 1 − required_abs/sensor_full_scale_abs; ' +
    'in_range when required_abs ≤ sensor_full_scale_abs · (1 − headroom); ' +
    'max_boost_gauge = sensor_full_scale_abs · (1 − headroom) − baro',
  source: 'Definition; derived by hand. Head-room of 10 %: common practice, no published source.',
  notes: [
    'A “3 bar” sensor reads 3 bar absolute, about 2 bar of boost at sea level.',
    'The full scale is that of the data sheet, not of the name.',
  ],
  caution:
    'A planning figure: past its full scale a sensor hides the boost from the engine control. Its data sheet governs.',
  example: {
    sensor_full_scale_abs: { value: 304, unit: 'kPa' },
    boost_gauge: { value: 22, unit: 'psi' },
    baro: { value: 101.325, unit: 'kPa' },
    headroom: { value: 10, unit: '%' },
  },
  compute: ({ sensor_full_scale_abs: fullScale, boost_gauge: boost, baro, headroom }) => {
    const required = baro + boost;
    if (required < 0) {
      refuseInput('boost_gauge', 'The boost lies below vacuum.', 'a gauge pressure above minus the barometer');
    }
    const usable = fullScale * (1 - headroom);
    const inRange = !exceeds(required, usable);
    const warnings: Warning[] = [];
    if (exceeds(required, fullScale)) {
      warnings.push(graveWarning('The boost is beyond the full scale: the sensor can’t see it.'));
    } else if (!inRange) {
      warnings.push(
        warning('The boost leaves less head-room than asked for: overshoot or a cut may lie out of range.'),
      );
    }
    return {
      outputs: {
        required_abs: required,
        max_boost_gauge: usable - baro,
        headroom: 1 - required / fullScale,
        in_range: inRange,
      },
      warnings,
    };
  },
});
