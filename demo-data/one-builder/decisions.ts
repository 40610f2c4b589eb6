import type { DemoDecision } from '../types.ts';

/** Six decisions; four are made in the course of the story. */
export const decisions: readonly DemoDecision[] = [
  {
    slug: 'turbo-size',
    title: 'Which compressor: 58 mm or 62 mm',
    options: [
      ['58 mm, early boost', '1420.00'],
      ['62 mm, more at the top', '1486.00'],
    ],
    owner: 'Joren',
    neededBy: '2026-04-05',
  },
  {
    slug: 'blend',
    title: 'Ethanol blend to build for',
    options: [
      ['E50, smaller injectors', '540.00'],
      ['E70, 1050 cc injectors', '708.00'],
      ['E85, second pump', '1010.00'],
    ],
    owner: 'Joren',
    neededBy: '2026-04-26',
  },
  {
    slug: 'idle-port',
    title: 'Keep the idle air port or close it',
    options: [
      ['Keep, with an idle valve', '88.00'],
      ['Close it, idle by the throttle', '12.00'],
    ],
    owner: 'Joren',
    neededBy: '2026-06-07',
  },
  {
    slug: 'oil-thermostat',
    title: 'Oil cooler with or without thermostat plate',
    options: [
      ['With', '92.00'],
      ['Without', '38.00'],
    ],
    owner: 'Marta',
    neededBy: '2026-08-16',
  },
  {
    slug: 'fan',
    title: 'Electric fan with shroud, or the old driven fan',
    options: [
      ['Electric, with shroud', '256.00'],
      ['Driven fan, new blade only', '74.00'],
    ],
    owner: 'Joren',
    neededBy: '2026-12-04',
    note: 'The driven fan leaves 18 mm to the radiator. Measure again with the pulley on.',
  },
  {
    slug: 'dump-valve',
    title: 'Dump valve back to the intake, or to the open air',
    options: [
      ['Back to the intake', '36.00'],
      ['Open air', '0.00'],
    ],
    owner: 'Joren',
    neededBy: '2026-12-07',
    note: 'The intake pipe needs a 25 mm stub if it goes back.',
  },
];
