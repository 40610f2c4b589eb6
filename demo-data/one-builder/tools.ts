import type { DemoTool } from '../types.ts';

/** Twelve tools; where they go in the meantime is told by the story. */
export const tools: readonly DemoTool[] = [
  {
    slug: 'crane',
    name: 'Engine crane, 1 tonne',
    note: 'Check the hook latch and the hydraulics before every lift; stay within the plate on the jib.',
  },
  { slug: 'stand', name: 'Engine stand' },
  { slug: 'torque-small', name: 'Torque wrench 5-25 Nm' },
  { slug: 'torque-large', name: 'Torque wrench 40-200 Nm', note: 'Calibrated 2026-01-20.' },
  { slug: 'angle-gauge', name: 'Angle gauge' },
  {
    slug: 'bore-gauge',
    name: 'Bore gauge and micrometers',
    away: 'Hire counter in town',
    dueOn: '2026-02-27',
    hire: '35.00',
  },
  { slug: 'ring-filer', name: 'Piston ring filer' },
  { slug: 'degree-wheel', name: 'Degree wheel and dial gauge' },
  { slug: 'spring-press', name: 'Valve spring press', away: 'With Marta', dueOn: '2026-07-18' },
  { slug: 'welder', name: 'TIG welder' },
  { slug: 'crimper', name: 'Crimping pliers, open barrel' },
  {
    slug: 'fuel-tester',
    name: 'Fuel pressure test set',
    away: 'To buy',
    dueOn: '2026-12-03',
    hire: '58.00',
    note: 'Fuel under pressure: work cold, ventilated, with an extinguisher at hand.',
  },
];
