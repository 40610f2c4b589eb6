import { calculator, warning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { exceeds } from '../limits.ts';
import { bore, boreArea, cylinders, stroke } from './cylinder.ts';

/** Above this the wall is worth measuring [m]; common practice, no published source. */
const measureWallAbove = 1e-3;

export const overbore = calculator({
  id: 'B4',
  slug: 'overbore',
  title: 'Overbore',
  about: 'What boring the cylinders out adds to the displacement.',
  inputs: {
    bore,
    stroke,
    cylinders,
    overbore: {
      label: 'Overbore',
      hint: 'on the diameter',
      dimension: 'length',
      unit: 'mm',
      must: { atLeast: 0 },
      usual: { to: 5 },
    },
  },
  outputs: {
    displacement: { label: 'Displacement after boring', dimension: 'volume', unit: 'cc' },
    displacement_change: { label: 'Displacement gained', dimension: 'volume', unit: 'cc' },
    displacement_change_pct: { label: 'Displacement gained, share', dimension: 'fraction', unit: '%' },
  },
  formula: 'displacement_change = π/4 · stroke · cylinders · ((bore + overbore)² − bore²)',
  source: 'Definition of displacement; derived by hand. Wall limit: common practice, no published source.',
  notes: ['The compression ratio changes too: work it again with the new bore (B2).'],
  caution: makersValueGoverns,
  example: {
    bore: { value: 86, unit: 'mm' },
    stroke: { value: 86, unit: 'mm' },
    cylinders: { value: 4 },
    overbore: { value: 0.5, unit: 'mm' },
  },
  compute: ({ bore: before, stroke: strokeLength, cylinders: count, overbore: added }) => {
    const displaced = (diameter: number): number => boreArea(diameter) * strokeLength * count;
    // (bore + overbore)² − bore², written so that a small overbore keeps its digits.
    const gained = (Math.PI / 4) * added * (2 * before + added) * strokeLength * count;
    return {
      outputs: {
        displacement: displaced(before + added),
        displacement_change: gained,
        displacement_change_pct: gained / displaced(before),
      },
      warnings: exceeds(added, measureWallAbove)
        ? [warning('Above 1 mm of overbore, have the cylinder walls measured by ultrasound first (common practice).')]
        : [],
    };
  },
});
