import { calculator } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { insideLimits, limitInputs } from './limits-of-size.ts';

export const endFloat = calculator({
  id: 'G4',
  slug: 'end-float',
  title: 'Crank or cam end float',
  about: 'How far a crank or cam moves along its axis, from two readings of a dial gauge.',
  inputs: {
    reading_forward: { label: 'Reading, pushed forward', dimension: 'length', unit: 'mm' },
    reading_back: { label: 'Reading, pushed back', dimension: 'length', unit: 'mm' },
    ...limitInputs,
  },
  outputs: {
    end_float: { label: 'End float', dimension: 'length', unit: 'mm' },
    in_limits: { kind: 'yes-no', label: 'Inside the limits' },
  },
  formula: 'end_float = |reading_forward − reading_back|',
  source: 'Definition; derived by hand.',
  notes: ['The sign of the dial does not matter.'],
  caution: makersValueGoverns,
  example: {
    reading_forward: { value: 0.18, unit: 'mm' },
    reading_back: { value: 0.02, unit: 'mm' },
    limit_min: { value: 0.05, unit: 'mm' },
    limit_max: { value: 0.25, unit: 'mm' },
  },
  compute: ({ reading_forward: forward, reading_back: back, ...limits }) => {
    const float = Math.abs(forward - back);
    return { outputs: { end_float: float, in_limits: insideLimits(float, limits) } };
  },
});
