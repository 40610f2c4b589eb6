import type { DemoVendor } from '../types.ts';

/** Fourteen invented vendors. */
export const vendors: readonly DemoVendor[] = [
  {
    slug: 'harrowick',
    name: 'Harrowick Machine Works',
    leadDays: 21,
    contact: 'Ask for Bettina',
    note: 'Machining. Cash or transfer, no cards.',
  },
  {
    slug: 'brandrith',
    name: 'Brandrith Engine Supply',
    leadDays: 14,
    account: '40-1187',
    note: 'Short block and pumps. Free shipping above 500.',
  },
  { slug: 'keld', name: 'Keld Fasteners', leadDays: 7, note: 'Studs, bolts, plugs. Sends the sheet with every kit.' },
  {
    slug: 'marrisk',
    name: 'Marrisk Gaskets',
    leadDays: 16,
    currency: 'GBP',
    note: 'Cuts gaskets to size. Bills in pounds; duty comes on top.',
  },
  {
    slug: 'ostreley',
    name: 'Ostreley Heads & Induction',
    leadDays: 18,
    account: 'OH-552',
    note: 'Valve gear, intake castings. Slow with rocker arms.',
  },
  { slug: 'pellmoor', name: 'Pellmoor Turbo', leadDays: 14, note: 'Turbo, wastegate, manifold. Spring sale in April.' },
  {
    slug: 'varlund',
    name: 'Varlund Fuel Systems',
    leadDays: 20,
    currency: 'EUR',
    note: 'Bills in euros. Everything is rated for ethanol.',
  },
  {
    slug: 'tessock',
    name: 'Tessock Electrics',
    leadDays: 10,
    account: 'T-2290',
    note: 'Engine computer, sensors, loom. Read the thread twice.',
  },
  {
    slug: 'windlecote',
    name: 'Windlecote Hose & Fitting',
    leadDays: 8,
    note: 'Hose by the metre, fittings by the dash size.',
  },
  {
    slug: 'copperway',
    name: 'Copperway Cooling',
    leadDays: 12,
    note: 'Radiators and charge coolers, packed in thin boxes.',
  },
  { slug: 'drayholm', name: 'Drayholm Clutch & Gear', leadDays: 18, note: 'Clutches made to order.' },
  {
    slug: 'ollerdyke',
    name: 'Ollerdyke Steel & Tube',
    leadDays: 2,
    note: 'Collect from the yard; cuts while you wait.',
  },
  { slug: 'fennimoor', name: 'Fennimoor Paint & Chemical', leadDays: 4, note: 'Oils, sealants, paint.' },
  {
    slug: 'drovers-barn',
    name: "Drovers' Barn",
    leadDays: 9,
    note: 'Old stock for the Drover. Takes old units in against a deposit.',
  },
];
