/** ISO 898-1 (proof-load table seen) and SAE J429 (seen); the smallest values of each class. */
import { refuseInput } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';

const megapascal = 1e6;
const psi = 4.448_221_615_260_5 / 0.0254 ** 2;
const inch = 0.0254;

interface Strength {
  /** All in Pa. */
  readonly proofStress: number;
  readonly yieldStrength: number;
  readonly tensileStrength: number;
}

interface Row extends Strength {
  /** For diameters from (where set) and up to (where set), in m. */
  readonly from?: number;
  readonly upTo?: number;
}

const row = (
  unit: number,
  proof: number,
  yieldPoint: number,
  tensile: number,
  range: Omit<Row, keyof Strength> = {},
) => ({
  proofStress: proof * unit,
  yieldStrength: yieldPoint * unit,
  tensileStrength: tensile * unit,
  ...range,
});

/** First row that the diameter fits. */
const rows = {
  'class 8.8': [row(megapascal, 580, 640, 800, { upTo: 0.016 }), row(megapascal, 600, 660, 830)],
  'class 10.9': [row(megapascal, 830, 940, 1040)],
  'class 12.9': [row(megapascal, 970, 1100, 1220)],
  'grade 5': [
    row(psi, 85_000, 92_000, 120_000, { from: inch / 4, upTo: inch }),
    row(psi, 74_000, 81_000, 105_000, { from: inch, upTo: 1.5 * inch }),
  ],
  'grade 8': [row(psi, 120_000, 130_000, 150_000, { from: inch / 4, upTo: 1.5 * inch })],
} as const satisfies Readonly<Record<string, readonly Row[]>>;

export type StrengthClass = keyof typeof rows;

/** The classes as a choice, and how they read. */
export const strengthClasses = {
  'class 8.8': 'ISO 898-1 class 8.8',
  'class 10.9': 'ISO 898-1 class 10.9',
  'class 12.9': 'ISO 898-1 class 12.9',
  'grade 5': 'SAE J429 grade 5',
  'grade 8': 'SAE J429 grade 8',
} as const satisfies Record<StrengthClass, string>;

/**
 * The strength of a class at a diameter [m].
 * @throws Refusal `bad-input` on `field` where the class isn't made in that diameter.
 */
export function strengthOf(name: StrengthClass, diameter: number, field: string): Strength {
  const found = (rows[name] as readonly Row[]).find(
    ({ from, upTo }) =>
      (from === undefined || !fallsShort(diameter, from)) && (upTo === undefined || !exceeds(diameter, upTo)),
  );
  if (found === undefined) {
    refuseInput(field, `${strengthClasses[name]} has no value for this diameter.`, 'a diameter of 1/4 to 1 1/2 in');
  }
  return found;
}
