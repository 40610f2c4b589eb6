/** What comes in, what was counted, and what vendors charge for an order and offer. US dollars. */

export interface DemoIncome {
  readonly name: string;
  readonly amount: string;
  readonly every: 'once' | 'month';
  readonly from: string;
  readonly note?: string;
}

/** Written down on the first day. */
export const incomes: readonly DemoIncome[] = [
  { name: 'Set aside from wages', amount: '1500.00', every: 'month', from: '2026-03-01' },
  { name: 'Rent of the second bay', amount: '500.00', every: 'month', from: '2026-03-15' },
];

/** Written down when it was agreed. */
export const laterIncomes: readonly (DemoIncome & { readonly on: string })[] = [
  {
    on: '2026-05-06',
    name: 'Donor saloon without its gearbox, sold',
    amount: '2600.00',
    every: 'once',
    from: '2026-05-09',
  },
  {
    on: '2026-11-20',
    name: 'Old carburettors, sold to Marta',
    amount: '180.00',
    every: 'once',
    from: '2026-12-20',
    note: 'She pays when she has them on her car.',
  },
];

/** Cash as it was counted, and what must always be left. */
export const cashCounts: readonly { readonly on: string; readonly cash: string; readonly floor: string }[] = [
  { on: '2026-02-16', cash: '8600.00', floor: '400.00' },
  { on: '2026-11-20', cash: '1140.00', floor: '400.00' },
];

/** Shipping of one order and the goods from which it is free, in the vendor's own currency. */
export const shipping: Readonly<Record<string, readonly [charge: string, freeFrom: string | null]>> = {
  brandrith: ['24.00', '500.00'],
  keld: ['9.00', '150.00'],
  marrisk: ['18.00', null],
  ostreley: ['22.00', '600.00'],
  pellmoor: ['35.00', '1200.00'],
  varlund: ['16.00', '400.00'],
  tessock: ['12.00', '250.00'],
  windlecote: ['11.00', '200.00'],
  copperway: ['14.00', '250.00'],
  drayholm: ['28.00', null],
  fennimoor: ['8.00', '80.00'],
  'drovers-barn': ['10.00', null],
};

export interface DemoOffer {
  readonly on: string;
  readonly part: string;
  readonly vendor: string;
  readonly from: number;
  readonly each: string;
  readonly until: string | null;
  readonly note: string;
}

export const offers: readonly DemoOffer[] = [
  {
    on: '2026-02-16',
    part: 'turbo',
    vendor: 'pellmoor',
    from: 1,
    each: '1395.00',
    until: '2026-03-31',
    note: 'End-of-winter price, by letter.',
  },
  {
    on: '2026-11-20',
    part: 'fan',
    vendor: 'copperway',
    from: 1,
    each: '149.00',
    until: '2026-12-12',
    note: 'If it goes with the shroud or not.',
  },
];
