/** The space above a piston, asked for by two calculators that must be exact inverses of one another. */
import { graveWarning, type NumberInput, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { bore, boreArea, stroke } from './cylinder.ts';

/** Squish, the gap between piston and head [m]; common practice, no published source. */
const leastSquish = 0.8e-3;
const mostSquish = 1.5e-3;

/** Everything around the clearance volume but the chamber itself. */
export const spaceInputs = {
  bore,
  stroke,
  gasket_bore: {
    label: 'Gasket bore',
    dimension: 'length',
    unit: 'mm',
    must: { above: 0 },
    usual: { from: 30, to: 210 },
  },
  gasket_thickness: {
    label: 'Gasket thickness',
    hint: 'compressed',
    dimension: 'length',
    unit: 'mm',
    must: { atLeast: 0 },
    usual: { to: 5 },
  },
  deck_clearance: {
    label: 'Deck clearance',
    hint: 'positive when the piston stands below the deck at top dead centre',
    dimension: 'length',
    unit: 'mm',
    usual: { from: -2, to: 5 },
  },
  piston_dish: {
    label: 'Piston dish',
    hint: 'positive for a dish or valve pockets, negative for a dome',
    dimension: 'volume',
    unit: 'cc',
    usual: { from: -60, to: 100 },
  },
} as const satisfies Record<string, NumberInput>;

export interface Space {
  readonly bore: number;
  readonly stroke: number;
  readonly gasket_bore: number;
  readonly gasket_thickness: number;
  readonly deck_clearance: number;
  readonly piston_dish: number;
}

/** Volumes [m³] beside the chamber, and the squish [m]. */
export function volumesOf(space: Space) {
  const gasket = boreArea(space.gasket_bore) * space.gasket_thickness;
  const deck = boreArea(space.bore) * space.deck_clearance;
  return {
    swept: boreArea(space.bore) * space.stroke,
    gasket,
    deck,
    besideChamber: gasket + deck + space.piston_dish,
    squish: space.gasket_thickness + space.deck_clearance,
  };
}

/** What looks wrong about gasket, squish and ratio; all of it common practice. */
export function spaceWarnings(space: Space, ratio: number): Warning[] {
  const { squish } = volumesOf(space);
  const warnings: Warning[] = [];
  if (fallsShort(space.gasket_bore, space.bore)) {
    warnings.push(graveWarning('The gasket bore is smaller than the bore: its edge stands in the cylinder and burns.'));
  }
  if (squish <= 0) {
    warnings.push(graveWarning('Gasket thickness and deck clearance leave no gap: the piston meets the head.'));
  } else if (fallsShort(squish, leastSquish)) {
    warnings.push(
      warning(
        'Squish (gasket thickness and deck clearance) is below 0.8 mm (common practice): the piston may touch the head at speed.',
      ),
    );
  } else if (exceeds(squish, mostSquish)) {
    warnings.push(
      warning(
        'Squish (gasket thickness and deck clearance) is above 1.5 mm (common practice): it hardly works as squish.',
      ),
    );
  }
  if (fallsShort(ratio, 7) || exceeds(ratio, 14)) {
    warnings.push(warning('The compression ratio is outside 7 to 14: check the entries.'));
  }
  return warnings;
}

export const crevice = 'The crevice above the top ring is left out; enter it with the piston dish if it was measured.';
export const ratioSource =
  'Definition as in Heywood, Internal Combustion Engine Fundamentals (from memory); derived by hand. Squish and ratio limits: common practice, no published source.';
