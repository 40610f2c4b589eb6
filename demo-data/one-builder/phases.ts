import type { DemoPhase } from '../types.ts';

export const phases: readonly DemoPhase[] = [
  {
    slug: 'strip',
    name: 'Strip and machine',
    gate: 'Every bore, journal and face measured and written down',
    plannedStart: '2026-02-16',
    plannedEnd: '2026-04-12',
  },
  {
    slug: 'trial',
    name: 'Trial fit',
    gate: 'Engine clears the bay; every hose length is known',
    plannedStart: '2026-04-13',
    plannedEnd: '2026-06-28',
  },
  {
    slug: 'assembly',
    name: 'Assembly',
    gate: 'Long block closed, every torque recorded',
    plannedStart: '2026-06-29',
    plannedEnd: '2026-09-13',
  },
  {
    slug: 'lines',
    name: 'Lines and wiring',
    gate: 'Oil pressure on the stand, no fuel leak, loom checked',
    plannedStart: '2026-09-14',
    plannedEnd: '2026-11-22',
  },
  {
    slug: 'engine-in',
    name: 'Engine in',
    gate: 'First start without a leak',
    plannedStart: '2026-11-23',
    plannedEnd: '2026-12-20',
  },
];
