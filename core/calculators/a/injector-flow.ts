import { formatMeasure } from '../../units/measure.ts';
import { calculator } from '../calculator.ts';

const usedDensity = (density: number): string =>
  `Worked with a density of ${formatMeasure({ value: density, unit: 'kg/m3' }, 'density')}.`;

export const injectorFlowConversion = calculator({
  id: 'A5',
  slug: 'injector-flow-units',
  title: 'Injector flow, mass to volume',
  about: 'An injector’s flow by mass as flow by volume, and back, for a fluid of known density.',
  inputs: {
    mass_flow: { label: 'Mass flow', dimension: 'massFlow', unit: 'lb/h', must: { atLeast: 0 } },
    volume_flow: { label: 'Volume flow', dimension: 'volumeFlow', unit: 'cc/min', must: { atLeast: 0 } },
    density: {
      label: 'Density',
      hint: 'of the fluid the flow was measured with',
      dimension: 'density',
      unit: 'kg/m3',
      must: { above: 0 },
      usual: { from: 600, to: 900 },
    },
  },
  outputs: {
    volume_flow: { label: 'Volume flow', dimension: 'volumeFlow', unit: 'cc/min' },
    mass_flow: { label: 'Mass flow', dimension: 'massFlow', unit: 'lb/h' },
  },
  formula: 'volume_flow = mass_flow/density; cc/min = (lb/h) · 453.59237/(60 · density in g/cc)',
  source: 'Definition of density; derived by hand. Density of n-heptane from memory.',
  notes: [
    'The factor 10.5 cc/min to 1 lb/h belongs to a density of 0.72 g/cc only.',
    'Injectors are usually rated on a test fluid: n-heptane, about 684 kg/m³ at 20 °C (from memory).',
  ],
  example: { mass_flow: { value: 120, unit: 'lb/h' }, density: { value: 720, unit: 'kg/m3' } },
  modes: [
    {
      name: 'to-volume',
      title: 'volume flow from mass flow',
      needs: ['mass_flow', 'density'],
      compute: ({ mass_flow, density }) => ({
        outputs: { volume_flow: mass_flow / density },
        notes: [usedDensity(density)],
      }),
    },
    {
      name: 'to-mass',
      title: 'mass flow from volume flow',
      needs: ['volume_flow', 'density'],
      compute: ({ volume_flow, density }) => ({
        outputs: { mass_flow: volume_flow * density },
        notes: [usedDensity(density)],
      }),
    },
  ],
});
