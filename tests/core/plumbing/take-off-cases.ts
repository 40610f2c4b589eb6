/**
 * Take-off cases. Source: computed with the formulas of the take-off independently of this program; cut-off dimensions
 * are example inputs, not from any maker; bend radii are the typical ones of the hose types (common practice figures).
 */
interface TakeOffCase {
  readonly id: string;
  readonly text: string;
  readonly input: Readonly<Record<string, string | number>>;
  readonly expected: {
    readonly free_hose_mm: number;
    readonly cut_exact_mm: number;
    readonly cut_mm: number;
    readonly tolerance_mm: string;
    readonly inside_radius_mm?: number;
    readonly bend?: string;
    readonly lead1?: string;
    readonly lead2?: string;
    readonly leads?: string;
  };
}

export const takeOffCases: readonly TakeOffCase[] = [
  {
    id: 'T01',
    text: 'engine oil, straight line, both ends straight, hose 100R5 -8',
    input: { route: 'straight', length: 620, c1: 32, c2: 32, od: 19.1, rmin: 115, k: 0.04 },
    expected: { free_hose_mm: 556, cut_exact_mm: 579.2, cut_mm: 580, tolerance_mm: '4.8' },
  },
  {
    id: 'T02',
    text: 'fuel E10, two 90° ends into ports on one face, hose 100R14 -6',
    input: { route: 'straight', length: 480, c1: 38, c2: 38, od: 14.1, rmin: 55, k: 0.0 },
    expected: { free_hose_mm: 404, cut_exact_mm: 404.0, cut_mm: 405, tolerance_mm: '4.8' },
  },
  {
    id: 'T03',
    text: 'engine oil, U between parallel ports 300 mm apart, hose 100R5 -10',
    input: { route: 'u', spacing: 300, c1: 36, c2: 36, od: 22.9, rmin: 140 },
    expected: {
      free_hose_mm: 522.0,
      cut_exact_mm: 522.0,
      cut_mm: 525,
      inside_radius_mm: 138.6,
      bend: 'fail',
      tolerance_mm: '4.8',
    },
  },
  {
    id: 'T04',
    text: 'engine oil, same U with ports 330 mm apart',
    input: { route: 'u', spacing: 330, c1: 36, c2: 36, od: 22.9, rmin: 140 },
    expected: {
      free_hose_mm: 569.2,
      cut_exact_mm: 569.2,
      cut_mm: 570,
      inside_radius_mm: 153.6,
      bend: 'pass',
      tolerance_mm: '4.8',
    },
  },
  {
    id: 'T05',
    text: 'fuel, hose turns a 90° corner, legs 260 and 340 mm, hose 100R14 -8, R 90',
    input: { route: 'corner', a: 260, b: 340, r: 90, c1: 34, c2: 34, od: 17.2, rmin: 70 },
    expected: {
      free_hose_mm: 493.4,
      cut_exact_mm: 493.4,
      cut_mm: 495,
      inside_radius_mm: 81.4,
      bend: 'pass',
      lead1: 'pass',
      lead2: 'pass',
      tolerance_mm: '4.8',
    },
  },
  {
    id: 'T06',
    text: 'coolant, lateral offset 80 mm over 420 mm, hose 100R6 -12, R 165',
    input: { route: 'offset', x: 420, y: 80, r: 165, c1: 30, c2: 30, od: 25.8, rmin: 150 },
    expected: {
      free_hose_mm: 379.3,
      cut_exact_mm: 379.3,
      cut_mm: 380,
      inside_radius_mm: 152.1,
      bend: 'pass',
      leads: 'pass',
      tolerance_mm: '4.8',
    },
  },
  {
    id: 'T07',
    text: 'engine on mounts: straight line plus 15 mm movement, hose 100R2AT -6 (outside diameter 17.5 entered)',
    input: { route: 'straight', length: 900, c1: 28, c2: 44, od: 17.5, rmin: 130, k: 0.04, move: 15 },
    expected: { free_hose_mm: 828, cut_exact_mm: 877.5, cut_mm: 880, tolerance_mm: '6.4' },
  },
  {
    id: 'T08',
    text: 'turbocharger oil drain -10, straight end to 45° end, measured path 355 mm, smallest bend radius 150',
    input: { route: 'measured', length: 355, c1: 36, c2: 52, od: 22.6, rmin: 125, r: 150 },
    expected: {
      free_hose_mm: 267,
      cut_exact_mm: 267.0,
      cut_mm: 270,
      inside_radius_mm: 138.7,
      bend: 'pass',
      tolerance_mm: '3.2',
    },
  },
  {
    id: 'T09',
    text: 'corner too tight: legs 120 and 120, 100R5 -8, R 130',
    input: { route: 'corner', a: 120, b: 120, r: 130, c1: 32, c2: 32, od: 19.1, rmin: 115 },
    expected: {
      free_hose_mm: 120.2,
      cut_exact_mm: 120.2,
      cut_mm: 125,
      inside_radius_mm: 120.5,
      bend: 'pass',
      lead1: 'fail',
      lead2: 'fail',
      tolerance_mm: '3.2',
    },
  },
  {
    id: 'T10',
    text: 'long return line, measured path 2150 mm, ends 120° and straight, hose 100R6 -6',
    input: { route: 'measured', length: 2150, c1: 46, c2: 30, od: 15.5, rmin: 80, r: 120, k: 0.02 },
    expected: {
      free_hose_mm: 2074,
      cut_exact_mm: 2116.3,
      cut_mm: 2120,
      inside_radius_mm: 112.2,
      bend: 'pass',
      tolerance_mm: '1 %',
    },
  },
];
