import type { DemoNamed } from '../types.ts';

export const systems: readonly DemoNamed[] = [
  { slug: 'block', name: 'Block and crank' },
  { slug: 'head', name: 'Cylinder head' },
  { slug: 'valvetrain', name: 'Timing and valve drive' },
  { slug: 'induction', name: 'Induction' },
  { slug: 'turbo', name: 'Turbo and exhaust' },
  { slug: 'fuel', name: 'Fuel' },
  { slug: 'oil', name: 'Oil' },
  { slug: 'cooling', name: 'Cooling' },
  { slug: 'ignition', name: 'Ignition' },
  { slug: 'wiring', name: 'Engine management and wiring' },
  { slug: 'drivetrain', name: 'Clutch and gearbox' },
  { slug: 'mounts', name: 'Mounts and bay' },
];
