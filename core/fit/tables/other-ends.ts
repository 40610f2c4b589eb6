/** Sizes of ends that are not threads; lengths in mm. */

/** Source: SAE J2044 (7.89 and 9.49 widely quoted; 6.35, 11.8 and 15.82 from memory, uncertain). */
export const quickConnectSizes: readonly { readonly mm: number; readonly inch: string }[] = [
  { mm: 6.35, inch: '1/4' },
  { mm: 7.89, inch: '5/16' },
  { mm: 9.49, inch: '3/8' },
  { mm: 11.8, inch: '1/2' },
  { mm: 15.82, inch: '5/8' },
];

export interface SplitFlangeRow {
  readonly code: 61 | 62;
  readonly dash: number;
  readonly longMm: number;
  readonly shortMm: number;
  readonly screwMetric: string;
  readonly screwInch: string;
}

/** Source: ISO 6162-1, -2 / SAE J518 hole spacing (two public tables agree); screws from memory. */
export const splitFlangeSizes: readonly SplitFlangeRow[] = [
  { code: 61, dash: 8, longMm: 38.1, shortMm: 17.5, screwMetric: 'M8', screwInch: '5/16-18' },
  { code: 61, dash: 12, longMm: 47.6, shortMm: 22.2, screwMetric: 'M10', screwInch: '3/8-16' },
  { code: 61, dash: 16, longMm: 52.4, shortMm: 26.2, screwMetric: 'M10', screwInch: '3/8-16' },
  { code: 61, dash: 20, longMm: 58.7, shortMm: 30.2, screwMetric: 'M10', screwInch: '7/16-14' },
  { code: 61, dash: 24, longMm: 69.9, shortMm: 35.7, screwMetric: 'M12', screwInch: '1/2-13' },
  { code: 61, dash: 32, longMm: 77.8, shortMm: 42.9, screwMetric: 'M12', screwInch: '1/2-13' },
  { code: 62, dash: 8, longMm: 40.5, shortMm: 18.2, screwMetric: 'M8', screwInch: '5/16-18' },
  { code: 62, dash: 12, longMm: 50.8, shortMm: 23.8, screwMetric: 'M10', screwInch: '3/8-16' },
  { code: 62, dash: 16, longMm: 57.2, shortMm: 27.8, screwMetric: 'M12', screwInch: '7/16-14' },
  { code: 62, dash: 20, longMm: 66.7, shortMm: 31.8, screwMetric: 'M12 (older: M14)', screwInch: '1/2-13' },
  { code: 62, dash: 24, longMm: 79.4, shortMm: 36.5, screwMetric: 'M16', screwInch: '5/8-11' },
  { code: 62, dash: 32, longMm: 96.8, shortMm: 44.5, screwMetric: 'M20', screwInch: '3/4-10' },
];

/** Tube sizes by which V-bands are named. Source: trade practice; no published dimensional standard found. */
export const vbandTubes: readonly number[] = [38.1, 44.5, 50.8, 57.2, 63.5, 69.9, 76.2, 88.9, 101.6, 127];

/** Names of turbine inlet flanges. Source: trade terms; no published geometry found: it must be measured. */
export const turbineFlangeNames: readonly string[] = [
  'T2',
  'T25',
  'T25/T28',
  'T3',
  'T3 divided',
  'T4',
  'T4 divided',
  'T6',
];

/** Bores that are called by an inch fraction. Source: inch arithmetic; SAE J1231 covers ends in these steps (dimensions not verified). */
export const inchBores: readonly { readonly inch: string; readonly mm: number }[] = [
  { inch: '1/8', mm: 3.2 },
  { inch: '5/32', mm: 4 },
  { inch: '3/16', mm: 4.8 },
  { inch: '1/4', mm: 6.3 },
  { inch: '5/16', mm: 7.9 },
  { inch: '3/8', mm: 9.5 },
  { inch: '1/2', mm: 12.7 },
  { inch: '5/8', mm: 15.9 },
  { inch: '3/4', mm: 19 },
  { inch: '7/8', mm: 22.2 },
  { inch: '1', mm: 25.4 },
  { inch: '1-1/8', mm: 28.6 },
  { inch: '1-1/4', mm: 31.8 },
  { inch: '1-1/2', mm: 38.1 },
  { inch: '1-3/4', mm: 44.4 },
  { inch: '2', mm: 50.8 },
  { inch: '2-1/4', mm: 57.1 },
  { inch: '2-1/2', mm: 63.5 },
  { inch: '2-3/4', mm: 69.8 },
  { inch: '3', mm: 76.2 },
  { inch: '3-1/2', mm: 88.9 },
  { inch: '4', mm: 101.6 },
];

/** Bores of the metric series. Source: common practice, no published source. */
export const metricBores: readonly number[] = [
  3, 3.5, 4, 5, 6, 8, 10, 12, 13, 15, 16, 18, 19, 20, 22, 25, 28, 30, 32, 35, 38, 40, 42, 45, 48, 50, 51, 54, 57, 60,
  63, 65, 70, 76, 80, 90, 100, 102,
];
