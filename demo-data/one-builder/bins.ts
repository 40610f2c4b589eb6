import type { DemoBin } from '../types.ts';

export const bins: readonly DemoBin[] = [
  { slug: 'rack-a1', name: 'Rack A1', place: 'Left wall, bottom: short block' },
  { slug: 'rack-a2', name: 'Rack A2', place: 'Left wall, middle: head and valve gear' },
  { slug: 'rack-a3', name: 'Rack A3', place: 'Left wall, top: gaskets, kept flat' },
  { slug: 'rack-b1', name: 'Rack B1', place: 'Back wall: turbo and exhaust' },
  { slug: 'rack-b2', name: 'Rack B2', place: 'Back wall: induction and cooling' },
  { slug: 'drawer-1', name: 'Drawer 1', place: 'Bench: studs and bolts' },
  { slug: 'drawer-2', name: 'Drawer 2', place: 'Bench: fittings, caps on' },
  { slug: 'crate-fuel', name: 'Crate fuel', place: 'Under the bench, lid shut' },
  { slug: 'crate-loom', name: 'Crate loom', place: 'Spare room, dry: wiring and sensors' },
  { slug: 'floor', name: 'Floor', place: 'Beside the stand: gearbox, flywheel, radiator' },
];
