import { calculator, graveWarning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { insideLimits, limitInputs } from './limits-of-size.ts';

export const pistonToWall = calculator({
  id: 'G2',
  slug: 'piston-to-wall',
  title: 'Piston to wall',
  about: 'The clearance between a piston and its bore, on the diameter.',
  inputs: {
    bore: { label: 'Bore', dimension: 'length', unit: 'mm', must: { above: 0 } },
    piston: {
      label: 'Piston',
      hint: 'diameter, measured where its maker says',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    ...limitInputs,
  },
  outputs: {
    clearance: { label: 'Clearance', hint: 'on the diameter', dimension: 'length', unit: 'mm' },
    clearance_ratio: { label: 'Clearance to bore', dimension: 'number', unit: '-' },
    in_limits: { kind: 'yes-no', label: 'Inside the limits' },
  },
  formula: 'clearance = bore − piston; clearance_ratio = clearance/bore',
  source: 'Definition; derived by hand. The hints: common practice, no published source.',
  notes: [
    'Common practice, no published source, for bores of 80 to 100 mm: cast pistons 0.025 to 0.05 mm, forged 0.06 to 0.12 mm, by alloy. The limits come from the piston’s maker.',
  ],
  caution: makersValueGoverns,
  example: {
    bore: { value: 86.512, unit: 'mm' },
    piston: { value: 86.43, unit: 'mm' },
    limit_min: { value: 0.07, unit: 'mm' },
    limit_max: { value: 0.1, unit: 'mm' },
  },
  compute: ({ bore, piston, ...limits }) => {
    const clearance = bore - piston;
    return {
      outputs: { clearance, clearance_ratio: clearance / bore, in_limits: insideLimits(clearance, limits) },
      warnings:
        clearance <= 0
          ? [graveWarning('There is no clearance: the piston would seize in this bore. Measure again.')]
          : [],
    };
  },
});
