import { calculator, graveWarning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { insideLimits, limitInputs } from './limits-of-size.ts';

export const bearingClearance = calculator({
  id: 'G1',
  slug: 'bearing-clearance',
  title: 'Plain-bearing oil clearance',
  about: 'The oil clearance between a journal and its bearing, on the diameter.',
  inputs: {
    bearing_bore: {
      label: 'Bearing bore',
      hint: 'shells fitted, caps torqued',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    journal: { label: 'Journal', hint: 'diameter', dimension: 'length', unit: 'mm', must: { above: 0 } },
    ...limitInputs,
  },
  outputs: {
    clearance: { label: 'Clearance', hint: 'on the diameter', dimension: 'length', unit: 'mm' },
    clearance_ratio: { label: 'Clearance to journal', dimension: 'number', unit: '-' },
    in_limits: { kind: 'yes-no', label: 'Inside the limits' },
  },
  formula: 'clearance = bearing_bore − journal; clearance_ratio = clearance/journal',
  source: 'Definition; derived by hand. The hint of 0.00075 to 0.0010: common practice, no published source.',
  notes: [
    'Common practice, no published source: 0.00075 to 0.0010 times the journal diameter; some add 0.0005 in for racing. The limits come from the maker’s manual.',
  ],
  caution: makersValueGoverns,
  example: {
    bearing_bore: { value: 60.045, unit: 'mm' },
    journal: { value: 59.992, unit: 'mm' },
    limit_min: { value: 0.03, unit: 'mm' },
    limit_max: { value: 0.065, unit: 'mm' },
  },
  compute: ({ bearing_bore: bearingBore, journal, ...limits }) => {
    const clearance = bearingBore - journal;
    return {
      outputs: { clearance, clearance_ratio: clearance / journal, in_limits: insideLimits(clearance, limits) },
      warnings:
        clearance <= 0
          ? [graveWarning('There is no clearance: the journal would seize in this bearing. Measure again.')]
          : [],
    };
  },
});
