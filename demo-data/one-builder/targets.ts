import type { DemoTarget } from '../types.ts';

/** What the builder aims at. Invented, like the car; consumption and losses are common practice, no published source. */
export const targets: readonly DemoTarget[] = [
  { name: 'power', value: '300', unit: 'kW', source: 'the builder' },
  { name: 'power rpm', value: '6200', unit: 'rpm' },
  { name: 'rev limit', value: '6800', unit: 'rpm' },
  { name: 'boost', value: '1.4', unit: 'bar', source: 'over atmosphere' },
  { name: 'least ethanol', value: '50', unit: '%', source: 'winter fuel' },
  { name: 'most ethanol', value: '70', unit: '%', source: 'summer fuel' },
  {
    name: 'fuel consumption at least ethanol',
    value: '440',
    unit: 'g/kWh',
    source: 'common practice, no published source',
  },
  {
    name: 'fuel consumption at most ethanol',
    value: '480',
    unit: 'g/kWh',
    source: 'common practice, no published source',
  },
  { name: 'lambda', value: '0.80', source: 'common practice, no published source' },
  { name: 'volumetric efficiency', value: '95', unit: '%', source: 'a guess from the valve sizes' },
  { name: 'charge temperature', value: '55', unit: 'degC' },
  { name: 'ambient temperature', value: '30', unit: 'degC', source: 'a hot day' },
  { name: 'base fuel pressure', value: '3', unit: 'bar', source: 'regulator, follows the manifold' },
  { name: 'least displacement', value: '2790', unit: 'cc', source: 'registered as 2.8 litres' },
  { name: 'most displacement', value: '2849', unit: 'cc', source: 'registered as 2.8 litres' },
  { name: 'least compression ratio', value: '8.5' },
  { name: 'most compression ratio', value: '9.5', source: 'the builder, for the blend and the boost' },
];

/** Checks that the builder took over from those that ship. */
export const shippedChecks: readonly string[] = [
  'displacement',
  'compression-ratio',
  'injector-duty',
  'pump-flow',
  'fuel-line-velocity',
  'fuel-line-drop',
  'airflow',
  'boost-for-power',
  'pressure-ratio',
  'sensor-range',
  'charge-temperature',
  'charge-pipe',
  'exhaust-pipe',
  'oil-drain',
  'oil-drain-bore',
  'coolant-flow',
  'piston-speed',
  'piston-to-wall',
  'main-bearing-clearance',
  'big-end-clearance',
  'fan-fuse',
];
