/** One listed metric thread; lengths in mm, stress area in mm². */
export interface MetricThreadRow {
  readonly diameter: number;
  readonly pitch: number;
  /** Pitch diameter d2. */
  readonly pitchDiameter: number;
  /** Minor diameter d3 of the outside thread. */
  readonly outsideMinor: number;
  /** Minor diameter D1 of the inside thread. */
  readonly insideMinor: number;
  readonly stressArea: number;
  readonly tapDrill: number;
}

type Row = readonly [number, number, number, number, number, number, number];

const read = (rows: readonly Row[]): readonly MetricThreadRow[] =>
  rows.map(([diameter, pitch, pitchDiameter, outsideMinor, insideMinor, stressArea, tapDrill]) => ({
    diameter,
    pitch,
    pitchDiameter,
    outsideMinor,
    insideMinor,
    stressArea,
    tapDrill,
  }));

/**
 * The pitch that is meant when none is written. Source: sizes and pitches ISO 261/262 (cross-checked with an open thread
 * library); profile by the formulas of ISO 68-1 and ISO 724; stress area by the formula of ISO 898-1 (agrees with its
 * table, from memory); tap drill: diameter less pitch, as in the practice of ISO 2306.
 */
export const coarseThreads: readonly MetricThreadRow[] = read([
  [3, 0.5, 2.675, 2.387, 2.459, 5.03, 2.5],
  [3.5, 0.6, 3.11, 2.764, 2.85, 6.78, 2.9],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a minor diameter that happens to be near pi.
  [4, 0.7, 3.545, 3.141, 3.242, 8.78, 3.3],
  [5, 0.8, 4.48, 4.019, 4.134, 14.2, 4.2],
  [6, 1, 5.35, 4.773, 4.917, 20.1, 5],
  [7, 1, 6.35, 5.773, 5.917, 28.9, 6],
  [8, 1.25, 7.188, 6.466, 6.647, 36.6, 6.8],
  [10, 1.5, 9.026, 8.16, 8.376, 58, 8.5],
  [12, 1.75, 10.863, 9.853, 10.106, 84.3, 10.2],
  [14, 2, 12.701, 11.546, 11.835, 115, 12],
  [16, 2, 14.701, 13.546, 13.835, 157, 14],
  [18, 2.5, 16.376, 14.933, 15.294, 192, 15.5],
  [20, 2.5, 18.376, 16.933, 17.294, 245, 17.5],
  [22, 2.5, 20.376, 18.933, 19.294, 303, 19.5],
  [24, 3, 22.051, 20.319, 20.752, 353, 21],
  [27, 3, 25.051, 23.319, 23.752, 459, 24],
  [30, 3.5, 27.727, 25.706, 26.211, 561, 26.5],
]);

/** Finer pitches; the source is that of the coarse ones. */
export const fineThreads: readonly MetricThreadRow[] = read([
  [3, 0.35, 2.773, 2.571, 2.621, 5.61, 2.65],
  [3.5, 0.35, 3.273, 3.071, 3.121, 7.9, 3.15],
  [4, 0.5, 3.675, 3.387, 3.459, 9.79, 3.5],
  [5, 0.5, 4.675, 4.387, 4.459, 16.1, 4.5],
  [6, 0.75, 5.513, 5.08, 5.188, 22, 5.25],
  [7, 0.75, 6.513, 6.08, 6.188, 31.1, 6.25],
  [8, 1, 7.35, 6.773, 6.917, 39.2, 7],
  [8, 0.75, 7.513, 7.08, 7.188, 41.8, 7.25],
  [10, 1.25, 9.188, 8.466, 8.647, 61.2, 8.8],
  [10, 1, 9.35, 8.773, 8.917, 64.5, 9],
  [10, 0.75, 9.513, 9.08, 9.188, 67.9, 9.25],
  [12, 1.5, 11.026, 10.16, 10.376, 88.1, 10.5],
  [12, 1.25, 11.188, 10.466, 10.647, 92.1, 10.8],
  [12, 1, 11.35, 10.773, 10.917, 96.1, 11],
  [14, 1.5, 13.026, 12.16, 12.376, 125, 12.5],
  [14, 1.25, 13.188, 12.466, 12.647, 129, 12.8],
  [14, 1, 13.35, 12.773, 12.917, 134, 13],
  [16, 1.5, 15.026, 14.16, 14.376, 167, 14.5],
  [16, 1, 15.35, 14.773, 14.917, 178, 15],
  [18, 2, 16.701, 15.546, 15.835, 204, 16],
  [18, 1.5, 17.026, 16.16, 16.376, 216, 16.5],
  [18, 1, 17.35, 16.773, 16.917, 229, 17],
  [20, 2, 18.701, 17.546, 17.835, 258, 18],
  [20, 1.5, 19.026, 18.16, 18.376, 272, 18.5],
  [20, 1, 19.35, 18.773, 18.917, 285, 19],
  [22, 2, 20.701, 19.546, 19.835, 318, 20],
  [22, 1.5, 21.026, 20.16, 20.376, 333, 20.5],
  [22, 1, 21.35, 20.773, 20.917, 348, 21],
  [24, 2, 22.701, 21.546, 21.835, 384, 22],
  [24, 1.5, 23.026, 22.16, 22.376, 401, 22.5],
  [24, 1, 23.35, 22.773, 22.917, 418, 23],
  [26, 1.5, 25.026, 24.16, 24.376, 475, 24.5],
  [27, 2, 25.701, 24.546, 24.835, 496, 25],
  [27, 1.5, 26.026, 25.16, 25.376, 514, 25.5],
  [27, 1, 26.35, 25.773, 25.917, 533, 26],
  [30, 3, 28.051, 26.319, 26.752, 580, 27],
  [30, 2, 28.701, 27.546, 27.835, 621, 28],
  [30, 1.5, 29.026, 28.16, 28.376, 642, 28.5],
  [30, 1, 29.35, 28.773, 28.917, 663, 29],
]);
