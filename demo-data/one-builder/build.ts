import type { DemoBuild } from '../types.ts';

/** The car, its maker and everybody in this story are invented. */
export const build: DemoBuild = {
  name: 'Drover 2.8 turbo',
  car: '1978 Tarnwell Drover pickup',
  engine: '2.8-litre turbocharged straight-six on ethanol blend',
  startedOn: '2026-02-16',
  targetOn: '2026-12-12',
  note:
    'Bore 86.0 mm, stroke 80.4 mm, twelve valves, one camshaft. Target: 300 kW at the flywheel at 1.4 bar over ' +
    'atmosphere, ethanol blend E70, five-speed gearbox from the donor saloon. Two evenings a week and every other Saturday.',
};

/** Who makes the entries. */
export const builder = 'Joren Aldby';
