/** One taper pipe thread with 60° flanks. */
export interface NptRow {
  readonly size: string;
  readonly tpi: number;
  /** Outside diameter of the pipe, mm; stands for the thread's diameter in comparisons. */
  readonly pipeOutside: number;
  /** Pitch diameter E1 at the gauge plane, inch. */
  readonly e1Inch: number;
  /** Engagement by hand L1, inch. */
  readonly handTightInch: number;
}

/** Source: ASME B1.20.1 Table 2 basic dimensions (three public transcriptions agree). Taper 1:16, flanks 60°. */
export const nptThreads: readonly NptRow[] = [
  { size: '1/16', tpi: 27, pipeOutside: 7.938, e1Inch: 0.28118, handTightInch: 0.16 },
  { size: '1/8', tpi: 27, pipeOutside: 10.287, e1Inch: 0.3736, handTightInch: 0.1615 },
  { size: '1/4', tpi: 18, pipeOutside: 13.716, e1Inch: 0.49163, handTightInch: 0.2278 },
  { size: '3/8', tpi: 18, pipeOutside: 17.145, e1Inch: 0.62701, handTightInch: 0.24 },
  { size: '1/2', tpi: 14, pipeOutside: 21.336, e1Inch: 0.77843, handTightInch: 0.32 },
  { size: '3/4', tpi: 14, pipeOutside: 26.67, e1Inch: 0.98887, handTightInch: 0.339 },
  { size: '1', tpi: 11.5, pipeOutside: 33.401, e1Inch: 1.23863, handTightInch: 0.4 },
];

/** One pipe thread with 55° flanks. */
export interface BspRow {
  readonly size: string;
  readonly tpi: number;
  /** Major diameter (of the taper thread: at the gauge plane), mm. */
  readonly major: number;
  readonly minor: number;
  /** Whether ISO 7-1 lists a taper thread of this size; the others are parallel (ISO 228-1) only. */
  readonly taperListed: boolean;
}

/** Source: ISO 228-1 (an open thread library agrees) and ISO 7-1 (a handbook excerpt agrees for 1/8, 1/4, 3/8; 1/16 from memory). */
export const bspThreads: readonly BspRow[] = [
  { size: '1/16', tpi: 28, major: 7.723, minor: 6.561, taperListed: true },
  { size: '1/8', tpi: 28, major: 9.728, minor: 8.566, taperListed: true },
  { size: '1/4', tpi: 19, major: 13.157, minor: 11.445, taperListed: true },
  { size: '3/8', tpi: 19, major: 16.662, minor: 14.95, taperListed: true },
  { size: '1/2', tpi: 14, major: 20.955, minor: 18.631, taperListed: true },
  { size: '5/8', tpi: 14, major: 22.911, minor: 20.587, taperListed: false },
  { size: '3/4', tpi: 14, major: 26.441, minor: 24.117, taperListed: true },
  { size: '7/8', tpi: 14, major: 30.201, minor: 27.877, taperListed: false },
  { size: '1', tpi: 11, major: 33.249, minor: 30.291, taperListed: true },
];
