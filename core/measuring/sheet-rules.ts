/** What a measuring sheet must be besides its shape, so that every reading has one place and a meaning. */
import { exceeds } from '../calculators/limits.ts';
import { Refusal } from '../refusal.ts';
import type { Dimension } from '../units/dimensions.ts';
import { unitsOf } from '../units/measure.ts';
import type { FitSetup } from './select-fit.ts';
import type { SheetLimits, SheetSetup } from './sheet.ts';

/** What a builder measures at the bench, in the order in which a unit is looked for. */
const measured: readonly Dimension[] = ['length', 'volume', 'angle', 'mass', 'torque', 'force', 'pressureDifference'];

/**
 * The dimension in which a sheet measures: that of its unit.
 * @throws Refusal `bad-input` at `unit` where it is none of those that are measured in.
 */
export function sheetDimension(unit: string): Dimension {
  const found = measured.find((dimension) => unitsOf(dimension).includes(unit));
  if (found !== undefined) return found;
  const units = measured.flatMap((dimension) => unitsOf(dimension)).filter((one) => one !== '-');
  return refuse('unit', `A sheet can't be kept in “${unit}”.`, units.join(', '));
}

/**
 * Refuses a sheet that can't be filled in or judged: a unit that nothing is measured in, a place or reading named twice,
 * limits the wrong way round, a shim of no thickness.
 * @throws Refusal `bad-input` naming the field.
 */
export function checkSheet(
  sheet: Pick<SheetSetup, 'unit' | 'places' | 'readings' | 'limits' | 'clearance'> & { readonly fit: FitSetup | null },
): void {
  sheetDimension(sheet.unit);
  refuseTwice('places', 'place', sheet.places);
  refuseTwice('readings', 'reading', sheet.readings);
  refuseCrossed('limits', 'limits', sheet.limits);
  refuseCrossed('clearance', 'limits of the clearance', sheet.clearance);
  const { fit } = sheet;
  if (fit === null) return;
  if (fit.sizes.some(({ size }) => !(size > 0))) {
    refuse('fit', 'A size at hand is not above 0.', 'sizes above 0, in the unit of the sheet');
  }
  if (fit.now.some((size) => size !== null && size < 0)) {
    refuse(
      'fit',
      'What is in a place now is below 0.',
      'the size that is in, 0 for none, or nothing where it is not known',
    );
  }
}

function refuse(field: string, problem: string, accepted: string): never {
  throw new Refusal('bad-input', `${problem} Nothing was changed.`, { field, accepted });
}

function refuseTwice(field: 'places' | 'readings', word: string, names: readonly string[]): void {
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined)
    refuse(field, `The ${word} “${twice}” is named twice.`, `a name of its own for every ${word}`);
}

function refuseCrossed(field: 'limits' | 'clearance', word: string, { least, most }: SheetLimits): void {
  if (least !== null && most !== null && exceeds(least, most)) {
    refuse(field, `The ${word} are the wrong way round: ${least} is above ${most}.`, 'the least, then the most');
  }
}
