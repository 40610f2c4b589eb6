/** Bores: SAE J517 hose tables as quoted in hose selection guidance; threads: AS4395 / SAE J514, from memory. */
interface DashRow {
  /** Bore of hoses named after the tube they replace (SAE J517 types 100R5 and 100R14), in inches. */
  readonly tubeEquivalentBore: number;
  /** Thread of the 37° flare fitting, where it is on record. */
  readonly thread?: string;
}

/** By dash size. The nominal bore isn't in here: it is the dash size in sixteenths of an inch. */
export const dashTable: ReadonlyMap<number, DashRow> = new Map([
  [4, { tubeEquivalentBore: 3 / 16, thread: '7/16-20' }],
  [5, { tubeEquivalentBore: 1 / 4 }],
  [6, { tubeEquivalentBore: 5 / 16, thread: '9/16-18' }],
  [8, { tubeEquivalentBore: 13 / 32, thread: '3/4-16' }],
  [10, { tubeEquivalentBore: 1 / 2, thread: '7/8-14' }],
  [12, { tubeEquivalentBore: 5 / 8, thread: '1 1/16-12' }],
  [16, { tubeEquivalentBore: 7 / 8, thread: '1 5/16-12' }],
  [20, { tubeEquivalentBore: 1 + 1 / 8, thread: '1 5/8-12' }],
  [24, { tubeEquivalentBore: 1 + 3 / 8 }],
]);
