import { calculator, warning } from '../calculator.ts';
import { airTemperature } from './air.ts';

/** The reference taken while the map's own isn't known: 298.15 K and 100 kPa. */
const usualReference = { temperature: 298.15, pressure: 100_000 } as const;

/** Flow brought to the reference conditions of a map: kg/s, K, Pa, total conditions at the compressor inlet. */
function corrected(
  flow: number,
  inlet: { readonly temperature: number; readonly pressure: number },
  reference: { readonly temperature: number; readonly pressure: number },
): number {
  return (flow * Math.sqrt(inlet.temperature / reference.temperature)) / (inlet.pressure / reference.pressure);
}

const measured = ['mass_flow', 'inlet_temp', 'inlet_abs'] as const;

export const correctedFlow = calculator({
  id: 'C5',
  slug: 'corrected-mass-flow',
  title: 'Corrected mass flow',
  about: 'Where a mass flow lies on a compressor map that was drawn at other inlet conditions.',
  inputs: {
    mass_flow: { label: 'Mass flow', dimension: 'massFlow', unit: 'lb/min', must: { above: 0 }, usual: { to: 250 } },
    inlet_temp: { ...airTemperature, label: 'Compressor inlet temperature' },
    inlet_abs: {
      label: 'Compressor inlet, absolute',
      hint: 'barometer less the loss of filter and pipe',
      dimension: 'pressureAbsolute',
      unit: 'kPa',
      must: { above: 0 },
      usual: { from: 50, to: 110 },
    },
    ref_temp: {
      ...airTemperature,
      label: 'Reference temperature of the map',
      hint: 'read it from the map: often 298.15 K, 288.15 K or 545 °R',
      unit: 'K',
      must: { above: 0 },
      usual: { from: 273, to: 310 },
    },
    ref_pressure: {
      label: 'Reference pressure of the map, absolute',
      hint: 'read it from the map: often 100 kPa, 101.325 kPa or 13.95 psi',
      dimension: 'pressureAbsolute',
      unit: 'kPa',
      must: { above: 0 },
      usual: { from: 90, to: 105 },
    },
  },
  outputs: { corrected_mass_flow: { label: 'Corrected mass flow', dimension: 'massFlow', unit: 'lb/min' } },
  formula: 'corrected_mass_flow = mass_flow · √(inlet_temp/ref_temp)/(inlet_abs/ref_pressure)',
  source:
    'Similarity of compressible flow; derived by hand. Reference conditions from memory: 298.15 K and 100 kPa ' +
    '(commonly attributed to SAE J1826, text not seen), 545 °R and 13.95 psi (on many maps in lb/min); ' +
    '288.15 K and 101.325 kPa is the standard atmosphere.',
  notes: [
    'Read the reference conditions from the map: 298.15 K and 100 kPa, 288.15 K and 101.325 kPa, and 545 °R and ' +
      '13.95 psi are all in use, and the choice moves the point by up to about 5 %.',
    'Inlet temperature and pressure are total conditions.',
  ],
  example: {
    mass_flow: { value: 40, unit: 'lb/min' },
    inlet_temp: { value: 35, unit: 'degC' },
    inlet_abs: { value: 97, unit: 'kPa' },
    ref_temp: { value: 298.15, unit: 'K' },
    ref_pressure: { value: 100, unit: 'kPa' },
  },
  modes: [
    {
      name: 'map',
      title: 'reference conditions read from the map',
      needs: [...measured, 'ref_temp', 'ref_pressure'],
      may: [],
      compute: ({ mass_flow, inlet_temp, inlet_abs, ref_temp, ref_pressure }) => ({
        outputs: {
          corrected_mass_flow: corrected(
            mass_flow,
            { temperature: inlet_temp, pressure: inlet_abs },
            { temperature: ref_temp, pressure: ref_pressure },
          ),
        },
      }),
    },
    {
      name: 'unconfirmed',
      title: 'reference conditions not known',
      needs: measured,
      may: [],
      compute: ({ mass_flow, inlet_temp, inlet_abs }) => ({
        outputs: {
          corrected_mass_flow: corrected(mass_flow, { temperature: inlet_temp, pressure: inlet_abs }, usualReference),
        },
        warnings: [
          warning(
            'The reference conditions of the map are not confirmed; 298.15 K and 100 kPa were taken. Read them from ' +
              'the map: another reference moves the point by up to about 5 %.',
          ),
        ],
      }),
    },
  ],
});
