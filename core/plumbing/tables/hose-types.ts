/**
 * Hose types and what their rows usually say. Pressures and bend radii are typical figures; those marked on the hose, or
 * in its maker's data, go before them. Nothing here was read in a purchased standard: each type says where it is from.
 */

/** One size of a hose type; undefined where makers differ and the hose at hand has to be measured. */
export interface HoseSize {
  readonly dash: number;
  readonly boreMm?: number;
  readonly outsideMm?: number;
  readonly maxBar: number;
  /** To the inside of the bend. */
  readonly minBendRadiusMm: number;
}

/** A class printed on the hose, which settles its temperatures (and, for coolant hose, its rubber). */
export interface HoseClass {
  readonly name: string;
  readonly minC?: number;
  readonly maxC: number;
  readonly material?: string;
}

export interface HoseType {
  readonly id: string;
  readonly also: readonly string[];
  readonly construction: string;
  /** Rubber reinforced by braid, which shortens under pressure. */
  readonly braidedRubber: boolean;
  /** Tube material, where the type alone settles it. */
  readonly material?: string;
  readonly minC?: number;
  readonly maxC?: number;
  readonly classes?: readonly HoseClass[];
  /** Typical, for types without sizes in this table. */
  readonly maxBar?: number;
  readonly sizes: readonly HoseSize[];
  readonly note?: string;
  readonly source: string;
}

