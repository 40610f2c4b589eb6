/**
 * Fittings sized by dash: sixteenths of an inch of the tube's outside diameter. `thread` is size and threads per inch.
 */
export interface DashRow {
  readonly dash: number;
  readonly thread: string;
  /** Outside diameter of the tube, inch, as written. */
  readonly tubeInch?: string;
  /** Number of the O-ring (AS568), where the fitting carries one of its own. */
  readonly oRing?: string;
  /** O-ring inside diameter and section, mm. */
  readonly oRingIdMm?: number;
  readonly oRingSectionMm?: number;
  readonly note?: string;
}

/** Source: SAE J514 / ISO 8434-2 threads and tube sizes (three public charts agree). Cone 37°. */
export const flare37Sizes: readonly DashRow[] = [
  { dash: 2, thread: '5/16-24', tubeInch: '1/8' },
  { dash: 3, thread: '3/8-24', tubeInch: '3/16' },
  { dash: 4, thread: '7/16-20', tubeInch: '1/4' },
  { dash: 5, thread: '1/2-20', tubeInch: '5/16' },
  { dash: 6, thread: '9/16-18', tubeInch: '3/8' },
  { dash: 8, thread: '3/4-16', tubeInch: '1/2' },
  { dash: 10, thread: '7/8-14', tubeInch: '5/8' },
  { dash: 12, thread: '1-1/16-12', tubeInch: '3/4' },
  { dash: 14, thread: '1-3/16-12', tubeInch: '7/8' },
  { dash: 16, thread: '1-5/16-12', tubeInch: '1' },
  { dash: 20, thread: '1-5/8-12', tubeInch: '1-1/4' },
];

/** Source: SAE J512/J513 (a public thread chart and a summary agree; a text that has -2 to -10 all like 37° is wrong at -6). */
export const flare45Sizes: readonly DashRow[] = [
  { dash: 2, thread: '5/16-24', tubeInch: '1/8' },
  { dash: 3, thread: '3/8-24', tubeInch: '3/16' },
  { dash: 4, thread: '7/16-20', tubeInch: '1/4' },
  { dash: 5, thread: '1/2-20', tubeInch: '5/16' },
  { dash: 6, thread: '5/8-18', tubeInch: '3/8' },
  { dash: 7, thread: '11/16-16', tubeInch: '7/16' },
  { dash: 8, thread: '3/4-16', tubeInch: '1/2' },
  { dash: 10, thread: '7/8-14', tubeInch: '5/8' },
  { dash: 12, thread: '1-1/16-14', tubeInch: '3/4' },
  { dash: 14, thread: '1-1/4-12', tubeInch: '7/8' },
  { dash: 16, thread: '1-3/8-12', tubeInch: '1' },
];

/** Source: SAE J512 inverted flare (public thread chart, read as a row by diameter; not checked against the standard). */
export const invertedFlareSizes: readonly DashRow[] = [
  { dash: 2, thread: '5/16-28', tubeInch: '1/8' },
  { dash: 3, thread: '3/8-24', tubeInch: '3/16', note: 'same thread as 37° -3 and 45° -3' },
  { dash: 4, thread: '7/16-24', tubeInch: '1/4', note: 'same diameter as 37° -4, different pitch' },
  { dash: 5, thread: '1/2-20', tubeInch: '5/16', note: 'same thread as 37° -5 and 45° -5' },
  { dash: 6, thread: '5/8-18', tubeInch: '3/8', note: 'same thread as 45° -6' },
  { dash: 7, thread: '11/16-18', tubeInch: '7/16' },
  { dash: 8, thread: '3/4-18', tubeInch: '1/2', note: 'same diameter as 37° -8, different pitch' },
  { dash: 10, thread: '7/8-18', tubeInch: '5/8', note: 'same diameter as 37° -10, different pitch' },
  { dash: 12, thread: '1-1/16-16', tubeInch: '3/4', note: 'same diameter as 37° -12, different pitch' },
];

/** Source: SAE J1926-1 / ISO 11926-1 threads and O-ring numbers (two public tables agree); O-ring sizes AS568 from memory (904 verified). */
export const orbSizes: readonly DashRow[] = [
  { dash: 2, thread: '5/16-24', oRing: '902', oRingIdMm: 6.07, oRingSectionMm: 1.63 },
  { dash: 3, thread: '3/8-24', oRing: '903', oRingIdMm: 7.65, oRingSectionMm: 1.63 },
  { dash: 4, thread: '7/16-20', oRing: '904', oRingIdMm: 8.92, oRingSectionMm: 1.83 },
  { dash: 5, thread: '1/2-20', oRing: '905', oRingIdMm: 10.52, oRingSectionMm: 1.83 },
  { dash: 6, thread: '9/16-18', oRing: '906', oRingIdMm: 11.89, oRingSectionMm: 1.98 },
  { dash: 8, thread: '3/4-16', oRing: '908', oRingIdMm: 16.36, oRingSectionMm: 2.21 },
  { dash: 10, thread: '7/8-14', oRing: '910', oRingIdMm: 19.18, oRingSectionMm: 2.46 },
  { dash: 12, thread: '1-1/16-12', oRing: '912', oRingIdMm: 23.47, oRingSectionMm: 2.95 },
  { dash: 14, thread: '1-3/16-12', oRing: '914', oRingIdMm: 26.59, oRingSectionMm: 2.95 },
  { dash: 16, thread: '1-5/16-12', oRing: '916', oRingIdMm: 29.74, oRingSectionMm: 2.95 },
  { dash: 20, thread: '1-5/8-12', oRing: '920', oRingIdMm: 37.47, oRingSectionMm: 3 },
  { dash: 24, thread: '1-7/8-12', oRing: '924', oRingIdMm: 43.69, oRingSectionMm: 3 },
];

/** Source: SAE J1453 / ISO 8434-3 (one public table; not checked against the standard). */
export const orfsSizes: readonly DashRow[] = [
  { dash: 4, thread: '9/16-18', note: 'same thread as 37° flare -6 and ORB -6' },
  { dash: 6, thread: '11/16-16' },
  { dash: 8, thread: '13/16-16' },
  { dash: 10, thread: '1-14' },
  { dash: 12, thread: '1-3/16-12', note: 'same thread as 37° flare -14' },
  { dash: 16, thread: '1-7/16-12' },
  { dash: 20, thread: '1-11/16-12' },
];
