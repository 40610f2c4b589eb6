export type UnifiedSeries = 'UNC' | 'UNF' | 'UN' | 'UNS';

/** One listed unified thread. */
export interface UnifiedThreadRow {
  /** As written before the threads per inch: `7/16`, `1-1/16`, `#10`. */
  readonly size: string;
  readonly tpi: number;
  readonly series: UnifiedSeries;
  readonly majorInch: number;
  /** Stress area in square inches, where listed. */
  readonly stressAreaInch?: number;
  /** Tap drill in mm, where listed. */
  readonly tapDrill?: number;
  /** The fittings that carry it, for threads listed because of them. */
  readonly usedOn?: string;
}

/**
 * Bolt and port threads. Source: ASME B1.1 (sizes, threads per inch; stress area by its formula; the UNF areas agree with
 * a published table); drills cross-checked with an open thread library (1-12: 59/64 in by handbook practice, from memory).
 */
export const unifiedThreads: readonly UnifiedThreadRow[] = [
  { size: '#4', tpi: 40, series: 'UNC', majorInch: 0.112, stressAreaInch: 0.00603, tapDrill: 2.26 },
  { size: '#4', tpi: 48, series: 'UNF', majorInch: 0.112, stressAreaInch: 0.0066, tapDrill: 2.37 },
  { size: '#5', tpi: 40, series: 'UNC', majorInch: 0.125, stressAreaInch: 0.00796, tapDrill: 2.58 },
  { size: '#5', tpi: 44, series: 'UNF', majorInch: 0.125, stressAreaInch: 0.00831, tapDrill: 2.64 },
  { size: '#6', tpi: 32, series: 'UNC', majorInch: 0.138, stressAreaInch: 0.00909, tapDrill: 2.71 },
  { size: '#6', tpi: 40, series: 'UNF', majorInch: 0.138, stressAreaInch: 0.01014, tapDrill: 2.87 },
  { size: '#8', tpi: 32, series: 'UNC', majorInch: 0.164, stressAreaInch: 0.01401, tapDrill: 3.45 },
  { size: '#8', tpi: 36, series: 'UNF', majorInch: 0.164, stressAreaInch: 0.01473, tapDrill: 3.45 },
  { size: '#10', tpi: 24, series: 'UNC', majorInch: 0.19, stressAreaInch: 0.01753, tapDrill: 3.8 },
  { size: '#10', tpi: 32, series: 'UNF', majorInch: 0.19, stressAreaInch: 0.01999, tapDrill: 4.04 },
  { size: '#12', tpi: 24, series: 'UNC', majorInch: 0.216, stressAreaInch: 0.02416, tapDrill: 4.5 },
  { size: '#12', tpi: 28, series: 'UNF', majorInch: 0.216, stressAreaInch: 0.02579, tapDrill: 4.62 },
  { size: '1/4', tpi: 20, series: 'UNC', majorInch: 0.25, stressAreaInch: 0.03182, tapDrill: 5.11 },
  { size: '1/4', tpi: 28, series: 'UNF', majorInch: 0.25, stressAreaInch: 0.03637, tapDrill: 5.41 },
  { size: '5/16', tpi: 18, series: 'UNC', majorInch: 0.3125, stressAreaInch: 0.05243, tapDrill: 6.53 },
  { size: '5/16', tpi: 24, series: 'UNF', majorInch: 0.3125, stressAreaInch: 0.05807, tapDrill: 6.91 },
  { size: '3/8', tpi: 16, series: 'UNC', majorInch: 0.375, stressAreaInch: 0.07749, tapDrill: 7.94 },
  { size: '3/8', tpi: 24, series: 'UNF', majorInch: 0.375, stressAreaInch: 0.08783, tapDrill: 8.43 },
  { size: '7/16', tpi: 14, series: 'UNC', majorInch: 0.4375, stressAreaInch: 0.1063, tapDrill: 9.35 },
  { size: '7/16', tpi: 20, series: 'UNF', majorInch: 0.4375, stressAreaInch: 0.1187, tapDrill: 9.92 },
  { size: '1/2', tpi: 13, series: 'UNC', majorInch: 0.5, stressAreaInch: 0.1419, tapDrill: 10.72 },
  { size: '1/2', tpi: 20, series: 'UNF', majorInch: 0.5, stressAreaInch: 0.16, tapDrill: 11.51 },
  { size: '9/16', tpi: 12, series: 'UNC', majorInch: 0.5625, stressAreaInch: 0.1819, tapDrill: 12.3 },
  { size: '9/16', tpi: 18, series: 'UNF', majorInch: 0.5625, stressAreaInch: 0.203, tapDrill: 13.1 },
  { size: '5/8', tpi: 11, series: 'UNC', majorInch: 0.625, stressAreaInch: 0.226, tapDrill: 13.49 },
  { size: '5/8', tpi: 18, series: 'UNF', majorInch: 0.625, stressAreaInch: 0.256, tapDrill: 14.68 },
  { size: '3/4', tpi: 10, series: 'UNC', majorInch: 0.75, stressAreaInch: 0.3345, tapDrill: 16.67 },
  { size: '3/4', tpi: 16, series: 'UNF', majorInch: 0.75, stressAreaInch: 0.373, tapDrill: 17.46 },
  { size: '7/8', tpi: 9, series: 'UNC', majorInch: 0.875, stressAreaInch: 0.4617, tapDrill: 19.45 },
  { size: '7/8', tpi: 14, series: 'UNF', majorInch: 0.875, stressAreaInch: 0.5095, tapDrill: 20.64 },
  { size: '1', tpi: 8, series: 'UNC', majorInch: 1, stressAreaInch: 0.6057, tapDrill: 22.22 },
  { size: '1', tpi: 12, series: 'UNF', majorInch: 1, stressAreaInch: 0.663, tapDrill: 23.42 },
];

