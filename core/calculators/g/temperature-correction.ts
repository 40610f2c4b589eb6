import { fromSI } from '../../units/measure.ts';
import { calculator, type NumberInput, refuseInput, type Warning, warning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { exceeds } from '../limits.ts';
import { expansionCoefficients } from './expansion-table.ts';
import { insideLimits, limitInputs, toleranceWidth } from './limits-of-size.ts';
import { correctionTo20 } from './reference-length.ts';

/** The reference temperature of ISO 1, 20 °C [K]. */
const reference = 293.15;

const alpha = (label: string) =>
  ({
    label,
    dimension: 'expansion',
    unit: 'um/m/K',
    must: { atLeast: 0 },
    usual: { to: 30 },
  }) as const satisfies NumberInput;

const tableText = expansionCoefficients
  .map(({ material, coefficients }) => {
    const figures = coefficients.map((one) => Number(fromSI(one, 'um/m/K', 'expansion').toPrecision(3)));
    return `${material} ${figures.join(' to ')}`;
  })
  .join(', ');

export const temperatureCorrection = calculator({
  id: 'G7',
  slug: 'temperature-correction',
  title: 'Temperature correction',
  about: 'What a size read on a warm or cold part would be at 20 °C.',
  inputs: {
    reading: { label: 'Reading', dimension: 'length', unit: 'mm', must: { above: 0 } },
    part_temp: { label: 'Part temperature', dimension: 'temperature', unit: 'degC' },
    gauge_temp: { label: 'Gauge temperature', dimension: 'temperature', unit: 'degC' },
    part_alpha: alpha('Expansion of the part'),
    gauge_alpha: alpha('Expansion of the gauge'),
    ...limitInputs,
  },
  outputs: {
    length_at_20C: { label: 'Length at 20 °C', dimension: 'length', unit: 'mm' },
    correction: { label: 'Correction', hint: 'to be added to the reading', dimension: 'length', unit: 'um' },
    in_limits: { kind: 'yes-no', label: 'The length at 20 °C is inside the limits' },
  },
  formula:
    'length_at_20C = reading · (1 + gauge_alpha · (gauge_temp − 20 °C))/(1 + part_alpha · (part_temp − 20 °C)); ' +
    'correction = length_at_20C − reading',
  source: 'ISO 1, reference temperature 20 °C (from memory); linear expansion; derived by hand.',
  notes: [
    'If the gauge was zeroed on a setting piece at the same temperature as the gauge, use the setting piece’s coefficient.',
    `Coefficients in µm/(m·K), handbook values from memory: ${tableText}.`,
  ],
  caution: makersValueGoverns,
  example: {
    reading: { value: 86.43, unit: 'mm' },
    part_temp: { value: 30, unit: 'degC' },
    gauge_temp: { value: 30, unit: 'degC' },
    part_alpha: { value: 20, unit: 'um/m/K' },
    gauge_alpha: { value: 11.5, unit: 'um/m/K' },
  },
  compute: ({ reading, part_temp, gauge_temp, part_alpha, gauge_alpha, ...limits }) => {
    const gauge = { alpha: gauge_alpha, above: gauge_temp - reference };
    const part = { alpha: part_alpha, above: part_temp - reference };
    if (!(1 + gauge.alpha * gauge.above > 0))
      refuseInput('gauge_alpha', 'The gauge would shrink to nothing.', 'a coefficient near 11.5e-6 1/K');
    if (!(1 + part.alpha * part.above > 0))
      refuseInput('part_alpha', 'The part would shrink to nothing.', 'a coefficient near 11.5e-6 1/K');
    const correction = correctionTo20(reading, part, gauge);
    const length = reading + correction;
    const width = toleranceWidth(limits);
    const warnings: Warning[] = [];
    for (const [what, temperature] of [
      ['part', part_temp],
      ['gauge', gauge_temp],
    ] as const) {
      if (exceeds(Math.abs(temperature - reference), 20)) {
        warnings.push(warning(`The ${what} is more than 20 K from 20 °C: better let it come to room temperature.`));
      }
    }
    if (width !== undefined && exceeds(Math.abs(correction), width / 10)) {
      warnings.push(warning('The correction is more than a tenth of the tolerance: measure again near 20 °C.'));
    }
    return { outputs: { length_at_20C: length, correction, in_limits: insideLimits(length, limits) }, warnings };
  },
});
