/** Metric fluid ports and banjo bolts; threads as `M14x1.5`, lengths in mm. */

/** Ports with an O-ring in the chamfered mouth. Source: ISO 6149-1 (public size list). */
export const oRingPorts: readonly string[] = [
  'M8x1',
  'M10x1',
  'M12x1.5',
  'M14x1.5',
  'M16x1.5',
  'M18x1.5',
  'M22x1.5',
  'M27x2',
  'M33x2',
  'M42x2',
  'M48x2',
];

/** Ports that seal by a washer on a flat face, with the least face diameter. Source: ISO 9974-1 / DIN 3852-1 (public stud table). */
export const flatFacePorts: readonly { readonly thread: string; readonly faceMm: number }[] = [
  { thread: 'M10x1', faceMm: 15 },
  { thread: 'M12x1.5', faceMm: 18 },
  { thread: 'M14x1.5', faceMm: 20 },
  { thread: 'M16x1.5', faceMm: 22 },
  { thread: 'M18x1.5', faceMm: 24 },
  { thread: 'M20x1.5', faceMm: 26 },
  { thread: 'M22x1.5', faceMm: 28 },
  { thread: 'M26x1.5', faceMm: 32 },
  { thread: 'M27x2', faceMm: 33 },
  { thread: 'M33x2', faceMm: 40 },
  { thread: 'M42x2', faceMm: 50 },
  { thread: 'M48x2', faceMm: 56 },
];

export interface BanjoRow {
  readonly thread: string;
  /** Washer inside x outside diameter. */
  readonly washer?: string;
  readonly hexMm?: number;
  readonly boreMm?: number;
  readonly tubeMm?: number;
  readonly note?: string;
}

/**
 * Source: hex and bore DIN 7643 (a public transcription; M8x1 not verified); tube (DIN 7642) and washer (DIN 7603) from
 * memory; rows with a note: common practice, no published source.
 */
export const banjoSizes: readonly BanjoRow[] = [
  { thread: 'M8x1', washer: '8x11.5', tubeMm: 4 },
  { thread: 'M10x1', washer: '10x13.5', hexMm: 14, boreMm: 5.5, tubeMm: 6 },
  { thread: 'M12x1.5', washer: '12x15.5', hexMm: 17, boreMm: 7, tubeMm: 8 },
  { thread: 'M14x1.5', washer: '14x18', hexMm: 19, boreMm: 9, tubeMm: 10 },
  { thread: 'M16x1.5', washer: '16x20', hexMm: 22, boreMm: 11, tubeMm: 12 },
  { thread: 'M18x1.5', washer: '18x22', hexMm: 24, boreMm: 13, tubeMm: 15 },
  { thread: 'M22x1.5', washer: '22x27', hexMm: 27, boreMm: 16, tubeMm: 18 },
  { thread: 'M26x1.5', washer: '26x31', hexMm: 32, boreMm: 20, tubeMm: 22 },
  { thread: 'M10x1.25', note: 'brake hose and fuel, vehicle practice' },
  { thread: 'M10x1.5', note: 'vehicle practice' },
  { thread: 'M12x1', note: 'vehicle practice' },
  { thread: 'M12x1.25', note: 'vehicle practice' },
  { thread: '7/16-20', note: 'vehicle practice' },
  { thread: '7/16-24', note: 'brake caliper practice' },
  { thread: '3/8-24', note: 'brake practice' },
  { thread: '1/2-20', note: 'vehicle practice' },
];