export const hoseTypes: readonly HoseType[] = [
  {
    id: '100R1AT',
    also: ['100R1AT / 1SN', '1SN', '100R1'],
    construction: 'one wire braid, rubber',
    braidedRubber: true,
    minC: -40,
    maxC: 100,
    sizes: [
      { dash: 3, boreMm: 4.8, maxBar: 250, minBendRadiusMm: 90 },
      { dash: 4, boreMm: 6.4, maxBar: 225, minBendRadiusMm: 100 },
      { dash: 5, boreMm: 8, maxBar: 215, minBendRadiusMm: 115 },
      { dash: 6, boreMm: 9.5, maxBar: 180, minBendRadiusMm: 130 },
      { dash: 8, boreMm: 12.7, maxBar: 160, minBendRadiusMm: 180 },
      { dash: 10, boreMm: 16, maxBar: 130, minBendRadiusMm: 200 },
      { dash: 12, boreMm: 19, maxBar: 105, minBendRadiusMm: 240 },
      { dash: 16, boreMm: 25.4, maxBar: 88, minBendRadiusMm: 300 },
      { dash: 20, boreMm: 31.8, maxBar: 63, minBendRadiusMm: 420 },
    ],
    source: 'typical: public table attributing EN 853 1SN / SAE 100R1AT; not checked against the standard',
  },
  {
    id: '100R2AT',
    also: ['100R2AT / 2SN', '2SN', '100R2'],
    construction: 'two wire braids, rubber',
    braidedRubber: true,
    minC: -40,
    maxC: 100,
    sizes: [
      { dash: 3, boreMm: 4.8, maxBar: 415, minBendRadiusMm: 90 },
      { dash: 4, boreMm: 6.4, maxBar: 400, minBendRadiusMm: 100 },
      { dash: 5, boreMm: 8, maxBar: 350, minBendRadiusMm: 115 },
      { dash: 6, boreMm: 9.5, maxBar: 330, minBendRadiusMm: 130 },
      { dash: 8, boreMm: 12.7, maxBar: 275, minBendRadiusMm: 180 },
      { dash: 10, boreMm: 16, maxBar: 250, minBendRadiusMm: 200 },
      { dash: 12, boreMm: 19, maxBar: 215, minBendRadiusMm: 240 },
      { dash: 16, boreMm: 25.4, maxBar: 165, minBendRadiusMm: 300 },
      { dash: 20, boreMm: 31.8, maxBar: 125, minBendRadiusMm: 420 },
    ],
    source: 'typical: public table attributing EN 853 2SN / SAE 100R2AT; not checked against the standard',
  },
  {
    id: '100R5',
    also: [],
    construction: 'one wire braid, textile cover, rubber',
    braidedRubber: true,
    minC: -40,
    maxC: 100,
    sizes: [
      { dash: 4, boreMm: 4.8, outsideMm: 12.9, maxBar: 210, minBendRadiusMm: 75 },
      { dash: 5, boreMm: 6.4, outsideMm: 14.5, maxBar: 210, minBendRadiusMm: 85 },
      { dash: 6, boreMm: 7.9, outsideMm: 16.8, maxBar: 155, minBendRadiusMm: 100 },
      { dash: 8, boreMm: 10.3, outsideMm: 19.1, maxBar: 140, minBendRadiusMm: 115 },
      { dash: 10, boreMm: 12.7, outsideMm: 22.9, maxBar: 122, minBendRadiusMm: 140 },
      { dash: 12, boreMm: 15.9, outsideMm: 27.1, maxBar: 105, minBendRadiusMm: 165 },
      { dash: 16, boreMm: 22.2, outsideMm: 30.8, maxBar: 56, minBendRadiusMm: 185 },
      { dash: 20, boreMm: 28.6, outsideMm: 37.6, maxBar: 43, minBendRadiusMm: 230 },
    ],
    source:
      'typical: a maker listing in a public repository attributing SAE 100R5; bores per SAE J517 nominal sizing (DN column agrees)',
  },
  {
    id: '100R6',
    also: [],
    construction: 'one textile braid, rubber, low pressure',
    braidedRubber: true,
    minC: -40,
    maxC: 100,
    sizes: [
      { dash: 4, boreMm: 6.4, outsideMm: 12.3, maxBar: 28, minBendRadiusMm: 65 },
      { dash: 5, boreMm: 7.9, outsideMm: 13.9, maxBar: 28, minBendRadiusMm: 80 },
      { dash: 6, boreMm: 9.5, outsideMm: 15.5, maxBar: 28, minBendRadiusMm: 80 },
      { dash: 8, boreMm: 12.7, outsideMm: 19.5, maxBar: 28, minBendRadiusMm: 100 },
      { dash: 10, boreMm: 15.9, outsideMm: 22.6, maxBar: 24, minBendRadiusMm: 125 },
      { dash: 12, boreMm: 19.1, outsideMm: 25.8, maxBar: 21, minBendRadiusMm: 150 },
      { dash: 16, boreMm: 25.4, outsideMm: 33.2, maxBar: 20, minBendRadiusMm: 170 },
    ],
    source: 'typical: a maker listing in a public repository attributing SAE 100R6',
  },
  {
    id: '100R14',
    also: [],
    construction: 'PTFE tube, stainless braid',
    braidedRubber: false,
    material: 'PTFE',
    minC: -54,
    maxC: 204,
    note: 'Temperatures from memory.',
    sizes: [
      { dash: 3, outsideMm: 8, maxBar: 200, minBendRadiusMm: 35 },
      { dash: 4, outsideMm: 9.5, maxBar: 175, minBendRadiusMm: 45 },
      { dash: 5, outsideMm: 11.8, maxBar: 150, minBendRadiusMm: 50 },
      { dash: 6, outsideMm: 14.1, maxBar: 135, minBendRadiusMm: 55 },
      { dash: 8, outsideMm: 17.2, maxBar: 120, minBendRadiusMm: 70 },
      { dash: 10, outsideMm: 20.5, maxBar: 100, minBendRadiusMm: 130 },
      { dash: 12, outsideMm: 23.7, maxBar: 90, minBendRadiusMm: 190 },
      { dash: 16, outsideMm: 30, maxBar: 65, minBendRadiusMm: 270 },
    ],
    source:
      'typical: a maker listing in a public repository attributing SAE 100R14; bore by dash differs between makers: enter it',
  },
  {
    id: '30R6',
    also: ['SAE 30R6'],
    construction: 'fuel hose, low pressure, rubber',
    braidedRubber: false,
    minC: -40,
    maxC: 100,
    maxBar: 3.4,
    sizes: [],
    source: 'SAE J30; 0.34 MPa / 50 psi from memory: read the hose marking',
  },
  {
    id: '30R7',
    also: ['SAE 30R7'],
    construction: 'fuel hose, low pressure, rubber',
    braidedRubber: false,
    minC: -40,
    maxC: 100,
    maxBar: 3.4,
    sizes: [],
    source: 'SAE J30; 0.34 MPa / 50 psi from memory: read the hose marking',
  },
  {
    id: '30R9',
    also: ['SAE 30R9'],
    construction: 'fuel injection hose',
    braidedRubber: false,
    minC: -40,
    maxC: 135,
    maxBar: 6.9,
    sizes: [],
    source: 'SAE J30; 0.69 MPa / 100 psi from memory: read the hose marking',
  },
  {
    id: '30R10',
    also: ['SAE 30R10'],
    construction: 'in-tank (submersible) fuel hose',
    braidedRubber: false,
    minC: -40,
    maxC: 100,
    maxBar: 6.9,
    sizes: [],
    source: 'SAE J30 (scope verified); rating from memory: read the hose marking',
  },
  {
    id: '30R14',
    also: ['SAE 30R14'],
    construction: 'low-permeation fuel hose',
    braidedRubber: false,
    minC: -40,
    maxC: 100,
    maxBar: 3.4,
    sizes: [],
    source: 'SAE J30; public forum texts call it 50 psi: read the hose marking',
  },
  {
    id: 'J1532A',
    also: ['SAE J1532 type A', 'J1532 type A'],
    construction: 'transmission oil cooler hose',
    braidedRubber: false,
    classes: [
      { name: '1', maxC: 125 },
      { name: '2', maxC: 150 },
      { name: '3', maxC: 165 },
    ],
    maxBar: 17,
    sizes: [],
    source: 'SAE J1532 (public summary)',
  },
  {
    id: 'J1532B',
    also: ['SAE J1532 type B', 'J1532 type B'],
    construction: 'transmission oil cooler hose, add-on coolers only',
    braidedRubber: false,
    classes: [
      { name: '1', maxC: 125 },
      { name: '2', maxC: 150 },
      { name: '3', maxC: 165 },
    ],
    maxBar: 10,
    sizes: [],
    note: 'Only for coolers that were added on.',
    source: 'SAE J1532 (public summary)',
  },
  {
    id: 'J1019',
    also: ['SAE J1019 (cancelled 2007)'],
    construction: 'high-temperature oil hose',
    braidedRubber: false,
    minC: -40,
    maxC: 150,
    maxBar: 15,
    sizes: [],
    note: 'SAE J1019 was cancelled in September 2007; its hot-oil test moved to SAE J1405. The marked figures are taken.',
    source: 'SAE J1019 scope (public copy): 1.5 MPa, 150 °C; cancelled Sep 2007, hot-oil test moved to SAE J1405',
  },
  {
    id: '20R3/20R4',
    also: ['20R3', '20R4'],
    construction: 'heater / radiator hose',
    braidedRubber: false,
    classes: [
      { name: 'A', minC: -55, maxC: 175, material: 'VMQ (silicone)' },
      { name: 'B', minC: -40, maxC: 100, material: 'NBR' },
      { name: 'C', minC: -40, maxC: 100, material: 'CR' },
      { name: 'D-1', minC: -40, maxC: 125, material: 'EPDM' },
      { name: 'D-2', minC: -40, maxC: 125, material: 'EPDM' },
      { name: 'D-3', minC: -40, maxC: 150, material: 'EPDM' },
      { name: 'E', minC: -40, maxC: 125 },
    ],
    sizes: [],
    source: 'SAE J20-2022 (public summary); pressure depends on bore: read the hose data',
  },
];
