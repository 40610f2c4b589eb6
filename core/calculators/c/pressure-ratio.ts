import { calculator, type NumberInput, refuseInput, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { barometer, manifoldPressure } from './air.ts';

const loss = {
  dimension: 'pressureDifference',
  unit: 'kPa',
  must: { atLeast: 0 },
  usual: { to: 30 },
} as const satisfies Omit<NumberInput, 'label'>;

/** Above it, many single compressors leave the area where they are efficient. */
const singleCompressorRatio = 3;

export const pressureRatio = calculator({
  id: 'C3',
  slug: 'pressure-ratio',
  title: 'Pressure ratio with losses',
  about: 'The pressure ratio that the compressor itself works at.',
  inputs: {
    map_abs: manifoldPressure,
    baro: barometer,
    inlet_loss: {
      ...loss,
      label: 'Loss before the compressor',
      hint: 'filter and pipe; 1 to 4 kPa is common practice',
    },
    charge_loss: {
      ...loss,
      label: 'Loss after the compressor',
      hint: 'intercooler and pipes; 5 to 15 kPa is common practice',
    },
  },
  outputs: {
    compressor_inlet_abs: { label: 'Compressor inlet, absolute', dimension: 'pressureAbsolute', unit: 'kPa' },
    compressor_outlet_abs: { label: 'Compressor outlet, absolute', dimension: 'pressureAbsolute', unit: 'kPa' },
    pressure_ratio: { label: 'Pressure ratio', dimension: 'number', unit: '-' },
  },
  formula:
    'compressor_inlet_abs = baro − inlet_loss; compressor_outlet_abs = map_abs + charge_loss; ' +
    'pressure_ratio = compressor_outlet_abs/compressor_inlet_abs',
  source: 'Definition; derived by hand. Typical losses: common practice, no published source.',
  notes: ['Typical losses (common practice): 1 to 4 kPa at the inlet, 5 to 15 kPa over intercooler and pipes.'],
  example: {
    map_abs: { value: 250, unit: 'kPa' },
    baro: { value: 101.325, unit: 'kPa' },
    inlet_loss: { value: 2, unit: 'kPa' },
    charge_loss: { value: 10, unit: 'kPa' },
  },
  compute: ({ map_abs, baro, inlet_loss, charge_loss }) => {
    const inlet = baro - inlet_loss;
    if (!fallsShort(inlet_loss, baro)) {
      refuseInput(
        'inlet_loss',
        'The loss before the compressor leaves no pressure at its inlet.',
        'a loss below the barometer',
      );
    }
    const outlet = map_abs + charge_loss;
    const ratio = outlet / inlet;
    const warnings: Warning[] = [];
    if (exceeds(ratio, singleCompressorRatio)) {
      warnings.push(
        warning(
          `The pressure ratio is above ${singleCompressorRatio}: many single compressors leave the efficient area.`,
        ),
      );
    }
    if (fallsShort(ratio, 1)) {
      warnings.push(warning('The pressure ratio is below 1: the compressor would be a throttle.'));
    }
    return {
      outputs: { compressor_inlet_abs: inlet, compressor_outlet_abs: outlet, pressure_ratio: ratio },
      warnings,
    };
  },
});
