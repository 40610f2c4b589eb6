import type { DemoBudgetLine } from '../types.ts';

/** First budget by system, in US dollars; its changes are told by the story. */
export const budgetLines: readonly DemoBudgetLine[] = [
  { system: 'block', name: 'Block and crank', original: '4700.00' },
  { system: 'head', name: 'Cylinder head', original: '2200.00' },
  { system: 'valvetrain', name: 'Timing and valve drive', original: '1850.00' },
  { system: 'induction', name: 'Induction', original: '2500.00' },
  { system: 'turbo', name: 'Turbo and exhaust', original: '2950.00' },
  { system: 'fuel', name: 'Fuel', original: '2250.00' },
  { system: 'oil', name: 'Oil', original: '1450.00' },
  { system: 'cooling', name: 'Cooling', original: '1250.00' },
  { system: 'ignition', name: 'Ignition', original: '650.00' },
  { system: 'wiring', name: 'Engine management and wiring', original: '2500.00' },
  { system: 'drivetrain', name: 'Clutch and gearbox', original: '2350.00' },
  { system: 'mounts', name: 'Mounts and bay', original: '650.00' },
];

/** Kept back on the first day for what nobody has thought of. */
export const contingency = '1600.00';