/** Threads of fittings. Source: ASME B1.1 for the designation; use by SAE J514, J512, J1926, J1453 (two public charts agree). */
export const unifiedFittingThreads: readonly UnifiedThreadRow[] = [
  { size: '1-1/16', tpi: 12, series: 'UN', majorInch: 1.0625, usedOn: '37° flare / ORB -12' },
  { size: '1-3/16', tpi: 12, series: 'UN', majorInch: 1.1875, usedOn: '37° flare / ORB -14; ORFS -12' },
  { size: '1-5/16', tpi: 12, series: 'UN', majorInch: 1.3125, usedOn: '37° flare / ORB -16' },
  { size: '1-5/8', tpi: 12, series: 'UN', majorInch: 1.625, usedOn: '37° flare / ORB -20' },
  { size: '1-7/8', tpi: 12, series: 'UN', majorInch: 1.875, usedOn: '37° flare / ORB -24' },
  { size: '2-1/2', tpi: 12, series: 'UN', majorInch: 2.5, usedOn: '37° flare / ORB -32' },
  { size: '11/16', tpi: 16, series: 'UN', majorInch: 0.6875, usedOn: 'ORFS -6; 45° flare -7' },
  { size: '13/16', tpi: 16, series: 'UN', majorInch: 0.8125, usedOn: 'ORFS -8' },
  { size: '1', tpi: 14, series: 'UNS', majorInch: 1, usedOn: 'ORFS -10' },
  { size: '1-7/16', tpi: 12, series: 'UN', majorInch: 1.4375, usedOn: 'ORFS -16' },
  { size: '1-11/16', tpi: 12, series: 'UN', majorInch: 1.6875, usedOn: 'ORFS -20' },
  { size: '1-1/16', tpi: 14, series: 'UNS', majorInch: 1.0625, usedOn: '45° flare -12' },
  { size: '1-1/4', tpi: 12, series: 'UNF', majorInch: 1.25, usedOn: '45° flare -14' },
  { size: '1-3/8', tpi: 12, series: 'UNF', majorInch: 1.375, usedOn: '45° flare -16' },
  { size: '5/16', tpi: 28, series: 'UN', majorInch: 0.3125, usedOn: 'inverted flare -2' },
  { size: '7/16', tpi: 24, series: 'UNS', majorInch: 0.4375, usedOn: 'inverted flare -4; some brake banjo bolts' },
  { size: '11/16', tpi: 18, series: 'UNS', majorInch: 0.6875, usedOn: 'inverted flare -7' },
  { size: '3/4', tpi: 18, series: 'UNS', majorInch: 0.75, usedOn: 'inverted flare -8' },
  { size: '7/8', tpi: 18, series: 'UNS', majorInch: 0.875, usedOn: 'inverted flare -10' },
  { size: '1-1/16', tpi: 16, series: 'UN', majorInch: 1.0625, usedOn: 'inverted flare -12' },
];
