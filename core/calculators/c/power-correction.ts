import { calculator, refuseInput, type Warning, warning } from '../calculator.ts';
import { power } from '../d/fuel-inputs.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { airTemperature, barometer } from './air.ts';

/** Dry air of the reference day [Pa]; at 25 °C. */
const referencePressure = 99_000;

/** Correction factors that ISO 1585 allows (from memory). */
const least = 0.93;
const most = 1.07;

/** Vapour pressure of water [Pa] at t in °C; Buck (1981/1996), over water, from −80 °C. */
function saturationPressure(t: number): number {
  return 611.21 * Math.exp((18.678 - t / 234.5) * (t / (257.14 + t)));
}

export const powerCorrection = calculator({
  id: 'C7',
  slug: 'power-correction',
  title: 'Power correction to standard conditions',
  about: 'What a power measured in the weather of the day would be on a reference day.',
  inputs: {
    baro: {
      label: barometer.label,
      hint: barometer.hint,
      dimension: barometer.dimension,
      unit: barometer.unit,
      must: barometer.must,
      usual: barometer.usual,
    },
    air_temp: {
      ...airTemperature,
      label: 'Air temperature',
      hint: 'where the engine draws its air',
      must: { atLeast: -80 },
      usual: { from: -10, to: 50 },
    },
    humidity: { label: 'Relative humidity', dimension: 'fraction', unit: '%', must: { atLeast: 0, atMost: 100 } },
    measured_power: { ...power, label: 'Measured power', optional: true },
  },
  outputs: {
    measured_power: { label: 'Measured power, uncorrected', dimension: 'power', unit: 'hp' },
    vapour_pressure: { label: 'Vapour pressure', dimension: 'pressureDifference', unit: 'kPa' },
    dry_pressure: { label: 'Pressure of the dry air, absolute', dimension: 'pressureAbsolute', unit: 'kPa' },
    cf_j1349: { label: 'Factor, SAE J1349 form', dimension: 'number', unit: '-' },
    cf_iso1585: { label: 'Factor, ISO 1585 form', dimension: 'number', unit: '-' },
    power_j1349: { label: 'Corrected power, SAE J1349 form', dimension: 'power', unit: 'hp' },
    power_iso1585: { label: 'Corrected power, ISO 1585 form', dimension: 'power', unit: 'hp' },
  },
  formula:
    'dry_pressure = baro − humidity · psat; psat = 611.21 Pa · exp((18.678 − t/234.5) · t/(257.14 + t)), t in °C; ' +
    'cf_j1349 = 1.18 · (99 kPa/dry_pressure) · √((t + 273)/298) − 0.18; ' +
    'cf_iso1585 = (99 kPa/dry_pressure)^1.2 · ((t + 273)/298)^0.6; corrected power = measured power · factor',
  source:
    'SAE J1349 (1990 edition, 99 kPa dry, 25 °C) as quoted in public technical discussion, the standard not seen; ' +
    'ISO 1585 for spark ignition and its limits from memory; vapour pressure by Buck (1981/1996).',
  notes: [
    'Compare uncorrected with uncorrected, or corrected with corrected; never mix the two, nor the two forms.',
    'Where boost control holds an absolute manifold pressure, the correction counts the weather twice; UN Regulation ' +
      '85 was amended around 2015 for that reason (proposal seen).',
  ],
  example: {
    baro: { value: 100.2, unit: 'kPa' },
    air_temp: { value: 32, unit: 'degC' },
    humidity: { value: 60, unit: '%' },
    measured_power: { value: 400, unit: 'hp' },
  },
  compute: ({ baro, air_temp, humidity, measured_power }) => {
    const t = air_temp - 273.15;
    const vapour = humidity * saturationPressure(t);
    if (!fallsShort(vapour, baro)) {
      refuseInput('baro', 'The barometer is below the vapour pressure of the air.', 'a barometer above it');
    }
    const dry = baro - vapour;
    // Both forms count 25 °C as 298 K.
    const heat = (t + 273) / 298;
    const j1349 = 1.18 * (referencePressure / dry) * Math.sqrt(heat) - 0.18;
    const iso1585 = (referencePressure / dry) ** 1.2 * heat ** 0.6;
    const warnings: Warning[] = [];
    if ([j1349, iso1585].some((factor) => fallsShort(factor, least) || exceeds(factor, most))) {
      warnings.push(
        warning(`The correction is outside ${least} to ${most} (ISO 1585, from memory): measure on another day.`),
      );
    }
    return {
      outputs: {
        measured_power,
        vapour_pressure: vapour,
        dry_pressure: dry,
        cf_j1349: j1349,
        cf_iso1585: iso1585,
        power_j1349: measured_power === undefined ? undefined : measured_power * j1349,
        power_iso1585: measured_power === undefined ? undefined : measured_power * iso1585,
      },
      warnings,
    };
  },
});
