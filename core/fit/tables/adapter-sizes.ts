/**
 * Other ends in which an adapter with a 37° end of this dash is made: usual sizes, then less usual ones.
 */
export interface AdapterSizeRow {
  readonly dash: number;
  readonly usual: readonly string[];
  readonly lessUsual: readonly string[];
}

/** Source: SAE J514 regular and jump sizes, from memory. */
export const flareToNpt: readonly AdapterSizeRow[] = [
  { dash: 2, usual: ['1/8'], lessUsual: [] },
  { dash: 3, usual: ['1/8'], lessUsual: ['1/4'] },
  { dash: 4, usual: ['1/8', '1/4'], lessUsual: ['3/8'] },
  { dash: 5, usual: ['1/8', '1/4'], lessUsual: [] },
  { dash: 6, usual: ['1/4'], lessUsual: ['1/8', '3/8', '1/2'] },
  { dash: 8, usual: ['3/8'], lessUsual: ['1/4', '1/2', '3/4'] },
  { dash: 10, usual: ['1/2'], lessUsual: ['3/8', '3/4'] },
  { dash: 12, usual: ['3/4'], lessUsual: ['1/2', '1'] },
  { dash: 16, usual: ['1'], lessUsual: ['3/4'] },
  { dash: 20, usual: [], lessUsual: ['1'] },
];

/** With a sealing washer. Source: common practice, no published source. */
export const flareToMetric: readonly AdapterSizeRow[] = [
  { dash: 3, usual: ['M10x1', 'M10x1.25'], lessUsual: [] },
  { dash: 4, usual: ['M10x1', 'M10x1.25', 'M12x1.5'], lessUsual: ['M12x1.25', 'M14x1.5'] },
  { dash: 6, usual: ['M12x1.5', 'M14x1.5', 'M16x1.5', 'M18x1.5'], lessUsual: ['M10x1', 'M12x1.25', 'M14x1.25'] },
  { dash: 8, usual: ['M16x1.5', 'M18x1.5', 'M20x1.5', 'M22x1.5'], lessUsual: ['M14x1.5'] },
  { dash: 10, usual: ['M18x1.5', 'M22x1.5'], lessUsual: ['M20x1.5', 'M24x1.5'] },
  { dash: 12, usual: ['M22x1.5', 'M26x1.5', 'M27x2'], lessUsual: ['M24x1.5'] },
  { dash: 16, usual: ['M27x2', 'M33x2'], lessUsual: ['M30x2'] },
];

/** O-ring studs. Source: ISO 8434-2 pairing of flare and ISO 6149-3 stud, from memory. */
export const flareToOringStud: readonly AdapterSizeRow[] = [
  { dash: 4, usual: ['M12x1.5'], lessUsual: [] },
  { dash: 5, usual: ['M14x1.5'], lessUsual: [] },
  { dash: 6, usual: ['M16x1.5'], lessUsual: [] },
  { dash: 8, usual: ['M18x1.5'], lessUsual: [] },
  { dash: 10, usual: ['M22x1.5'], lessUsual: [] },
  { dash: 12, usual: ['M27x2'], lessUsual: [] },
  { dash: 16, usual: ['M33x2'], lessUsual: [] },
  { dash: 20, usual: ['M42x2'], lessUsual: [] },
];

/** Parallel (G) and taper (R) 55° pipe studs. Source: common practice, no published source. */
export const flareToBsp: readonly AdapterSizeRow[] = [
  { dash: 4, usual: ['1/8', '1/4'], lessUsual: [] },
  { dash: 6, usual: ['1/4', '3/8'], lessUsual: [] },
  { dash: 8, usual: ['3/8', '1/2'], lessUsual: [] },
  { dash: 10, usual: ['1/2'], lessUsual: [] },
  { dash: 12, usual: ['3/4'], lessUsual: [] },
  { dash: 16, usual: ['1'], lessUsual: [] },
];

/** Banjo eyes with their bolt. Source: common practice, no published source. */
export const flareToBanjo: readonly AdapterSizeRow[] = [
  { dash: 3, usual: ['M10x1', 'M10x1.25', '3/8-24', '7/16-20', 'M12x1.5'], lessUsual: [] },
  { dash: 4, usual: ['M10x1', 'M10x1.25', '3/8-24', '7/16-20', 'M12x1.5'], lessUsual: [] },
  { dash: 6, usual: ['M12x1.5', 'M14x1.5'], lessUsual: [] },
];

/** Quick connects, by nominal of the male tube in mm. Source: SAE J2044 end form; the adapter itself common practice. */
export const flareToQuick: readonly {
  readonly dash: number;
  readonly female: readonly number[];
  readonly male: readonly number[];
}[] = [
  { dash: 6, female: [7.89, 9.49], male: [7.89, 9.49] },
  { dash: 8, female: [9.49, 11.8], male: [] },
];

/** Threads of sensors that adapters to 1/8 NPT are made for. Source: common practice. */
export const sensorThreads: readonly string[] = ['M10x1', 'M12x1.5', 'M14x1.5', 'M16x1.5'];
