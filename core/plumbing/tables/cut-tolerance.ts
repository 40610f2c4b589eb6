/** How far a cut hose may be off its length. RMA IP-2 Hose Handbook (2003), table 4-8, cut lengths (seen quoted). */
interface CutToleranceRow {
  readonly overMm: number;
  /** The last row has no end. */
  readonly upToMm?: number;
  /** Either way, in millimetres or as a share of the length. */
  readonly plusMinusMm?: number;
  readonly plusMinusShare?: number;
}

export const cutToleranceSource = 'RMA IP-2 Hose Handbook (2003) Table 4-8, cut lengths';

export const cutToleranceRows: readonly CutToleranceRow[] = [
  { overMm: 0, upToMm: 305, plusMinusMm: 3.2 },
  { overMm: 305, upToMm: 610, plusMinusMm: 4.8 },
  { overMm: 610, upToMm: 915, plusMinusMm: 6.4 },
  { overMm: 915, upToMm: 1220, plusMinusMm: 9.5 },
  { overMm: 1220, upToMm: 1830, plusMinusMm: 12.7 },
  { overMm: 1830, plusMinusShare: 0.01 },
];
