import { calculator } from '../calculator.ts';

export const exhaustFlow = calculator({
  id: 'J2',
  slug: 'exhaust-flow',
  title: 'Exhaust mass flow',
  about: 'The exhaust that an engine makes of its air and fuel.',
  inputs: {
    air_mass_flow: { label: 'Air mass flow', dimension: 'massFlow', unit: 'kg/s', must: { above: 0 } },
    afr: {
      label: 'Air to fuel, by mass',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      usual: { from: 3, to: 40 },
    },
  },
  outputs: { exhaust_mass_flow: { label: 'Exhaust mass flow', dimension: 'massFlow', unit: 'kg/s' } },
  formula: 'exhaust_mass_flow = air_mass_flow · (1 + 1/afr)',
  source: 'Mass balance; derived by hand.',
  notes: ['What goes in comes out: air and fuel together, burned or not.'],
  example: { air_mass_flow: { value: 46, unit: 'lb/min' }, afr: { value: 11.5 } },
  compute: ({ air_mass_flow: air, afr }) => ({ outputs: { exhaust_mass_flow: air * (1 + 1 / afr) } }),
});
